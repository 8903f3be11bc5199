import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { earshot } from './run.ts';

const DRAWER = 'examples/drawer.json';
const SLOW = { timeout: 300_000 };

describe('find', SLOW, () => {
  test('different sets, ranked, with verdict and odds; what is written is heard as it was said', () => {
    const folder = mkdtempSync(join(tmpdir(), 'earshot-'));
    const r = earshot(
      'find',
      DRAWER,
      '--station',
      'Fen Talk',
      '--trials',
      '80',
      '--builds',
      '32',
      '--most',
      '2',
      '--out',
      folder,
      '--json',
    );
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
    for (const words of ['heard', 'understood', 'what moves the dial most', 'to trim it', 'Hz']) expect(tolerance.out).toContain(words);
  });

  test('Ctrl-C gives the best so far', async () => {
    const child = spawn(process.execPath, ['dist/cli/earshot.mjs', 'find', DRAWER, '--seconds', '3000', '--most', '1', '--builds', '0'], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let out = '';
    child.stdout.on('data', (chunk) => {
      out += chunk;
    });
    const ended = new Promise<number | null>((done) => child.once('exit', done));
    await new Promise((done) => setTimeout(done, 7000));
    child.kill('SIGINT');
    expect(await ended).toBe(0);
    expect(out).toMatch(/sets tried, seed 1/);
    expect(out).toMatch(/^1\. /m);
  });

  test('so many trials give one answer, by any number of threads, and by a search that was kept and taken up again', () => {
    const folder = mkdtempSync(join(tmpdir(), 'earshot-'));
    const kept = join(folder, 'search.json');
    const picture = join(folder, 'front.svg');
    const asked = ['find', DRAWER, '--station', 'Fen Talk', '--aim', 'speech=2,clean=1', '--most', '2', '--builds', '16', '--json'];
    const one = earshot(...asked, '--trials', '200', '--threads', '1', '--picture', picture);
    expect(one.code).toBe(0);
    const told = JSON.parse(one.out);
    expect(told.aim).toEqual({ speech: 2, loudness: 0, clean: 1, stations: 0 });
    expect(told.trials).toBeGreaterThanOrEqual(200);
    expect(told.why).toEqual([]);
    expect(earshot(...asked, '--trials', '200', '--threads', '3').out).toBe(one.out);
    const early = JSON.parse(earshot(...asked, '--trials', '30', '--threads', '2', '--state', kept).out);
    expect(early.trials).toBeLessThan(told.trials);
    expect(earshot(...asked, '--trials', '200', '--threads', '1', '--state', kept).out).toBe(one.out);
    // every set of the list is in the picture with its number
    const svg = readFileSync(picture, 'utf8');
    expect(svg).toMatch(/>1<\/text>/);
    expect(svg).toMatch(/>2<\/text>/);
    expect((svg.match(/data-dot=/g) ?? []).length).toBeGreaterThanOrEqual(told.front.length);
    // of another wish, and spoilt
    const other = earshot('find', DRAWER, '--station', 'Fen Talk', '--trials', '30', '--builds', '0', '--state', kept);
    expect(other).toMatchObject({ code: 3 });
    expect(other.err).toMatch(/another drawer, place or wish/);
    writeFileSync(kept, readFileSync(kept, 'utf8').replace(/"trials":\d+/, '"trials":1'));
    expect(earshot(...asked, '--trials', '200', '--state', kept).err).toMatch(/changed since/);
  });

  test('a band that no dial of the drawer covers: a result, with the reason', () => {
    const r = earshot('find', DRAWER, '--band', '40 MHz to 200 MHz', '--trials', '60', '--builds', '0', '--json');
    expect(r.code).toBe(0);
    const { sets, why } = JSON.parse(r.out) as { sets: unknown[]; why: { kind: string; words: string }[] };
    expect(sets).toEqual([]);
    // either end is on some dial, both on none (a ratio of 25 in capacitance)
    expect(why).toHaveLength(1);
    expect(['band-not-covered', 'not-together']).toContain(why[0]!.kind);
    expect(why[0]!.words).toMatch(/No set covers the band to its end at (40|200) MHz|all of them at once by none/);
  });

  test('what is wrong is told: aim, seconds, seed, station, a file without a place', () => {
    for (const [options, told] of [
      [['--aim', 'pretty'], /speech, loudness, clean, stations/],
      [['--aim', 'speech=1,speech=2'], /one share/],
      [['--aim', 'speech=0'], /above 0/],
      [['--aim', 'speech=-1'], /0 or more/],
      [['--band', '88 MHz'], /two frequencies/],
      [['--band', '88 apples to 90 MHz'], /88 apples/],
      [['--band', '108 MHz to 88 MHz'], /lower end first/],
      [['--threads', '0'], /from 1 to 64/],
      [['--builds', '-1'], /from 0 to 100000/],
      [['--trials', 'many'], /whole number/],
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
