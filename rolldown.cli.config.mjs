export default {
  input: { earshot: 'src/cli/main.ts' },
  platform: 'node',
  output: {
    dir: 'dist/cli',
    format: 'es',
    entryFileNames: '[name].mjs',
    chunkFileNames: '[name]-[hash].mjs',
    sourcemap: true,
    minify: false,
    banner: (chunk) => (chunk.isEntry ? '#!/usr/bin/env node' : ''),
  },
};
