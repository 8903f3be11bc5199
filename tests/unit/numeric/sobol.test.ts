import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { MersenneTwister, SOBOL_DIMENSIONS, sobolPoint } from '#engine';

interface Point {
  readonly index: number;
  readonly point: readonly number[];
}
const points = JSON.parse(readFileSync(new URL('../../reference/sobol/points.json', import.meta.url), 'utf8')) as Point[];

describe('Sobol sequence', () => {
  test('published: points of SciPy from the direction numbers of Joe and Kuo, to the last bit, in all dimensions', () => {
    expect(points.length).toBeGreaterThan(60);
    for (const { index, point } of points) {
      expect(point).toHaveLength(SOBOL_DIMENSIONS);
      const own = new Float64Array(SOBOL_DIMENSIONS);
      sobolPoint(index, own);
      expect([...own], `point ${index}`).toEqual(point);
    }
  });

  test('identity: of 2^m points each interval of 2^-m holds one, in every dimension, shifted or not', () => {
    const n = 256;
    const twister = new MersenneTwister(5);
    const shift = Uint32Array.from({ length: SOBOL_DIMENSIONS }, () => twister.uniform() * 2 ** 32);
    for (const by of [undefined, shift]) {
      const seen = Array.from({ length: SOBOL_DIMENSIONS }, () => new Set<number>());
      const p = new Float64Array(SOBOL_DIMENSIONS);
      for (let k = 0; k < n; k++) {
        sobolPoint(k, p, by);
        p.forEach((x, d) => {
          seen[d]!.add(Math.floor(x * n));
        });
      }
      for (const s of seen) expect(s.size).toBe(n);
    }
  });
});
