import fc from 'fast-check';
import { expect, test } from 'vitest';
import { LU } from '#engine';

/** Residual of A x = b for a random well-scaled matrix; sizes around the block of four are the risk. */
function residual(n: number, seed: number): number {
  let s = seed >>> 0;
  const random = () => {
    s = (Math.imul(s, 1664525) + 1013904223) >>> 0;
    return s / 2 ** 31 - 1;
  };
  const a = Float64Array.from({ length: n * n }, random);
  const b = Float64Array.from({ length: n * n }, random);
  const xr = Float64Array.from({ length: n }, random);
  const xi = Float64Array.from({ length: n }, random);
  const [re, im, yr, yi] = [a.slice(), b.slice(), xr.slice(), xi.slice()];
  const pivots = new Int32Array(n);
  expect(LU.factor(n, re, im, pivots)).toBe(true);
  LU.solve(n, re, im, pivots, yr, yi);
  let worst = 0;
  for (let i = 0; i < n; i++) {
    let r = -xr[i]!;
    let m = -xi[i]!;
    for (let j = 0; j < n; j++) {
      r += a[i * n + j]! * yr[j]! - b[i * n + j]! * yi[j]!;
      m += a[i * n + j]! * yi[j]! + b[i * n + j]! * yr[j]!;
    }
    worst = Math.max(worst, Math.hypot(r, m));
  }
  return worst;
}

test('identity: A x = b for random matrices of every size up to 40', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 40 }), fc.integer(), (n, seed) => {
      expect(residual(n, seed)).toBeLessThan(1e-9);
    }),
  );
});
test('a singular matrix is refused', () => {
  expect(LU.factor(2, Float64Array.of(1, 2, 2, 4), new Float64Array(4), new Int32Array(2))).toBe(false);
});
