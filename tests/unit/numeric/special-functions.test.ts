import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { airyZeros, C, erfc, faddeeva, normalCumulative, normalQuantile, scaledAiry } from '#engine';

type Pair = readonly [number, number];
interface Values {
  readonly faddeeva: readonly { readonly z: Pair; readonly w: Pair }[];
  readonly airy: readonly { readonly z: Pair; readonly logSize: number; readonly value: Pair; readonly derivative: Pair }[];
  readonly erfc: readonly { readonly x: number; readonly erfc: number }[];
  readonly quantile: readonly { readonly p: number; readonly z: number }[];
  readonly airyZeros: readonly { readonly s: number; readonly zero: number }[];
  readonly airySlopeZeros: readonly { readonly s: number; readonly zero: number }[];
}
// made by mpmath at 40 digits: tests/reference/place/special_functions.py
const values = JSON.parse(readFileSync(new URL('../../reference/place/special-functions.json', import.meta.url), 'utf8')) as Values;

const complex = ([re, im]: Pair): C.Complex => ({ re, im });
const relativeError = (got: C.Complex, expected: C.Complex): number => C.abs(C.sub(got, expected)) / C.abs(expected);

test('rival: Faddeeva function against mpmath, both half planes', () => {
  expect(values.faddeeva.length).toBeGreaterThan(60);
  for (const { z, w } of values.faddeeva) expect(relativeError(faddeeva(complex(z)), complex(w)), `z = ${z}`).toBeLessThan(1e-12);
});

test('rival: complementary error function against mpmath', () => {
  for (const row of values.erfc) expect(Math.abs(erfc(row.x) / row.erfc - 1), `x = ${row.x}`).toBeLessThan(1e-13);
});

test('rival: Airy function and derivative against mpmath, in every sector and across the joins of its methods', () => {
  expect(values.airy.length).toBeGreaterThan(100);
  for (const { z, logSize, value, derivative } of values.airy) {
    const airy = scaledAiry(complex(z));
    const scale = Math.exp(airy.exponent - logSize);
    const slope = complex(derivative);
    expect(relativeError(C.scale(airy.value, scale), complex(value)), `Ai(${z})`).toBeLessThan(2e-10);
    expect(C.abs(C.sub(C.scale(airy.derivative, scale), slope)) / C.abs(slope), `Ai'(${z})`).toBeLessThan(2e-10);
  }
});

test('limit: Airy function satisfies its equation and Wronskian where no table was made', () => {
  // Ai(z) Ai'(zT) T - Ai'(z) Ai(zT) = exp(-j pi/6)/(2 pi), T = exp(j 2 pi/3). Source: Abramowitz & Stegun 10.4.11 (DLMF 9.2.8)
  const turn = C.cis((2 * Math.PI) / 3);
  for (const z of [complex([0.7, -0.4]), complex([3, 2.9]), complex([-6.2, 1.1]), complex([5, -7]), complex([20, 3])]) {
    const a = scaledAiry(z);
    const b = scaledAiry(C.mul(z, turn));
    const wronskian = C.sub(C.mul(a.value, C.mul(b.derivative, turn)), C.mul(a.derivative, b.value));
    const expected = C.scale(C.cis(-Math.PI / 6), 1 / (2 * Math.PI));
    expect(relativeError(C.scale(wronskian, Math.exp(a.exponent + b.exponent)), expected)).toBeLessThan(1e-9);
  }
});

test("rival: zeros of Ai and Ai' against mpmath", () => {
  const zeros = airyZeros('value', 120);
  const slopeZeros = airyZeros('slope', 120);
  for (const { s, zero } of values.airyZeros) expect(zeros[s - 1]).toBeCloseTo(zero, 9);
  for (const { s, zero } of values.airySlopeZeros) expect(slopeZeros[s - 1]).toBeCloseTo(zero, 9);
});

test('rival: normal quantile against mpmath; limit: it undoes the cumulative function', () => {
  for (const { p, z } of values.quantile) expect(normalQuantile(p)).toBeCloseTo(z, 10);
  for (const x of [-4, -1.3, 0, 0.4, 2.2]) expect(normalQuantile(normalCumulative(x))).toBeCloseTo(x, 9);
});
