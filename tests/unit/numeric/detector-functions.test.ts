import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  bicubic,
  bicubicThrough,
  cubicThrough,
  fastExp,
  fastExpm1,
  modifiedBesselScaled,
  modifiedBesselSmall,
  monotoneSlopes,
  wrightOmega,
} from '#engine';

interface Values {
  readonly besselScaled: readonly (readonly [number, number, number, number, number | null])[];
  readonly wrightOmega: readonly (readonly [number, number])[];
  readonly exponential: readonly (readonly [number, number, number])[];
  readonly splineSlopes: readonly { readonly x: number[]; readonly y: number[]; readonly slopes: number[] }[];
}
const values = JSON.parse(readFileSync(new URL('../../reference/detector/values.json', import.meta.url), 'utf8')) as Values;
const off = (got: number, want: number) => (want === 0 ? Math.abs(got) : Math.abs(got / want - 1));

test('rival: modified Bessel functions against mpmath at 40 digits, x from 0 to 10 000', () => {
  const out = new Float64Array(3);
  for (const [x, i0, i1, i2, lessOne] of values.besselScaled) {
    modifiedBesselScaled(x, out);
    expect(off(out[0]!, i0), `I0(${x})`).toBeLessThan(3e-15);
    expect(off(out[1]!, i1), `I1(${x})`).toBeLessThan(3e-15);
    expect(off(out[2]!, i2), `I2(${x})`).toBeLessThan(3e-14);
    if (lessOne === null) continue;
    modifiedBesselSmall(x, out);
    expect(off(out[0]!, lessOne), `I0(${x}) - 1`).toBeLessThan(1e-15);
  }
});
test('published: modified Bessel functions, Abramowitz & Stegun table 9.8 (from memory): e^-x I0, e^-x I1 at x = 1, 5, 10', () => {
  const out = new Float64Array(3);
  for (const [x, i0, i1] of [
    [1, 0.4657596077, 0.2079104154],
    [5, 0.1835408126, 0.1639722669],
    [10, 0.1278333372, 0.1212626814],
  ] as const) {
    modifiedBesselScaled(x, out);
    expect(out[0]).toBeCloseTo(i0, 9);
    expect(out[1]).toBeCloseTo(i1, 9);
  }
});
test('limit: the three branches of the Bessel functions meet, and I0 - I2 = 2 I1 / x', () => {
  const below = new Float64Array(3);
  const above = new Float64Array(3);
  for (const x of [1, 32, 1.125, 17.5]) {
    modifiedBesselScaled(x * (1 - 1e-15), below);
    modifiedBesselScaled(x, above);
    for (let k = 0; k < 3; k++) expect(off(below[k]!, above[k]!)).toBeLessThan(2e-14);
  }
  fc.assert(
    fc.property(fc.double({ min: 1e-3, max: 1, noNaN: true }), (x) => {
      modifiedBesselScaled(x, above);
      expect(off(above[0]! - above[2]!, (2 * above[1]!) / x)).toBeLessThan(1e-14);
    }),
  );
});
test('rival: exponential by table against mpmath, and against Math.exp over the range', () => {
  for (const [x, e, em1] of values.exponential) {
    expect(off(fastExp(x), e), `exp(${x})`).toBeLessThan(5e-16);
    expect(off(fastExpm1(x), em1), `exp(${x}) - 1`).toBeLessThan(1e-13);
  }
  fc.assert(
    fc.property(fc.double({ min: -700, max: 700, noNaN: true }), (x) => {
      expect(off(fastExp(x), Math.exp(x))).toBeLessThan(6e-16);
      expect(off(fastExpm1(x), Math.expm1(x))).toBeLessThan(1e-13);
    }),
    { numRuns: 5000 },
  );
  expect([fastExp(-1e4), fastExpm1(-1e4), fastExp(1e4)]).toEqual([0, -1, Number.POSITIVE_INFINITY]);
});
test('rival: Wright omega against mpmath, and z + ln z = y over the range', () => {
  for (const [y, z] of values.wrightOmega) expect(off(wrightOmega(y), z), `omega(${y})`).toBeLessThan(1e-15 * Math.max(1, Math.abs(y) / 4));
  fc.assert(
    fc.property(fc.double({ min: -30, max: 1e3, noNaN: true }), (y) => {
      const z = wrightOmega(y);
      expect(Math.abs(z + Math.log(z) - y)).toBeLessThan(4e-15 * Math.max(1, Math.abs(y)));
    }),
    { numRuns: 2000 },
  );
});
test('rival: slopes are those of the scipy spline wherever that lies between the chords', () => {
  for (const { x, y, slopes } of values.splineSlopes) {
    const got = monotoneSlopes(x, y);
    let compared = 0;
    for (let i = 1; i + 1 < x.length; i++) {
      const chords = [(y[i]! - y[i - 1]!) / (x[i]! - x[i - 1]!), (y[i + 1]! - y[i]!) / (x[i + 1]! - x[i]!)];
      const least = Math.min(...chords);
      if (slopes[i]! < least || slopes[i]! > Math.min(3 * least, Math.max(...chords))) continue;
      expect(off(got[i]!, slopes[i]!), `slope ${i}`).toBeLessThan(1e-9);
      compared++;
    }
    expect(compared).toBeGreaterThan(x.length / 2);
  }
});
test('limit: a corner between straight lines stays straight on both sides of it', () => {
  const x = [-3, -2, -1, 0, 1, 2, 3];
  const slopes = monotoneSlopes(
    x,
    x.map((v) => (v > 0 ? 5 * v : v)),
  );
  expect([...slopes].filter((_, i) => i !== 3)).toEqual([1, 1, 1, 5, 5, 5]);
});
test('limit: no cubic turns back between points that ascend, however rough', () => {
  const steps = fc.array(
    fc.record({ dx: fc.double({ min: 1e-3, max: 1, noNaN: true }), dy: fc.double({ min: 0, max: 10, noNaN: true }) }),
    {
      minLength: 5,
      maxLength: 12,
    },
  );
  fc.assert(
    fc.property(steps, (s) => {
      const x = [0];
      const y = [0];
      for (const { dx, dy } of s) {
        x.push(x.at(-1)! + dx);
        y.push(y.at(-1)! + dy);
      }
      const d = monotoneSlopes(x, y);
      for (let i = 0; i + 1 < x.length; i++) {
        const h = x[i + 1]! - x[i]!;
        const rise = y[i + 1]! - y[i]!;
        for (let t = 0; t <= 1; t += 0.05) {
          const slope = d[i]! * (1 - t) * (1 - 3 * t) + d[i + 1]! * t * (3 * t - 2) + (6 * t * (1 - t) * rise) / h;
          expect(slope).toBeGreaterThanOrEqual(-1e-9 * (d[i]! + d[i + 1]! + rise / h) - 1e-300);
        }
      }
    }),
  );
});
test('limit: bicubic and cubic Hermite polynomials reproduce what they are made of exactly, values and slopes', () => {
  const f = (s: number, t: number) => (1 - 2 * s + s ** 3) * (3 + t - 4 * t ** 2 + 0.5 * t ** 3) + s * t;
  const fs = (s: number, t: number) => (-2 + 3 * s ** 2) * (3 + t - 4 * t ** 2 + 0.5 * t ** 3) + t;
  const ft = (s: number, t: number) => (1 - 2 * s + s ** 3) * (1 - 8 * t + 1.5 * t ** 2) + s;
  const fst = (s: number, t: number) => (-2 + 3 * s ** 2) * (1 - 8 * t + 1.5 * t ** 2) + 1;
  const corner = (s: number, t: number) => Float64Array.of(9, f(s, t), fs(s, t), ft(s, t), fst(s, t));
  const c = new Float64Array(18);
  bicubicThrough(corner(0, 0), corner(0, 1), corner(1, 0), corner(1, 1), 1, c, 2);
  const out = new Float64Array(3);
  for (const [s, t] of [
    [0, 0],
    [0.3, 0.8],
    [0.5, 0.5],
    [1, 1],
  ] as const) {
    bicubic(c, 2, s, t, out);
    expect(out[0]).toBeCloseTo(f(s, t), 13);
    expect(out[1]).toBeCloseTo(fs(s, t), 13);
    expect(out[2]).toBeCloseTo(ft(s, t), 13);
  }
  const line = new Float64Array(8);
  cubicThrough(f(0.2, 0), f(0.2, 1), ft(0.2, 0), ft(0.2, 1), line, 1, 2);
  expect(line[1]! + 0.4 * (line[3]! + 0.4 * (line[5]! + 0.4 * line[7]!))).toBeCloseTo(f(0.2, 0.4), 13);
});
