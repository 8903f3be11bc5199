import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { earshot } from './run.ts';

/** A town, and a drawer: no sets. */
const WITHOUT_A_SET: ReadonlySet<string> = new Set(['fenmarket.json', 'drawer.json']);
const sets = readdirSync('examples').filter((f) => f.endsWith('.json') && !WITHOUT_A_SET.has(f));

/** Every number of an answer, with its path. */
function numbers(o: unknown, path = ''): [string, number][] {
  if (typeof o === 'number') return [[path, o]];
  if (typeof o !== 'object' || o === null) return [];
  return Object.entries(o).flatMap(([k, v]) => numbers(v, `${path}.${k}`));
}

describe('examples', () => {
  test('there are at least five', () => {
    expect(sets.length).toBeGreaterThanOrEqual(5);
  });
  for (const set of sets)
    test(`${set}: from mast to ear, in words and as JSON`, () => {
      const text = earshot('hear', `examples/${set}`, '--no-advice');
      expect(text.code).toBe(0);
      expect(text.out + text.err).not.toMatch(/NaN|Infinity|undefined/);
      const json = earshot('hear', `examples/${set}`, '--json', '--no-advice');
      expect(json.code).toBe(0);
      const answer = JSON.parse(json.out);
      expect(answer.stations.length).toBeGreaterThan(0);
      for (const s of answer.stations) {
        expect(text.out).toContain(s.name);
        for (const [name, f] of Object.entries(s.figures) as [string, { value: number | null; unit: string; method: string }][]) {
          expect(f.value === null || Number.isFinite(f.value), name).toBe(true);
          expect(typeof f.unit, name).toBe('string');
          expect(f.method.length, name).toBeGreaterThan(2);
        }
      }
      for (const [path, value] of numbers(answer)) expect(Number.isFinite(value), path).toBe(true);
    });
  test('the demo is heard, and the change advised helps when it is made', () => {
    const { out } = earshot('hear', 'examples/dipole-and-small-coil.json', '--station', 'Fen Talk', '--json');
    const [s] = JSON.parse(out).stations;
    expect(['clear', 'understandable', 'faint']).toContain(s.verdict.outcome);
    expect(s.advice[0].gain.value).toBeGreaterThan(0);
    expect(s.sentence).toContain(s.advice[0].change);
    for (let k = 1; k < s.advice.length; k++) expect(s.advice[k].gain.value).toBeLessThanOrEqual(s.advice[k - 1].gain.value);
  });
  test('the loop by the mast is heard; the rod too far is not, and says why', () => {
    const near = JSON.parse(earshot('hear', 'examples/loop-by-the-mast.json', '--json', '--no-advice').out).stations[0];
    expect(near.verdict.outcome).toBe('clear');
    const far = JSON.parse(earshot('hear', 'examples/rod-too-far.json', '--json', '--no-advice').out).stations;
    expect(far[0].verdict.outcome).toBe('silent');
    expect(far[0].sentence).toMatch(/is not heard.*what limits it most/);
    expect(far[1].verdict.outcome).toBe('out-of-reach');
    expect(far[1].sentence).toMatch(/pF/);
  });
});
