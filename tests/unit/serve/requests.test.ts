import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { HEADER_POLICY } from '#serve';
import { ask, folderWithSecret, served } from './served.ts';

const { app } = folderWithSecret();
const { port } = await served(app);

describe('hosts', () => {
  test.each([`localhost:${port}`, `127.0.0.1:${port}`, `[::1]:${port}`, `LocalHost:${port}`])('%s is this machine', async (host) => {
    expect((await ask(port, '/', { headers: { host } })).status).toBe(200);
  });
  // the ways in which a name that is made to point here, or a proxy, would present itself
  test.each([
    'stations.example',
    `stations.example:${port}`,
    `localhost.stations.example:${port}`,
    `127.0.0.1.stations.example:${port}`,
    `stations.example#localhost:${port}`,
    `user@localhost:${port}`,
    'localhost',
    '127.0.0.1',
    `localhost:${port + 1}`,
    `localhost:0${port}`,
    `127.0.0.2:${port}`,
    `0.0.0.0:${port}`,
    `localhost.:${port}`,
    `localhost:${port},stations.example`,
  ])('"%s" is not', async (host) => {
    const answer = await ask(port, '/', { headers: { host } });
    expect(answer.status).toBe(421);
    expect(answer.body).not.toContain('<title>');
  });
});

describe('methods', () => {
  test('HEAD answers as GET does, without the file', async () => {
    const [get, head] = [await ask(port, '/'), await ask(port, '/', { method: 'HEAD' })];
    expect(head.status).toBe(200);
    expect(head.body).toBe('');
    for (const name of ['content-length', 'content-type', 'etag', 'cache-control'] as const)
      expect(head.headers[name]).toBe(get.headers[name]);
    expect(Number(get.headers['content-length'])).toBe(get.body.length);
    expect((await ask(port, '/nothing', { method: 'HEAD' })).body).toBe('');
  });
  test.each(['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS', 'TRACE', 'PROPFIND'])('%s is refused, and told what is not', async (method) => {
    const answer = await ask(port, '/', { method });
    expect(answer.status).toBe(405);
    expect(answer.headers.allow).toBe('GET, HEAD');
  });
});

describe('headers', () => {
  // IANA media types; RFC 9239 (scripts); W3C Web Application Manifest section 3 (manifests)
  test.each([
    ['/', 'text/html; charset=utf-8'],
    ['/assets/main-1a2b.js', 'text/javascript; charset=utf-8'],
    ['/assets/style-1a2b.css', 'text/css; charset=utf-8'],
    ['/assets/set-1a2b.json', 'application/json'],
    ['/assets/spoken-1a2b.wav', 'audio/wav'],
    ['/assets/a%20name.svg', 'image/svg+xml'],
    ['/manifest.webmanifest', 'application/manifest+json'],
    ['/icon.png', 'image/png'],
    ['/unknown.kind', 'application/octet-stream'],
  ])('%s is %s', async (path, type) => {
    expect((await ask(port, path)).headers['content-type']).toBe(type);
  });
  test('safety is on every answer, refusals too', async () => {
    const answers = [
      await ask(port, '/'),
      await ask(port, '/nothing'),
      await ask(port, '/%00'),
      await ask(port, '/', { method: 'POST' }),
      await ask(port, '/', { headers: { host: 'stations.example' } }),
      await ask(port, '/', { headers: { 'if-none-match': '*' } }),
    ];
    expect(answers.map((a) => a.status)).toEqual([200, 404, 400, 405, 421, 304]);
    for (const { headers } of answers) {
      expect(headers['content-security-policy']).toBe(HEADER_POLICY);
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['referrer-policy']).toBe('no-referrer');
      expect(headers['cross-origin-opener-policy']).toBe('same-origin');
      expect(headers['cross-origin-resource-policy']).toBe('same-origin');
      expect(headers['access-control-allow-origin']).toBeUndefined();
    }
  });
  test('the policy for content lets in nothing inline, nothing from elsewhere, no frame around it', () => {
    const policy = new Map(HEADER_POLICY.split('; ').map((d) => [d.split(' ')[0], d.split(' ').slice(1)]));
    expect(policy.get('default-src')).toEqual(["'self'"]);
    for (const name of ['object-src', 'base-uri', 'form-action', 'frame-ancestors']) expect(policy.get(name)).toEqual(["'none'"]);
    expect(HEADER_POLICY).not.toMatch(/unsafe|data:|https?:|\*/);
    expect([...policy.keys()].filter((name) => /script|style|worker|connect/.test(name as string))).toEqual([]);
  });
  test('hashed names are kept for good; others are asked for again, and sent again only if they changed', async () => {
    expect((await ask(port, '/assets/main-1a2b.js')).headers['cache-control']).toBe('public, max-age=31536000, immutable');
    const first = await ask(port, '/icon.png');
    expect(first.headers['cache-control']).toBe('no-cache');
    const etag = first.headers.etag as string;
    expect(etag).toMatch(/^"[\w-]+"$/);
    for (const known of [etag, `W/${etag}`, `"other", ${etag}`]) {
      const again = await ask(port, '/icon.png', { headers: { 'if-none-match': known } });
      expect(again.status).toBe(304);
      expect(again.body).toBe('');
      expect(again.headers.etag).toBe(etag);
    }
    // as long as before, and in the same moment
    writeFileSync(join(app, 'icon.png'), 'GNP');
    const changed = await ask(port, '/icon.png', { headers: { 'if-none-match': etag } });
    expect(changed.status).toBe(200);
    expect(changed.body).toBe('GNP');
  });
});
