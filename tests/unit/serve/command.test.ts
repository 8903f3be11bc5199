import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';

// the command line as it is shipped, beside an app of one page
const root = mkdtempSync(join(tmpdir(), 'earshot-command-'));
cpSync('dist/cli', join(root, 'dist/cli'), { recursive: true });
copyFileSync('package.json', join(root, 'package.json'));
const COMMAND = join(root, 'dist/cli/earshot.mjs');
const app = join(root, 'dist/app');
mkdirSync(app);
writeFileSync(join(app, 'index.html'), '<!doctype html><title>app</title>');
const children: ChildProcess[] = [];
afterAll(() => {
  for (const child of children) child.kill('SIGKILL');
  rmSync(root, { recursive: true, force: true });
});

async function start(...args: string[]) {
  const child = spawn(process.execPath, [COMMAND, 'serve', ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
  children.push(child);
  let out = '';
  for await (const chunk of child.stdout) {
    out += chunk;
    if (out.includes('\n')) break;
  }
  return { child, address: /http:\S+/.exec(out)?.[0] as string };
}

describe('earshot serve', () => {
  test.each(['SIGINT', 'SIGTERM'] as const)(
    'prints its address, serves the app there, and ends at %s as something done',
    async (signal) => {
      const { child, address } = await start('--port', '0');
      expect(await (await fetch(address)).text()).toContain('<title>app</title>');
      child.kill(signal);
      expect(await once(child, 'exit')).toEqual([0, null]);
      await expect(fetch(address)).rejects.toThrow();
    },
  );
  test('a port in use is said, and what to do', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await once(other, 'listening');
    const { port } = other.address() as { port: number };
    const r = spawnSync(process.execPath, [COMMAND, 'serve', '--port', String(port)], { encoding: 'utf8', timeout: 20_000 });
    other.close();
    expect(r.status).toBe(3);
    expect(r.stderr).toMatch(new RegExp(`--port ${port}: another program uses it[^]*none`));
  });
  test.each(['99999', '-1', '80.5', 'http', ''])('"%s" is no port', (text) => {
    const r = spawnSync(process.execPath, [COMMAND, 'serve', `--port=${text}`], { encoding: 'utf8', timeout: 20_000 });
    expect(r.status).toBe(2);
    expect(r.stderr).toMatch(/whole number from 0|argument missing/);
  });
  test('an app that was never built is said, and what to do', () => {
    rmSync(app, { recursive: true });
    const r = spawnSync(process.execPath, [COMMAND, 'serve', '--port', '0'], { encoding: 'utf8', timeout: 20_000 });
    expect(r.status).toBe(3);
    expect(r.stderr).toContain('npm run build');
  });
});
