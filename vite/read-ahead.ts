import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { type Plugin, runnerImport } from 'vite';

/** What is asked of the module that reads. */
interface Reading {
  /** the text with all that reading it comes to, as plain data */
  readAhead(text: string, fileOf: (name: string) => string): object;
}

const QUERY = '?ahead';
const MARK = '\0ahead:';

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
    resolveId(id, importer) {
      // by a name that does not end in .json: what reads those is not to see it
      return id.endsWith(QUERY) && importer ? `${MARK}${resolve(dirname(importer), id.slice(0, -QUERY.length))}:` : undefined;
    },
    async load(id) {
      if (!id.startsWith(MARK)) return;
      if (!building) return 'export default null';
      const path = id.slice(MARK.length, -1);
      const { module } = await runnerImport<Reading>(reading, { configFile: false, logLevel: 'error' });
      // as the desk writes what is open: it is known by its text
      const text = JSON.stringify(JSON.parse(readFileSync(path, 'utf8')), null, 2);
      const document = module.readAhead(text, (name) => readFileSync(join(dirname(path), name), 'utf8'));
      const asset = this.emitFile({ type: 'asset', name: 'read-ahead.json', source: JSON.stringify(document) });
      return `export default import.meta.ROLLUP_FILE_URL_${asset};`;
    },
  };
}
