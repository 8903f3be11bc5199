import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { cosineIntegral, entireCosineIntegral, integrate, sineIntegral } from '#engine';

interface Row {
  x: number;
  si: number;
  ci: number;
  cin: number;
}
const rows = JSON.parse(readFileSync(new URL('../../reference/aerial/sine-integral.json', import.meta.url), 'utf8')) as Row[];

test('rival: Si, Ci, Cin against mpmath at 40 digits, to 1e-12, on both sides of every change of method', () => {
  expect(rows.length).toBeGreaterThan(20);
  for (const { x, si, ci, cin } of rows) {
    expect(Math.abs(sineIntegral(x) - si), `Si(${x})`).toBeLessThan(1e-12);
    expect(Math.abs(cosineIntegral(x) - ci), `Ci(${x})`).toBeLessThan(1e-12);
    expect(Math.abs(entireCosineIntegral(x) - cin), `Cin(${x})`).toBeLessThan(1e-12);
    if (x < 6) expect(Math.abs(entireCosineIntegral(x) / cin - 1), `Cin(${x}), relative`).toBeLessThan(1e-12);
  }
});
test('published: Abramowitz & Stegun table 5.1, Si(1) = 0.9460830704, Ci(1) = 0.3374039229 (from memory)', () => {
  expect(sineIntegral(1)).toBeCloseTo(0.9460830704, 10);
  expect(cosineIntegral(1)).toBeCloseTo(0.3374039229, 10);
});
test('limit: Si goes to pi/2, Ci to 0; Si is odd, Cin even', () => {
  expect(sineIntegral(1e6)).toBeCloseTo(Math.PI / 2, 5);
  expect(Math.abs(cosineIntegral(1e6))).toBeLessThan(2e-6);
  for (const x of [0.3, 5, 7, 40]) {
    expect(sineIntegral(-x)).toBe(-sineIntegral(x));
    expect(entireCosineIntegral(-x)).toBe(entireCosineIntegral(x));
  }
  expect(sineIntegral(0)).toBe(0);
  expect(entireCosineIntegral(0)).toBe(0);
  expect(cosineIntegral(0)).toBe(Number.NEGATIVE_INFINITY);
});
test('rival: quadrature of sin t / t', () => {
  for (const x of [2, 9, 17])
    expect(sineIntegral(x)).toBeCloseTo(
      integrate((t) => Math.sin(t) / t, 0, x, 40),
      11,
    );
});
