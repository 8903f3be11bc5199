import { expect, test } from 'vitest';
import { nelderMead } from '#engine';

const all = (n: number, v: number) => new Float64Array(n).fill(v);

test("published: Rosenbrock's valley from (-1.2, 1) ends at (1, 1) (Computer J. 3 (1960) 175)", () => {
  const f = (x: Float64Array) => 100 * (x[1]! - x[0]! ** 2) ** 2 + (1 - x[0]!) ** 2;
  const got = nelderMead(f, Float64Array.of(-1.2, 1), all(2, 0.2), all(2, -5), all(2, 5), 1e-12, 4000);
  expect(got.x[0]).toBeCloseTo(1, 3);
  expect(got.x[1]).toBeCloseTo(1, 3);
  expect(got.evaluations).toBeLessThan(4000);
});
test('limit: a bowl in six dimensions, and one whose bottom lies outside the bounds', () => {
  const f = (x: Float64Array) => 1 + x.reduce((sum, v, i) => sum + (i + 1) * (v - 0.3) ** 2, 0);
  const inside = nelderMead(f, all(6, 0.9), all(6, 0.1), all(6, -1), all(6, 1), 1e-12, 6000);
  for (const v of inside.x) expect(v).toBeCloseTo(0.3, 3);
  const held = nelderMead(f, all(6, 0.9), all(6, 0.1), all(6, 0.5), all(6, 1), 1e-12, 6000);
  for (const v of held.x) expect(v).toBeCloseTo(0.5, 3);
});
test('identity: never worse than the start, never outside the bounds, never more calls than allowed', () => {
  let calls = 0;
  const f = (x: Float64Array) => {
    calls++;
    for (const v of x) expect(Math.abs(v)).toBeLessThanOrEqual(2);
    return Math.abs(Math.sin(3 * x[0]!)) + Math.abs(x[1]! - 0.1);
  };
  const got = nelderMead(f, Float64Array.of(1.9, -2), all(2, 0.5), all(2, -2), all(2, 2), 1e-9, 100);
  expect(calls).toBeLessThan(100 + 10);
  expect(got.value).toBeLessThanOrEqual(f(Float64Array.of(1.9, -2)));
});
