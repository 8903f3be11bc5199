import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/build-cli.ts'],
    setupFiles: ['tests/property-seed.ts'],
    maxWorkers: 2,
    testTimeout: 60_000,
    coverage: {
      provider: 'v8',
      include: ['src/**'],
      exclude: ['src/cli/main.ts'],
      reporter: ['text-summary', 'json-summary'],
      reportsDirectory: '.cache/coverage',
      thresholds: { lines: 80 },
    },
    reporters: ['default', ['json', { outputFile: '.cache/unit.json' }]],
  },
});
