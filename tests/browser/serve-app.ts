import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serveFolder } from '../../src/serve/serve-folder.ts';

/**
 * Builds the app as it is shipped, in a folder of this run's own, and serves it with our own server on a free port: what is built or runs beside it
 * cannot disturb the tests. `app.ts` finds it by EARSHOT_PORT.
 */
export default async function setup(): Promise<() => Promise<void>> {
  const folder = mkdtempSync(join(tmpdir(), 'earshot-app-'));
  const { status } = spawnSync(
    process.execPath,
    ['node_modules/vite/bin/vite.js', 'build', '--outDir', folder, '--emptyOutDir', '--logLevel', 'warn'],
    // the runner says "test" here, which would give another app than the one that is shipped
    { stdio: ['ignore', 'inherit', 'inherit'], env: { ...process.env, NODE_ENV: 'production' } },
  );
  if (status !== 0) throw new Error('the app could not be built');
  const served = await serveFolder(folder, 0);
  process.env.EARSHOT_PORT = String(served.port);
  return async () => {
    await served.close();
    rmSync(folder, { recursive: true, force: true });
  };
}
