import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { HEADER_POLICY } from './content-policy.ts';
import { fileOf, namesOf } from './file-of.ts';
import { mediaType } from './media-types.ts';

/** On every answer, refusals too. */
const ALWAYS = {
  'content-security-policy': HEADER_POLICY,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), geolocation=(), microphone=(), payment=(), usb=()',
};

/**
 * Names under which this machine reaches its own port. A page from elsewhere whose name is made to point here (DNS rebinding) sends its own name as
 * host, and is refused.
 */
const isOwnHost = (host: string | undefined, port: number): boolean =>
  ['localhost', '127.0.0.1', '[::1]'].some((name) => host?.toLowerCase() === `${name}:${port}` || (port === 80 && host === name));

function refuse(response: ServerResponse, status: number, why: string, more: Record<string, string> = {}): void {
  response.writeHead(status, { ...ALWAYS, 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store', ...more });
  response.end(response.req.method === 'HEAD' ? undefined : `${why}\n`);
}

const tagsOf = (header: string): string[] => header.split(',').map((tag) => tag.trim().replace(/^W\//, ''));

/**
 * Answers one request with a file of the folder.
 *
 * @param folder - its real path, links followed
 * @param port - on which the request came in
 */
export async function answer(folder: string, port: number, request: IncomingMessage, response: ServerResponse): Promise<void> {
  if (!isOwnHost(request.headers.host, port))
    return refuse(response, 421, 'This server answers this machine only, by the address it printed.');
  if (request.method !== 'GET' && request.method !== 'HEAD')
    return refuse(response, 405, 'Files can be read here, and nothing else.', { allow: 'GET, HEAD' });
  const names = namesOf(request.url ?? '');
  if (!names) return refuse(response, 400, 'No file can have that address.');
  const path = await fileOf(folder, names);
  if (!path) return refuse(response, 404, 'There is no such file.');
  const body = await readFile(path);
  const etag = `"${createHash('sha256').update(body).digest('base64url')}"`;
  const headers = {
    ...ALWAYS,
    etag,
    // names in assets/ hold a hash of what is in the file; all others are asked for again, and are not sent again if they are the same
    'cache-control': names[0] === 'assets' ? 'public, max-age=31536000, immutable' : 'no-cache',
  };
  const known = request.headers['if-none-match'];
  if (known && (known.trim() === '*' || tagsOf(known).includes(etag))) {
    response.writeHead(304, headers).end();
    return;
  }
  response.writeHead(200, { ...headers, 'content-type': mediaType(path), 'content-length': body.length });
  response.end(request.method === 'HEAD' ? undefined : body);
}
