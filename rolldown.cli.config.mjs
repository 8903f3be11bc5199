export default {
  // the second is what a worker thread is started with
  input: { earshot: 'src/cli/main.ts', 'jobs.worker': 'src/cli/jobs.worker.ts' },
  platform: 'node',
  output: {
    dir: 'dist/cli',
    format: 'es',
    entryFileNames: '[name].mjs',
    chunkFileNames: '[name]-[hash].mjs',
    sourcemap: true,
    minify: false,
    banner: (chunk) => (chunk.name === 'earshot' && chunk.isEntry ? '#!/usr/bin/env node' : ''),
  },
};
