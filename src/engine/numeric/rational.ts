/**
 * Rational interpolation of several functions at once, in barycentric form: r(x) = sum of b_j(x) f(x_j),
 * b_j = (w_j/(x - x_j)) / sum of w_i/(x - x_i). All functions share the points and the weights, hence the poles, as the responses of
 * one linear system do.
 */
export interface RationalBasis {
  /** points of interpolation, a choice of the samples' */
  readonly support: Float64Array;
  /** place of each of them among the samples */
  readonly index: Int32Array;
  readonly weightRe: Float64Array;
  readonly weightIm: Float64Array;
  /** greatest misfit at the other samples, by the greatest value of any function */
  readonly misfit: number;
}

/**
 * Fits complex functions of a real variable by the adaptive Antoulas-Anderson algorithm, for sets of functions.
 *
 * The sample worst fitted joins the support; the weights make the linearised misfit at the other samples least (smallest singular vector
 * of the Loewner matrix); until the misfit is below `tolerance` or one sample is left.
 *
 * @param x - samples, distinct, scaled by the caller to about -1 to 1; at least 2
 * @param re, im - values: one array for each sample, one entry for each function
 * Source: Y. Nakatsukasa, O. Sete, L. N. Trefethen, SIAM J. Sci. Comput. 40 (2018) A1494; sets of functions: P. Lietaert et al.,
 * IMA J. Numer. Anal. 42 (2022) 1087.
 */
export function fitRational(x: Float64Array, re: readonly Float64Array[], im: readonly Float64Array[], tolerance: number): RationalBasis {
  const count = x.length;
  const functions = re[0]!.length;
  const top = Math.max(...re.map((r, k) => r.reduce((m, v, f) => Math.max(m, Math.hypot(v, im[k]![f]!)), 0)), Number.MIN_VALUE);
  const chosen: number[] = [];
  const errors = x.map((_, k) => {
    // before there is any support: distance from the mean
    let worst = 0;
    for (let f = 0; f < functions; f++) {
      let [mr, mi] = [0, 0];
      for (let n = 0; n < count; n++) {
        mr += re[n]![f]! / count;
        mi += im[n]![f]! / count;
      }
      worst = Math.max(worst, Math.hypot(re[k]![f]! - mr, im[k]![f]! - mi));
    }
    return worst;
  });
  for (;;) {
    let next = -1;
    for (let k = 0; k < count; k++) if (!chosen.includes(k) && (next < 0 || errors[k]! > errors[next]!)) next = k;
    chosen.push(next);
    const weights = loewnerWeights(x, re, im, chosen);
    const basis: RationalBasis = {
      support: Float64Array.from(chosen, (k) => x[k]!),
      index: Int32Array.from(chosen),
      ...weights,
      misfit: 0,
    };
    let misfit = 0;
    const b = new Float64Array(2 * chosen.length);
    for (let k = 0; k < count; k++) {
      if (chosen.includes(k)) continue;
      barycentric(basis, x[k]!, b);
      let worst = 0;
      for (let f = 0; f < functions; f++) {
        let r = -re[k]![f]!;
        let i = -im[k]![f]!;
        for (let j = 0; j < chosen.length; j++) {
          const vr = re[chosen[j]!]![f]!;
          const vi = im[chosen[j]!]![f]!;
          r += b[2 * j]! * vr - b[2 * j + 1]! * vi;
          i += b[2 * j]! * vi + b[2 * j + 1]! * vr;
        }
        worst = Math.max(worst, Math.hypot(r, i));
      }
      errors[k] = worst;
      misfit = Math.max(misfit, worst / top);
    }
    if (misfit <= tolerance || chosen.length >= count - 1) return { ...basis, misfit };
  }
}

/** Writes the weights of the support values at x, real and imaginary in turn. */
export function barycentric(basis: RationalBasis, x: number, out: Float64Array): void {
  const { support, weightRe, weightIm } = basis;
  const n = support.length;
  let sr = 0;
  let si = 0;
  for (let j = 0; j < n; j++) {
    const d = x - support[j]!;
    if (d === 0) {
      out.fill(0, 0, 2 * n);
      out[2 * j] = 1;
      return;
    }
    const r = weightRe[j]! / d;
    const i = weightIm[j]! / d;
    out[2 * j] = r;
    out[2 * j + 1] = i;
    sr += r;
    si += i;
  }
  const size = sr * sr + si * si;
  for (let j = 0; j < n; j++) {
    const r = out[2 * j]!;
    const i = out[2 * j + 1]!;
    out[2 * j] = (r * sr + i * si) / size;
    out[2 * j + 1] = (i * sr - r * si) / size;
  }
}

