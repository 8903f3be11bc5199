import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/build-cli.ts'],
    setupFiles: ['tests/property-seed.ts'],
    maxWorkers: 2,
    // files share the modules they import: what is tested keeps no state that one could hand to another
    isolate: false,
    testTimeout: 240_000,
    coverage: {
      provider: 'v8',
      include: ['src/**'],
      // the screen and the threads of the app run in a browser, and are tested there
      exclude: ['src/cli/main.ts', 'src/app/*', 'src/app/view/**', 'src/app/**/*.{worker,worklet}.ts', 'src/service-worker/**'],
      reporter: ['text-summary', 'json-summary'],
      reportsDirectory: '.cache/coverage',
      thresholds: { lines: 80 },
    },
    reporters: ['default', ['json', { outputFile: '.cache/unit.json' }]],
  },
});
