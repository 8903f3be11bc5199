import fc from 'fast-check';
import { expect, test } from 'vitest';
import { brent, C, gaussLegendre, goldenMaximum, integrate, linear, linearInLog } from '#engine';

test('published: Gauss-Legendre, Abramowitz & Stegun table 25.4, n = 5 (from memory)', () => {
  const { nodes, weights } = gaussLegendre(5);
  expect(nodes[4]).toBeCloseTo(0.906179845938664, 14);
  expect(weights[2]).toBeCloseTo(0.568888888888889, 14);
});
test('limit: a rule of n points is exact for degree 2n - 1', () => {
  for (const n of [1, 2, 3, 8, 24])
    expect(integrate((x) => (x + 0.5) ** (2 * n - 1), -1, 1, n)).toBeCloseTo((1.5 ** (2 * n) - 0.5 ** (2 * n)) / (2 * n), 6);
});
test('Brent finds the root, and says null where there is none', () => {
  expect(brent((x) => x ** 3 - 2, 0, 2)).toBeCloseTo(2 ** (1 / 3), 14);
  expect(brent((x) => x * x + 1, -1, 1)).toBeNull();
});
test('golden section finds the top', () => {
  expect(goldenMaximum((x) => -((x - 0.3) ** 2), -1, 1, 1e-6)).toBeCloseTo(0.3, 5);
});
test('complex division undoes multiplication, square root squares back', () => {
  const c = fc.record({ re: fc.double({ min: -1e6, max: 1e6, noNaN: true }), im: fc.double({ min: -1e6, max: 1e6, noNaN: true }) });
  fc.assert(
    fc.property(c, c, (a, b) => {
      fc.pre(C.abs(a) > 1e-9 && C.abs(b) > 1e-9);
      expect(C.abs(C.sub(C.div(C.mul(a, b), b), a))).toBeLessThan(1e-12 * C.abs(a));
      const r = C.sqrt(a);
      expect(r.re).toBeGreaterThanOrEqual(0);
      expect(C.abs(C.sub(C.mul(r, r), a))).toBeLessThan(1e-12 * C.abs(a));
    }),
  );
});
test('tables: linear, linear in log, ends held', () => {
  expect(linear([0, 1, 3], [0, 10, 30], 2)).toBe(20);
  expect(linear([0, 1, 3], [0, 10, 30], 9)).toBe(30);
  expect(linearInLog([100, 10000], [0, 40], 1000)).toBeCloseTo(20, 12);
});
