import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serveFolder } from '../../src/serve/serve-folder.ts';
import { buildApp } from './build-app.ts';

/**
 * Builds the app in a folder of this run's own, and serves it with our own server on a free port: what is built or runs beside it cannot disturb the
 * tests. `app.ts` finds it by EARSHOT_PORT.
 */
export default async function setup(): Promise<() => Promise<void>> {
  const folder = mkdtempSync(join(tmpdir(), 'earshot-app-'));
  buildApp(folder);
  const served = await serveFolder(folder, 0);
  process.env.EARSHOT_PORT = String(served.port);
  return async () => {
    await served.close();
    rmSync(folder, { recursive: true, force: true });
  };
}
