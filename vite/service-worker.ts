import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

const MARK = 'EARSHOT_BUILD';

/** Files of a folder and those below, by path with slashes. */
const filesOf = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((f) => f.isFile())
    .map((f) =>
      join(f.parentPath, f.name)
        .slice(folder.length + 1)
        .replaceAll('\\', '/'),
    )
    .sort();

/**
 * Adds `sw.js` to a build, with the list of all that lies in the built folder and its hashes.
 *
 * @param entry - module of the worker
 * @param takeOver - module of the page by which a newer worker takes over, as `take-over.js`
 */
export function serviceWorker(entry: string, takeOver: string): Plugin {
  return {
    name: 'service-worker',
    apply: 'build',
    buildStart() {
      this.emitFile({ type: 'chunk', id: entry, fileName: 'sw.js' });
      this.emitFile({ type: 'chunk', id: takeOver, fileName: 'take-over.js' });
    },
    writeBundle: {
      order: 'post',
      sequential: true,
      handler({ dir }) {
        if (!dir) throw new Error('the app is built into a folder');
        const path = join(dir, 'sw.js');
        const code = readFileSync(path, 'utf8');
        if (code.split(MARK).length !== 2) throw new Error(`${MARK} must stand once in the service worker`);
        if (/^\s*(import|export)\b/m.test(code))
          throw new Error('the service worker must be one file: browsers load it as a classic script');
        const id = createHash('sha256').update(code);
        const files: Record<string, string> = {};
        for (const name of filesOf(dir)) {
          if (name === 'sw.js' || name.endsWith('.map')) continue;
          const hash = createHash('sha256')
            .update(readFileSync(join(dir, name)))
            .digest('base64');
          id.update(name).update(hash);
          // some hosts answer index.html with a way to the folder, which a browser will not take for the page
          files[name === 'index.html' ? './' : name] = `sha256-${hash}`;
        }
        writeFileSync(
          path,
          code.replace(MARK, () => `(${JSON.stringify({ id: id.digest('hex').slice(0, 16), files })})`),
        );
      },
    },
  };
}
