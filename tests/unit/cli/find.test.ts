import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { earshot } from './run.ts';

const DRAWER = 'examples/drawer.json';
const SLOW = { timeout: 300_000 };

describe('find', SLOW, () => {
  test('different sets, ranked, with verdict and odds; what is written is heard as it was said', () => {
    const folder = mkdtempSync(join(tmpdir(), 'earshot-'));
    const r = earshot('find', DRAWER, '--station', 'Fen Talk', '--seconds', '6', '--most', '2', '--out', folder, '--json');
    expect(r.code).toBe(0);
    const { sets, trials } = JSON.parse(r.out);
    expect(trials).toBeGreaterThan(20);
    expect(sets).toHaveLength(2);
    expect(sets[0].worth).toBeGreaterThanOrEqual(sets[1].worth);
    for (const { stations, odds } of sets) {
      expect(stations.map((s: { name: string }) => s.name)).toEqual(['Fen Talk']);
      expect(odds.heard.value).toBeGreaterThanOrEqual(0);
      expect(odds.heard.error).toBeGreaterThanOrEqual(0);
    }
    expect(readdirSync(folder).sort()).toEqual(['found-1.json', 'found-2.json']);
    const heard = JSON.parse(earshot('hear', join(folder, 'found-1.json'), '--station', 'Fen Talk', '--no-advice', '--json').out);
    expect(heard.stations[0].verdict.sii).toBeCloseTo(sets[0].stations[0].sii, 9);
    const tolerance = earshot('tolerance', join(folder, 'found-1.json'), '--station', 'Fen Talk', '--samples', '64');
    expect(tolerance.code).toBe(0);
    for (const words of ['heard', 'understood', 'what moves the dial most', 'to trim it', 'kHz']) expect(tolerance.out).toContain(words);
  });

  test('Ctrl-C gives the best so far', async () => {
    const child = spawn(process.execPath, ['dist/cli/earshot.mjs', 'find', DRAWER, '--seconds', '3000', '--most', '1'], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let out = '';
    child.stdout.on('data', (chunk) => {
      out += chunk;
    });
    const ended = new Promise<number | null>((done) => child.once('exit', done));
    await new Promise((done) => setTimeout(done, 15_000));
    child.kill('SIGINT');
    expect(await ended).toBe(0);
    expect(out).toMatch(/sets tried, seed 1/);
    expect(out).toMatch(/^1\. /m);
  });

  test('what is wrong is told: aim, seconds, seed, station, a file without a place', () => {
    for (const [options, told] of [
      [['--aim', 'pretty'], /speech, loudness, clean, stations/],
      [['--seconds', '0'], /above 0/],
      [['--seed', '1.5'], /whole number/],
      [['--station', 'Fen Tlk'], /Fen Talk/],
    ] as const) {
      const r = earshot('find', DRAWER, ...options);
      expect(r.code).toBe(3);
      expect(r.err).toMatch(told);
    }
    expect(earshot('find', 'examples/none.json')).toMatchObject({ code: 3 });
    expect(earshot('tolerance', 'examples/dipole-and-small-coil.json', '--samples', '3').err).toMatch(/16 to 100000/);
    expect(earshot('tolerance', 'examples/fenmarket.json').code).toBe(3);
  });
});
