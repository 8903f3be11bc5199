import { expect, test } from 'vitest';
import { barycentric, C, fitRational } from '#engine';

const points = (n: number) => Float64Array.from({ length: n }, (_, i) => -Math.cos((Math.PI * i) / (n - 1)));

function worst(functions: readonly ((x: number) => C.Complex)[], samples: number, tolerance: number): { error: number; support: number } {
  const x = points(samples);
  const at = (part: 're' | 'im') => [...x].map((v) => Float64Array.from(functions, (f) => f(v)[part]));
  const [re, im] = [at('re'), at('im')];
  const basis = fitRational(x, re, im, tolerance);
  const b = new Float64Array(2 * basis.support.length);
  let error = 0;
  for (let i = 0; i <= 200; i++) {
    const v = -1 + i / 100;
    barycentric(basis, v, b);
    functions.forEach((f, n) => {
      let [r, m] = [0, 0];
      basis.index.forEach((k, j) => {
        r += b[2 * j]! * re[k]![n]! - b[2 * j + 1]! * im[k]![n]!;
        m += b[2 * j]! * im[k]![n]! + b[2 * j + 1]! * re[k]![n]!;
      });
      error = Math.max(error, C.abs(C.sub({ re: r, im: m }, f(v))));
    });
  }
  return { error, support: basis.support.length };
}

const pole = (at: C.Complex) => (x: number) => C.inv(C.sub(C.complex(x), at));

test('identity: a family with three common poles is found exactly from a few samples', () => {
  const poles = [C.complex(0.2, 0.05), C.complex(-0.6, 0.3), C.complex(1.4, -0.2)];
  const family = [
    (x: number) => poles.reduce((sum, p) => C.add(sum, pole(p)(x)), C.ZERO),
    (x: number) => C.add(C.complex(2, 1), C.sub(pole(poles[0]!)(x), C.scale(pole(poles[2]!)(x), 3))),
    pole(poles[1]!),
  ];
  const got = worst(family, 9, 1e-12);
  expect(got.support).toBeLessThanOrEqual(5);
  expect(got.error).toBeLessThan(1e-8);
});
test('limit: smooth functions that are not rational converge to the tolerance', () => {
  const got = worst([(x) => C.cis(3 * x), (x) => C.complex(Math.exp(x), Math.sqrt(2 + x))], 14, 1e-10);
  expect(got.error).toBeLessThan(1e-8);
});
test('limit: a constant, and the fewest samples', () => {
  expect(worst([() => C.complex(2, -1)], 3, 1e-12).error).toBeLessThan(1e-12);
  expect(worst([(x) => C.complex(x)], 2, 1e-12).support).toBe(1);
});
test('identity: at a point of support the value is the sample', () => {
  const x = points(5);
  const re = [...x].map((v) => Float64Array.of(v ** 3));
  const im = [...x].map(() => Float64Array.of(0));
  const basis = fitRational(x, re, im, 0);
  const b = new Float64Array(2 * basis.support.length);
  barycentric(basis, basis.support[1]!, b);
  expect([...b]).toEqual([0, 0, 1, 0, ...new Array(2 * basis.support.length - 4).fill(0)]);
});
