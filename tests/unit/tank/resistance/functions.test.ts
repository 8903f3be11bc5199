import { expect, test } from 'vitest';
import { besselJRatios, ellipticE, ellipticK, ellipticKE, integrate, riemannZeta } from '#engine';
import { windingLoss } from './winding-loss-values.ts';

test('rival: ratios of Bessel functions against mpmath at 40 digits, |z| 0.01 to 3000, orders 1 to 20', () => {
  expect(windingLoss.ratios.length).toBe(84);
  for (const { n, z, ratio } of windingLoss.ratios) {
    const { re, im } = besselJRatios(20, { re: z[0], im: z[1] });
    const error = Math.hypot(re[n]! - ratio[0], im[n]! - ratio[1]) / Math.hypot(...ratio);
    expect(error, `J${n}/J${n - 1}(${z})`).toBeLessThan(2e-12);
  }
});

test('published: Abramowitz & Stegun table 9.1, J0(1) = 0.7651976866, J1(1) = 0.4400505857', () => {
  expect(besselJRatios(1, { re: 1, im: 0 }).re[1]).toBeCloseTo(0.4400505857 / 0.7651976866, 9);
});

test('limit: a vanishing argument gives vanishing ratios', () => {
  expect(besselJRatios(2, { re: 0, im: 0 }).re).toEqual(new Float64Array(3));
});

test('published: Abramowitz & Stegun table 17.1, K(0.5) = 1.854074677, E(0.5) = 1.350643881', () => {
  expect(ellipticK(0.5)).toBeCloseTo(1.854074677, 9);
  expect(ellipticE(0.5)).toBeCloseTo(1.350643881, 9);
  expect(ellipticE(1)).toBe(1);
});

test("identity: Legendre's relation K E' + E K' - K K' = pi/2, and K and E against their integrals", () => {
  for (const m of [1e-6, 0.03, 0.4, 0.77, 0.995]) {
    const a = ellipticKE(m);
    const b = ellipticKE(1 - m, m);
    expect(a.k * b.e + a.e * b.k - a.k * b.k).toBeCloseTo(Math.PI / 2, 12);
    expect(a.k).toBeCloseTo(
      integrate((t) => 1 / Math.sqrt(1 - m * Math.sin(t) ** 2), 0, Math.PI / 2, 120),
      10,
    );
    expect(a.e).toBeCloseTo(
      integrate((t) => Math.sqrt(1 - m * Math.sin(t) ** 2), 0, Math.PI / 2, 120),
      10,
    );
  }
});

test('published: zeta at even integers, pi^2/6, pi^4/90, pi^6/945 (Abramowitz & Stegun 23.2.24-26), and zeta(3) (table 23.3)', () => {
  expect(riemannZeta(2)).toBeCloseTo(Math.PI ** 2 / 6, 13);
  expect(riemannZeta(3)).toBeCloseTo(1.20205690315959, 13);
  expect(riemannZeta(4)).toBeCloseTo(Math.PI ** 4 / 90, 13);
  expect(riemannZeta(6)).toBeCloseTo(Math.PI ** 6 / 945, 13);
});
