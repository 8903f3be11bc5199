import { once } from 'node:events';
import { connect, createServer } from 'node:net';
import { networkInterfaces, platform } from 'node:os';
import { describe, expect, test } from 'vitest';
import { DEFAULT_PORT, PortTaken, serveFolder } from '#serve';
import { ask, folderWithSecret, served } from './served.ts';

const { app, root } = folderWithSecret();
const addresses = Object.values(networkInterfaces()).flatMap((list) => list ?? []);
const hasSix = addresses.some((a) => a.address === '::1');

/** What comes of connecting: the code of the error, or null. */
async function connecting(host: string, port: number): Promise<string | null> {
  const socket = connect({ host, port, timeout: 3000 });
  socket.on('timeout', () => socket.destroy(Object.assign(new Error(), { code: 'ETIMEDOUT' })));
  try {
    await once(socket, 'connect');
    return null;
  } catch (e) {
    return (e as NodeJS.ErrnoException).code ?? 'unknown';
  } finally {
    socket.destroy();
  }
}

/** Holds a port as another program would. */
async function take(port: number, host: string) {
  const other = createServer();
  other.listen({ port, host, exclusive: true });
  await once(other, 'listening');
  return { port: (other.address() as { port: number }).port, close: () => new Promise((resolve) => other.close(resolve)) };
}

describe('addresses', () => {
  test('answers on the loopback addresses', async () => {
    const { port, address } = await served(app);
    expect(address).toBe(`http://localhost:${port}/`);
    expect((await ask(port, '/')).status).toBe(200);
    if (hasSix) expect((await ask(port, '/', { address: '::1' })).status).toBe(200);
    expect((await fetch(address)).status).toBe(200);
  });
  // all of 127.0.0.0/8 is this machine on Linux: a server bound to every address would answer there
  test.runIf(platform() === 'linux')('not on another of this machine', async () => {
    const { port } = await served(app);
    expect(await connecting('127.0.0.2', port)).toBe('ECONNREFUSED');
  });
  test.runIf(addresses.some((a) => !a.internal && a.family === 'IPv4'))('not on that of a network', async () => {
    const { port } = await served(app);
    for (const a of addresses) if (!a.internal && a.family === 'IPv4') expect(await connecting(a.address, port)).not.toBeNull();
  });
});

describe('ports', () => {
  test('the one that is given and no other', async () => {
    const other = await take(0, '127.0.0.1');
    await expect(serveFolder(app, other.port)).rejects.toThrow(PortTaken);
    await other.close();
    const server = await serveFolder(app, other.port);
    expect(server.port).toBe(other.port);
    await server.close();
  });
  test.runIf(hasSix)('one that is in use on either address is in use, and is left free on the other', async () => {
    const other = await take(0, '::1');
    await expect(serveFolder(app, other.port)).rejects.toThrow(PortTaken);
    expect(await connecting('127.0.0.1', other.port)).toBe('ECONNREFUSED');
    await other.close();
  });
  test('the usual one where none is given; another if that is in use', async () => {
    // another Earshot may run on this machine: then that one holds the port, as well as any
    const other = await take(DEFAULT_PORT, '127.0.0.1').catch(() => null);
    const server = await serveFolder(app);
    expect(server.port).not.toBe(DEFAULT_PORT);
    expect((await ask(server.port, '/')).status).toBe(200);
    await server.close();
    if (!other) return;
    await other.close();
    const usual = await serveFolder(app);
    expect(usual.port).toBe(DEFAULT_PORT);
    await usual.close();
  });
});

test('after closing nothing answers, connections that were open are cut, and closing took no waiting for them', async () => {
  const server = await serveFolder(app, 0);
  const open = connect(server.port, '127.0.0.1');
  await once(open, 'connect');
  const cut = once(open, 'close');
  await server.close();
  await cut;
  expect(await connecting('127.0.0.1', server.port)).toBe('ECONNREFUSED');
});

test('a folder that is not there is an error at once', async () => {
  await expect(serveFolder(`${root}/nothing`, 0)).rejects.toThrow(/ENOENT/);
});