/** Smallest right singular vector of the Loewner matrix, by QR and inverse iteration. */
function loewnerWeights(
  x: Float64Array,
  re: readonly Float64Array[],
  im: readonly Float64Array[],
  chosen: readonly number[],
): { readonly weightRe: Float64Array; readonly weightIm: Float64Array } {
  const m = chosen.length;
  const functions = re[0]!.length;
  const others = [...x.keys()].filter((k) => !chosen.includes(k));
  const rows = others.length * functions;
  const qr = chosen.map(() => new Float64Array(rows));
  const qi = chosen.map(() => new Float64Array(rows));
  chosen.forEach((c, j) => {
    let row = 0;
    for (const k of others)
      for (let f = 0; f < functions; f++, row++) {
        qr[j]![row] = (re[k]![f]! - re[c]![f]!) / (x[k]! - x[c]!);
        qi[j]![row] = (im[k]![f]! - im[c]![f]!) / (x[k]! - x[c]!);
      }
  });
  // modified Gram-Schmidt: A = Q R, R upper triangular
  const rr = new Float64Array(m * m);
  const ri = new Float64Array(m * m);
  let largest = 0;
  for (let j = 0; j < m; j++) {
    for (let i = 0; i < j; i++) {
      let [pr, pi] = [0, 0];
      for (let n = 0; n < rows; n++) {
        pr += qr[i]![n]! * qr[j]![n]! + qi[i]![n]! * qi[j]![n]!;
        pi += qr[i]![n]! * qi[j]![n]! - qi[i]![n]! * qr[j]![n]!;
      }
      rr[i * m + j] = pr;
      ri[i * m + j] = pi;
      for (let n = 0; n < rows; n++) {
        qr[j]![n] = qr[j]![n]! - (pr * qr[i]![n]! - pi * qi[i]![n]!);
        qi[j]![n] = qi[j]![n]! - (pr * qi[i]![n]! + pi * qr[i]![n]!);
      }
    }
    let size = 0;
    for (let n = 0; n < rows; n++) size += qr[j]![n]! ** 2 + qi[j]![n]! ** 2;
    size = Math.sqrt(size);
    largest = Math.max(largest, size);
    rr[j * m + j] = size;
    if (size > 0)
      for (let n = 0; n < rows; n++) {
        qr[j]![n] = qr[j]![n]! / size;
        qi[j]![n] = qi[j]![n]! / size;
      }
  }
  // a diagonal of rounding noise alone would divide by nothing
  for (let j = 0; j < m; j++) rr[j * m + j] = Math.max(rr[j * m + j]!, 1e-15 * largest, 1e-150);
  const wr = new Float64Array(m).fill(1);
  const wi = new Float64Array(m);
  for (let step = 0; step < 4; step++) {
    solveAdjoint(m, rr, ri, wr, wi);
    normalise(wr, wi);
    solveUpper(m, rr, ri, wr, wi);
    normalise(wr, wi);
  }
  return { weightRe: wr, weightIm: wi };
}

function normalise(re: Float64Array, im: Float64Array): void {
  let size = 0;
  for (let j = 0; j < re.length; j++) size = Math.max(size, Math.hypot(re[j]!, im[j]!));
  for (let j = 0; j < re.length; j++) {
    re[j] = re[j]! / size;
    im[j] = im[j]! / size;
  }
}

/** R^H y = b in place; the diagonal is real. */
function solveAdjoint(m: number, rr: Float64Array, ri: Float64Array, br: Float64Array, bi: Float64Array): void {
  for (let j = 0; j < m; j++) {
    for (let i = 0; i < j; i++) {
      br[j] = br[j]! - (rr[i * m + j]! * br[i]! + ri[i * m + j]! * bi[i]!);
      bi[j] = bi[j]! - (rr[i * m + j]! * bi[i]! - ri[i * m + j]! * br[i]!);
    }
    br[j] = br[j]! / rr[j * m + j]!;
    bi[j] = bi[j]! / rr[j * m + j]!;
  }
}

/** R w = y in place. */
function solveUpper(m: number, rr: Float64Array, ri: Float64Array, br: Float64Array, bi: Float64Array): void {
  for (let j = m - 1; j >= 0; j--) {
    for (let i = j + 1; i < m; i++) {
      br[j] = br[j]! - (rr[j * m + i]! * br[i]! - ri[j * m + i]! * bi[i]!);
      bi[j] = bi[j]! - (rr[j * m + i]! * bi[i]! + ri[j * m + i]! * br[i]!);
    }
    br[j] = br[j]! / rr[j * m + j]!;
    bi[j] = bi[j]! / rr[j * m + j]!;
  }
}
