import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { type IncomingHttpHeaders, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { type Served, serveFolder } from '#serve';

export const SECRET = 'not for the browser';

/** A folder as a build leaves it, a secret beside it, and links that lead there. */
export function folderWithSecret(): { readonly root: string; readonly app: string } {
  const root = mkdtempSync(join(tmpdir(), 'earshot-serve-'));
  const app = join(root, 'app');
  mkdirSync(join(app, 'assets'), { recursive: true });
  const files = {
    'index.html': '<!doctype html><title>app</title>',
    'assets/main-1a2b.js': 'export {};\n',
    'assets/style-1a2b.css': 'main{}\n',
    'assets/set-1a2b.json': '{}\n',
    'assets/spoken-1a2b.wav': 'RIFF',
    'assets/a name.svg': '<svg/>',
    'manifest.webmanifest': '{}\n',
    'icon.png': 'PNG',
    'unknown.kind': '?',
    '.hidden': SECRET,
  };
  for (const [name, text] of Object.entries(files)) writeFileSync(join(app, name), text);
  writeFileSync(join(root, 'secret.txt'), SECRET);
  // begins as the folder's own path does
  mkdirSync(join(root, 'app-beside'));
  writeFileSync(join(root, 'app-beside', 'secret.txt'), SECRET);
  symlinkSync(join(root, 'secret.txt'), join(app, 'link.txt'));
  symlinkSync(root, join(app, 'up'));
  symlinkSync(join(root, 'app-beside'), join(app, 'beside'));
  symlinkSync(join(app, 'icon.png'), join(app, 'inside.png'));
  afterAll(() => rmSync(root, { recursive: true, force: true }));
  return { root, app };
}

/** Served on a free port until the tests of the file are done. */
export async function served(folder: string, port = 0): Promise<Served> {
  const server = await serveFolder(folder, port);
  afterAll(() => server.close());
  return server;
}

export interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

/** One request, its target sent as it stands: fetch would tidy it up first. */
export const ask = (
  port: number,
  path: string,
  { method = 'GET', headers = {}, address = '127.0.0.1' }: { method?: string; headers?: Record<string, string>; address?: string } = {},
): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const sent = request(
      { host: address, port, path, method, headers: { host: `localhost:${port}`, ...headers }, agent: false },
      (response) => {
        let body = '';
        response.setEncoding('utf8');
        response.on('data', (chunk: string) => {
          body += chunk;
        });
        response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body }));
      },
    );
    sent.on('error', reject);
    sent.end();
  });
