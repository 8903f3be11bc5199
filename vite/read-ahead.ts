import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { rolldown } from 'rolldown';
import type { Plugin } from 'vite';

/** What is asked of the module that reads. */
interface Reading {
  /** the text with all that reading it comes to, as plain data */
  readAhead(text: string, fileOf: (name: string) => string): object;
}

/**
 * `import address from 'set.json?ahead'`: where the build has put a set file as it stands on the bench, and what reading it comes to, so that the first screen
 * can do without all that reads. Null while developing: the set is then read like any other.
 *
 * @param reading - module of the jobs that reads
 */
export function readAhead(reading: string): Plugin {
  let building = false;
  return {
    name: 'read-ahead',
    enforce: 'pre',
    configResolved({ command }) {
      building = command === 'build';
    },
    resolveId: {
      filter: { id: /[?]ahead$/ },
      // by a name that does not end in .json: what reads those is not to see it
      handler: (id, importer) => (importer ? `\0ahead:${resolve(dirname(importer), id.replace(/[?]ahead$/, ''))}:` : undefined),
    },
    load: {
      filter: { id: /^\0ahead:/ },
      async handler(id) {
        if (!building) return 'export default null';
        const path = id.slice(id.indexOf(':') + 1, -1);
        // as the desk writes what is open: it is known by its text
        const text = JSON.stringify(JSON.parse(readFileSync(path, 'utf8')), null, 2);
        const { readAhead } = await bundled<Reading>(reading);
        const document = readAhead(text, (name) => readFileSync(join(dirname(path), name), 'utf8'));
        const asset = this.emitFile({ type: 'asset', name: 'read-ahead.json', source: JSON.stringify(document) });
        return `export default import.meta.ROLLUP_FILE_URL_${asset};`;
      },
    },
  };
}

/** A module of the project, which Node cannot load as it is written. */
async function bundled<T>(input: string): Promise<T> {
  const bundle = await rolldown({ input, platform: 'node', logLevel: 'warn' });
  try {
    const { output } = await bundle.generate({ format: 'es', codeSplitting: false });
    return (await import(`data:text/javascript;base64,${Buffer.from(output[0].code).toString('base64')}`)) as T;
  } finally {
    await bundle.close();
  }
}
