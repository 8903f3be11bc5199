import type { Complex } from './complex.ts';

/** J_n(z) / J_(n-1)(z), split into real and imaginary parts; index n runs from 1, index 0 is unused. */
export interface BesselRatios {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/**
 * Ratios of neighbouring Bessel functions of the first kind and complex argument.
 *
 * r_n = J_n(z) / J_(n-1)(z) = 1 / (2 n / z - r_(n+1)), run downwards from an order high enough.
 *
 * J is the minimal solution of the three-term recurrence, so running downwards damps any error made at the start. Ratios
 * neither overflow nor lose digits, while J itself grows as exp |Im z|: at a skin depth of a five-hundredth of the
 * radius that is exp(500). Off the real axis the start need only lie about |z| sqrt(40 / |Im z|) above the orders wanted,
 * since each step damps by 1 - 2 n |Im z| / |z|^2.
 *
 * @param count - highest order n wanted, >= 1
 * @param z - argument; not a zero of J_(n-1), all of which are real
 * Holds for: |z| from 0 up; accuracy about 1e-15 |z|^(1/2)
 * Source: Gautschi, SIAM Review 9 (1967) 24; NIST DLMF 10.6(i), 10.74(iv), 3.6(i).
 */
export function besselJRatios(count: number, z: Complex): BesselRatios {
  const re = new Float64Array(count + 1);
  const im = new Float64Array(count + 1);
  const size = Math.hypot(z.re, z.im);
  if (size === 0) return { re, im };
  const start = count + 20 + Math.ceil(size * Math.min(1.1, Math.sqrt(40 / Math.abs(z.im))));
  const invRe = z.re / size / size;
  const invIm = -z.im / size / size;
  let r = 0;
  let m = 0;
  for (let n = start; n >= 1; n--) {
    const a = 2 * n * invRe - r;
    const b = 2 * n * invIm - m;
    const d = a * a + b * b;
    r = a / d;
    m = -b / d;
    if (n <= count) {
      re[n] = r;
      im[n] = m;
    }
  }
  return { re, im };
}
