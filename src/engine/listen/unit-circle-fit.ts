import { C, type Complex, LU } from '../numeric/index.ts';

/** A value wanted at a point of the unit circle, and how much it counts. */
export interface CircleSample {
  /** [rad a sample] */
  readonly angle: number;
  readonly value: Complex;
  readonly weight: number;
  /** to the value wanted is added this one times an unknown factor, the same for all samples that name it */
  readonly scaled?: { readonly by: number; readonly value: Complex };
}

const TRACE = 1e-12;

/**
 * Taps t_d, d = 0 ... count - 1, for each set of samples, with sum of t_d exp(-j (d - ahead) angle) closest to the samples: weighted least squares.
 *
 * The normal equations of a set's taps are Toeplitz: their entries are the moments sum of w^2 exp(j m angle). A trace on the diagonal keeps them solvable where
 * the samples leave the taps free. Unknown factors, if any, are common to all sets, and are held at one by a weight.
 */
export function fitTaps(
  sets: readonly (readonly CircleSample[])[],
  count: number,
  ahead: number,
  factors = 0,
  factorWeight = 1,
): { readonly taps: readonly (readonly Complex[])[]; readonly scales: readonly Complex[] } {
  const first = sets.length * count;
  const size = first + factors;
  const re = new Float64Array(size * size);
  const im = new Float64Array(size * size);
  const x = new Float64Array(size);
  const y = new Float64Array(size);
  const add = (o: number, r: number, m: number): void => {
    re[o] = re[o]! + r;
    im[o] = im[o]! + m;
  };
  sets.forEach((samples, set) => {
    const from = set * count;
    const momentRe = new Float64Array(count);
    const momentIm = new Float64Array(count);
    for (const { angle, value, weight, scaled } of samples) {
      const square = weight * weight;
      const c = Math.cos(angle);
      const s = Math.sin(angle);
      // exp(j m angle), and w^2 exp(j (m - ahead) angle)
      let pRe = square;
      let pIm = 0;
      let qRe = square * Math.cos(ahead * angle);
      let qIm = -square * Math.sin(ahead * angle);
      for (let m = 0; m < count; m++) {
        momentRe[m] = momentRe[m]! + pRe;
        momentIm[m] = momentIm[m]! + pIm;
        x[from + m] = x[from + m]! + value.re * qRe - value.im * qIm;
        y[from + m] = y[from + m]! + value.re * qIm + value.im * qRe;
        if (scaled) {
          const a = scaled.value.re * qRe - scaled.value.im * qIm;
          const b = scaled.value.re * qIm + scaled.value.im * qRe;
          const k = first + scaled.by;
          add((from + m) * size + k, -a, -b);
          add(k * size + from + m, -a, b);
        }
        [pRe, pIm] = [pRe * c - pIm * s, pRe * s + pIm * c];
        [qRe, qIm] = [qRe * c - qIm * s, qRe * s + qIm * c];
      }
      if (scaled) {
        const k = first + scaled.by;
        const v = C.mul(C.scale(value, -square), C.conj(scaled.value));
        add(k * size + k, square * C.abs2(scaled.value), 0);
        x[k] = x[k]! + v.re;
        y[k] = y[k]! + v.im;
      }
    }
    for (let i = 0; i < count; i++)
      for (let k = 0; k < count; k++)
        add(
          (from + i) * size + from + k,
          momentRe[Math.abs(i - k)]! * (i === k ? 1 + TRACE : 1),
          i >= k ? momentIm[i - k]! : -momentIm[k - i]!,
        );
  });
  for (let k = first; k < size; k++) {
    add(k * size + k, factorWeight * factorWeight, 0);
    x[k] = x[k]! + factorWeight * factorWeight;
  }
  const pivots = new Int32Array(size);
  const solved = LU.factor(size, re, im, pivots);
  if (solved) LU.solve(size, re, im, pivots, x, y);
  const at = (k: number): Complex => ({ re: x[k]!, im: y[k]! });
  return {
    taps: sets.map((_, set) => Array.from({ length: count }, (__, d) => (solved ? at(set * count + d) : C.ZERO))),
    scales: Array.from({ length: factors }, (_, k) => (solved ? at(first + k) : C.ONE)),
  };
}
