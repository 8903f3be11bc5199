import { once } from 'node:events';
import { connect } from 'node:net';
import { sep } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { namesOf } from '../../../src/serve/file-of.ts';
import { ask, folderWithSecret, SECRET, served } from './served.ts';

const { app } = folderWithSecret();
const { port } = await served(app);

describe('files of the folder are found', () => {
  test.each([
    ['/', 'app'],
    ['/?x=1', 'app'],
    ['/index.html', 'app'],
    ['/assets/main-1a2b.js', 'export'],
    ['/assets/main-1a2b.js?v=../..', 'export'],
    ['/assets/a%20name.svg', 'svg'],
    ['/%69con.png', 'PNG'],
    // a link that stays inside is a file like any other
    ['/inside.png', 'PNG'],
  ])('%s', async (path, text) => {
    const answer = await ask(port, path);
    expect(answer.status).toBe(200);
    expect(answer.body).toContain(text);
  });
});

// Ways out of a folder: OWASP, Web Security Testing Guide 4.2, section 4.5.1 (Testing Directory Traversal), with links and hidden files besides
describe('nothing outside it is', () => {
  test.each([
    '/../secret.txt',
    '/assets/../../secret.txt',
    '/./../secret.txt',
    '/..',
    '/%2e%2e/secret.txt',
    '/%2E%2e/secret.txt',
    '/.%2e/secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e%2fsecret.txt',
    '/assets%2f..%2f..%2fsecret.txt',
    '/..\\secret.txt',
    '/..%5csecret.txt',
    '/%252e%252e/secret.txt',
    '/%252e%252e%252fsecret.txt',
    '/%c0%ae%c0%ae/secret.txt',
    '/..%c0%afsecret.txt',
    '/%uff0e%uff0e/secret.txt',
    '/../app-beside/secret.txt',
    '//etc/passwd',
    '/%2fetc/passwd',
    '//secret.txt',
    '/c:/secret.txt',
    '/secret.txt%00.html',
    '/%00',
    '/index.html%00',
    '/.hidden',
    '/%2ehidden',
    '/link.txt',
    '/up/secret.txt',
    '/up/app/index.html/../../secret.txt',
    '/beside/secret.txt',
    '/%',
    '/%zz',
    '/%ff',
    '*',
    'http://localhost/secret.txt',
    'secret.txt',
  ])('%s', async (path) => {
    const answer = await ask(port, path);
    expect([400, 404]).toContain(answer.status);
    expect(answer.body).not.toContain(SECRET);
  });

  test('a link up and down again is no way either to hidden files', async () => {
    expect((await ask(port, '/up/app/.hidden')).status).toBe(400);
  });
  test('folders are not listed', async () => {
    for (const path of ['/assets', '/assets/', '/up', '/up/']) expect((await ask(port, path)).status).toBe(404);
  });
  test('bytes that are no request are answered as such', async () => {
    for (const line of ['GET /secret\0.txt HTTP/1.1', 'GET', '\0\0\0\0', 'GET / HTTP/9.9']) {
      const socket = connect(port, '127.0.0.1');
      let text = '';
      socket.on('data', (chunk) => {
        text += chunk.toString('latin1');
      });
      socket.write(`${line}\r\nHost: localhost:${port}\r\nConnection: close\r\n\r\n`);
      await once(socket, 'close');
      expect(text).toMatch(/^HTTP\/1\.1 (400|404|505) /);
      expect(text).not.toContain(SECRET);
    }
  });
  test('whatever is asked, names neither climb nor hide a separator', () => {
    const piece = fc.oneof(
      fc.constantFrom('..', '.', '/', '%2e', '%2f', '%5c', '\\', '%00', '%25', 'a', ':', '?', '#', '%c0%ae'),
      fc.string({ unit: 'binary' }),
    );
    fc.assert(
      fc.property(fc.array(piece), (pieces) =>
        (namesOf(`/${pieces.join('')}`) ?? []).every(
          (name) => name !== '' && !name.startsWith('.') && !/[/\\\0]/.test(name) && !name.includes(sep),
        ),
      ),
      { numRuns: 2000 },
    );
    expect(namesOf('/a/b%20c')).toEqual(['a', 'b c']);
  });
});
