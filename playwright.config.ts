import { defineConfig } from '@playwright/test';
import { findChromium } from './scripts/chromium.mjs';

const executablePath = findChromium();

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
  globalSetup: './tests/browser/serve-app.ts',
});
