import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { DEFAULT_PORT, PortTaken, type Served, serveFolder } from '#serve';
import { BadFile } from './bad-file.ts';

export interface ServeOptions {
  readonly port?: number;
}

/** Beside the bundled command line. */
const APP = fileURLToPath(new URL('../app/', import.meta.url));

/** `earshot serve`: the app, to browsers of this machine, until it is told to stop. */
export async function serveCommand({ port }: ServeOptions): Promise<void> {
  if (!existsSync(APP)) throw new BadFile(`${APP}: the app is not there\n  npm run build makes it.`);
  const served = await start(port);
  if (port === undefined && served.port !== DEFAULT_PORT)
    console.error(
      `Port ${DEFAULT_PORT} is in use, so this is another address: sets saved in the browser under the usual one are not seen here.`,
    );
  console.log(`Earshot for the browser: ${served.address}  (Ctrl-C ends it)`);
  await new Promise<void>((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, resolve);
  });
  await served.close();
}

async function start(port: number | undefined): Promise<Served> {
  try {
    return await serveFolder(APP, port);
  } catch (e) {
    if (e instanceof PortTaken)
      throw new BadFile(`--port ${e.port}: another program uses it\n  Give another, or none: a free one is then found.`);
    if ((e as NodeJS.ErrnoException).code === 'EACCES')
      throw new BadFile(`--port ${port}: the system keeps it for itself\n  Give one above 1023.`);
    throw e;
  }
}
