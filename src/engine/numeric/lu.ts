/**
 * Dense complex LU factorisation with partial pivoting, on split real and imaginary planes, row-major, in place.
 *
 * The trailing matrix is updated four pivots at a time: each element is then loaded and stored once for four
 * multiply-adds, which is what bounds the speed in JavaScript.
 */

/** Factors the n x n matrix in place; `pivots` receives the row exchanges. False if the matrix is singular to working precision. */
export function factor(n: number, re: Float64Array, im: Float64Array, pivots: Int32Array): boolean {
  const block = 4;
  for (let k0 = 0; k0 < n; k0 += block) {
    const k1 = Math.min(k0 + block, n);
    if (!factorPanel(n, k0, k1, re, im, pivots)) return false;
    for (let k = k0; k < k1; k++) for (let i = k + 1; i < k1; i++) subtractRow(n, i, k, k1, re, im);
    if (k1 - k0 === block) updateTrailing4(n, k0, re, im);
    else for (let i = k1; i < n; i++) for (let k = k0; k < k1; k++) subtractRow(n, i, k, k1, re, im);
  }
  return true;
}

/** Solves for one right-hand side in place, with the factors left by `factor`. */
export function solve(n: number, re: Float64Array, im: Float64Array, pivots: Int32Array, bRe: Float64Array, bIm: Float64Array): void {
  for (let k = 0; k < n; k++) {
    const p = pivots[k]!;
    if (p === k) continue;
    const r = bRe[k]!;
    bRe[k] = bRe[p]!;
    bRe[p] = r;
    const m = bIm[k]!;
    bIm[k] = bIm[p]!;
    bIm[p] = m;
  }
  for (let i = 0; i < n; i++) {
    const o = i * n;
    let r = bRe[i]!;
    let m = bIm[i]!;
    for (let j = 0; j < i; j++) {
      r -= re[o + j]! * bRe[j]! - im[o + j]! * bIm[j]!;
      m -= re[o + j]! * bIm[j]! + im[o + j]! * bRe[j]!;
    }
    bRe[i] = r;
    bIm[i] = m;
  }
  for (let i = n - 1; i >= 0; i--) {
    const o = i * n;
    let r = bRe[i]!;
    let m = bIm[i]!;
    for (let j = i + 1; j < n; j++) {
      r -= re[o + j]! * bRe[j]! - im[o + j]! * bIm[j]!;
      m -= re[o + j]! * bIm[j]! + im[o + j]! * bRe[j]!;
    }
    const dr = re[o + i]!;
    const di = im[o + i]!;
    const d = dr * dr + di * di;
    bRe[i] = (r * dr + m * di) / d;
    bIm[i] = (m * dr - r * di) / d;
  }
}

/** Factors columns k0..k1 for all rows below, exchanging whole rows. */
function factorPanel(n: number, k0: number, k1: number, re: Float64Array, im: Float64Array, pivots: Int32Array): boolean {
  for (let k = k0; k < k1; k++) {
    let p = k;
    let best = -1;
    for (let i = k; i < n; i++) {
      const v = re[i * n + k]! ** 2 + im[i * n + k]! ** 2;
      if (v > best) {
        best = v;
        p = i;
      }
    }
    pivots[k] = p;
    if (!(best > 0)) return false;
    if (p !== k) swapRows(n, k, p, re, im);
    const kk = k * n + k;
    const d = re[kk]! ** 2 + im[kk]! ** 2;
    const ir = re[kk]! / d;
    const ii = -im[kk]! / d;
    const ko = k * n;
    for (let i = k + 1; i < n; i++) {
      const io = i * n;
      const xr = re[io + k]!;
      const xi = im[io + k]!;
      const r = xr * ir - xi * ii;
      const m = xr * ii + xi * ir;
      re[io + k] = r;
      im[io + k] = m;
      for (let j = k + 1; j < k1; j++) {
        const ur = re[ko + j]!;
        const ui = im[ko + j]!;
        re[io + j] = re[io + j]! - (r * ur - m * ui);
        im[io + j] = im[io + j]! - (r * ui + m * ur);
      }
    }
  }
  return true;
}

function swapRows(n: number, a: number, b: number, re: Float64Array, im: Float64Array): void {
  const ao = a * n;
  const bo = b * n;
  for (let j = 0; j < n; j++) {
    const r = re[ao + j]!;
    re[ao + j] = re[bo + j]!;
    re[bo + j] = r;
    const m = im[ao + j]!;
    im[ao + j] = im[bo + j]!;
    im[bo + j] = m;
  }
}

/** Row i loses multiplier (i,k) times row k, from column j0 on. */
function subtractRow(n: number, i: number, k: number, j0: number, re: Float64Array, im: Float64Array): void {
  const io = i * n;
  const ko = k * n;
  const r = re[io + k]!;
  const m = im[io + k]!;
  for (let j = j0; j < n; j++) {
    const ur = re[ko + j]!;
    const ui = im[ko + j]!;
    re[io + j] = re[io + j]! - (r * ur - m * ui);
    im[io + j] = im[io + j]! - (r * ui + m * ur);
  }
}

function updateTrailing4(n: number, k0: number, re: Float64Array, im: Float64Array): void {
  const k1 = k0 + 4;
  const o0 = k0 * n;
  const o1 = o0 + n;
  const o2 = o1 + n;
  const o3 = o2 + n;
  for (let i = k1; i < n; i++) {
    const io = i * n;
    const a0 = re[io + k0]!;
    const b0 = im[io + k0]!;
    const a1 = re[io + k0 + 1]!;
    const b1 = im[io + k0 + 1]!;
    const a2 = re[io + k0 + 2]!;
    const b2 = im[io + k0 + 2]!;
    const a3 = re[io + k0 + 3]!;
    const b3 = im[io + k0 + 3]!;
    for (let j = k1; j < n; j++) {
      const r0 = re[o0 + j]!;
      const m0 = im[o0 + j]!;
      const r1 = re[o1 + j]!;
      const m1 = im[o1 + j]!;
      const r2 = re[o2 + j]!;
      const m2 = im[o2 + j]!;
      const r3 = re[o3 + j]!;
      const m3 = im[o3 + j]!;
      re[io + j] = re[io + j]! - (a0 * r0 - b0 * m0 + a1 * r1 - b1 * m1) - (a2 * r2 - b2 * m2 + a3 * r3 - b3 * m3);
      im[io + j] = im[io + j]! - (a0 * m0 + b0 * r0 + a1 * m1 + b1 * r1) - (a2 * m2 + b2 * r2 + a3 * m3 + b3 * r3);
    }
  }
}
