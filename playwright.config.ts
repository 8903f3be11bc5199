import { defineConfig } from '@playwright/test';
import { findChromium } from './scripts/chromium.mjs';

const executablePath = findChromium();
const SOUND = /(first-minute|live-dial|two-sets|speed)\.spec\.ts$/;

export default defineConfig({
  testDir: 'tests/browser',
  testMatch: '**/*.spec.ts',
  outputDir: '.cache/browser',
  workers: 2,
  // machines that others share are slow at times; what is asked of speed is measured by itself
  timeout: 120_000,
  expect: { timeout: 30_000 },
  forbidOnly: !!process.env.CI,
  reporter: [['list'], ['json', { outputFile: '.cache/browser.json' }]],
  use: {
    launchOptions: {
      ...(executablePath ? { executablePath } : {}),
      args: ['--no-sandbox', '--disable-dev-shm-usage', '--autoplay-policy=no-user-gesture-required'],
    },
  },
  projects: [
    { name: 'page', testIgnore: SOUND },
    // what is measured in the sound, and speed, need the machine for themselves
    { name: 'sound', testMatch: SOUND, dependencies: ['page'], workers: 1 },
  ],
  globalSetup: './tests/browser/serve-app.ts',
});
