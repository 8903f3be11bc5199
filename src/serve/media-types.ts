import { extname } from 'node:path';

/** Media types of what a built app holds. Sent with `nosniff`, so a wrong one would be refused. Source: IANA media types; RFC 9239 for scripts. */
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.map': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.wav': 'audio/wav',
  '.wasm': 'application/wasm',
  '.txt': 'text/plain; charset=utf-8',
};

/** Of a file by the end of its name; bytes of no kind where that is not known. */
export const mediaType = (path: string): string => TYPES[extname(path).toLowerCase()] ?? 'application/octet-stream';
