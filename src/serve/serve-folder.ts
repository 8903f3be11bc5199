import { realpath } from 'node:fs/promises';
import { createServer, type RequestListener, type Server } from 'node:http';
import { answer } from './answer.ts';

/** Fixed, since browsers keep what a user saves by address, and the port is part of that. */
export const DEFAULT_PORT = 8808;
/** Ports tried after that one before any free one is taken: the second of two running servers is mostly the second again next time. */
const NEIGHBOURS = 9;

/** The port that was asked for is in use. */
export class PortTaken extends Error {
  override readonly name = 'PortTaken';
  readonly port: number;
  constructor(port: number) {
    super(`port ${port} is in use`);
    this.port = port;
  }
}

export interface Served {
  readonly port: number;
  /** to be typed into a browser of this machine */
  readonly address: string;
  /** Answers nothing more; connections that are open are cut. */
  close(): Promise<void>;
}

const codeOf = (e: unknown): string | undefined => (e as NodeJS.ErrnoException).code;

function listen(host: string, port: number, onRequest: RequestListener): Promise<Server> {
  return new Promise((resolve, reject) => {
    const server = createServer(onRequest);
    server.once('error', reject);
    // exclusive: on some systems another process could otherwise share the port
    server.listen({ host, port, exclusive: true, ipv6Only: host === '::1' }, () => resolve(server.off('error', reject)));
  });
}

const closeAll = async (servers: readonly Server[]): Promise<void> => {
  await Promise.all(
    servers.map(
      (server) =>
        new Promise<void>((resolve) => {
          server.close(() => resolve());
          server.closeAllConnections();
        }),
    ),
  );
};

/**
 * Both loopback addresses on one port, since browsers try either for `localhost`; the older alone on a machine without the newer.
 *
 * @param port - 0: any free one
 */
async function listenOnLoopback(port: number, onRequest: RequestListener): Promise<Server[]> {
  const four = await listen('127.0.0.1', port, onRequest);
  try {
    return [four, await listen('::1', portOf(four), onRequest)];
  } catch (e) {
    if (codeOf(e) === 'EADDRNOTAVAIL' || codeOf(e) === 'EAFNOSUPPORT') return [four];
    await closeAll([four]);
    throw e;
  }
}

const portOf = (server: Server): number => {
  const at = server.address();
  if (typeof at !== 'object' || !at) throw new Error('a server on a port has an address');
  return at.port;
};

/**
 * Serves a folder to this machine alone.
 *
 * @param port - this one and no other; where not given, DEFAULT_PORT or, if that is in use, one near it or any free one; 0: any free one
 * @throws PortTaken if the port that was given is in use; the system's error if the folder is not there or the port may not be used
 */
export async function serveFolder(folder: string, port?: number): Promise<Served> {
  const root = await realpath(folder);
  let own = 0;
  const onRequest: RequestListener = (request, response) => {
    answer(root, own, request, response).catch(() => {
      // read fault between finding a file and reading it: it went away, or may not be read
      if (response.headersSent) response.destroy();
      else response.writeHead(500).end();
    });
  };
  // a free port of the one address may be in use on the other, so any free one is tried a few times
  const ports =
    port === undefined ? [...Array.from({ length: NEIGHBOURS + 1 }, (_, k) => DEFAULT_PORT + k), 0, 0, 0] : port === 0 ? [0, 0, 0] : [port];
  for (const each of ports) {
    try {
      const servers = await listenOnLoopback(each, onRequest);
      own = portOf(servers[0] as Server);
      return { port: own, address: `http://localhost:${own}/`, close: () => closeAll(servers) };
    } catch (e) {
      if (codeOf(e) !== 'EADDRINUSE') throw e;
    }
  }
  throw new PortTaken(port ?? DEFAULT_PORT);
}
