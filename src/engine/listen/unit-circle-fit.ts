import { C, type Complex, LU } from '../numeric/index.ts';

/** A value wanted at a point of the unit circle, and how much it counts. */
export interface CircleSample {
  /** [rad a sample] */
  readonly angle: number;
  readonly value: Complex;
  readonly weight: number;
}

/**
 * Taps t_d, d = 0 ... count - 1, with sum of t_d exp(-j (d - ahead) angle) closest to the samples: weighted least squares.
 *
 * The normal equations are Toeplitz: their entries are the moments sum of w^2 exp(j m angle). A trace on the diagonal keeps them solvable where the samples
 * leave the taps free.
 */
export function fitTaps(samples: readonly CircleSample[], count: number, ahead: number): Complex[] {
  const momentRe = new Float64Array(count);
  const momentIm = new Float64Array(count);
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  for (const { angle, value, weight } of samples) {
    const square = weight * weight;
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    // exp(j m angle), and w^2 value exp(j (m - ahead) angle)
    let pRe = square;
    let pIm = 0;
    const first = C.mul(C.scale(value, square), C.cis(-ahead * angle));
    let vRe = first.re;
    let vIm = first.im;
    for (let m = 0; m < count; m++) {
      momentRe[m] = momentRe[m]! + pRe;
      momentIm[m] = momentIm[m]! + pIm;
      x[m] = x[m]! + vRe;
      y[m] = y[m]! + vIm;
      [pRe, pIm] = [pRe * c - pIm * s, pRe * s + pIm * c];
      [vRe, vIm] = [vRe * c - vIm * s, vRe * s + vIm * c];
    }
  }
  const re = new Float64Array(count * count);
  const im = new Float64Array(count * count);
  for (let i = 0; i < count; i++)
    for (let k = 0; k < count; k++) {
      re[i * count + k] = momentRe[Math.abs(i - k)]! * (i === k ? 1 + TRACE : 1);
      im[i * count + k] = i >= k ? momentIm[i - k]! : -momentIm[k - i]!;
    }
  const pivots = new Int32Array(count);
  if (!LU.factor(count, re, im, pivots)) return Array.from({ length: count }, () => C.ZERO);
  LU.solve(count, re, im, pivots, x, y);
  return Array.from(x, (r, i) => ({ re: r, im: y[i]! }));
}

const TRACE = 1e-12;
