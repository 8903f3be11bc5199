import { resolve } from 'node:path';
import { defineConfig } from 'vite';
import { PAGE_POLICY } from './src/serve/content-policy.ts';
import { contentPolicy } from './vite/content-policy.ts';
import { readAhead } from './vite/read-ahead.ts';
import { serviceWorker } from './vite/service-worker.ts';

export default defineConfig({
  root: 'src/app',
  // every address is relative, so the built folder works from any path of any host
  base: './',
  build: {
    target: 'es2023',
    outDir: resolve('dist/app'),
    emptyOutDir: true,
    sourcemap: true,
    // the policy for content refuses data: addresses and inline scripts
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // reading the first set takes a second, and is no fault
    rolldownOptions: { checks: { pluginTimings: false } },
  },
  worker: { format: 'es' },
  plugins: [
    contentPolicy(PAGE_POLICY),
    readAhead(resolve('src/jobs/reading.ts')),
    serviceWorker(resolve('src/service-worker/main.ts'), resolve('src/app/take-over.ts')),
  ],
});
