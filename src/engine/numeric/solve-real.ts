/**
 * Solves a small dense real system A x = b by Gaussian elimination with row exchange; A is destroyed, b is overwritten by x.
 *
 * @param a - n x n, row-major
 * @returns false if the matrix is singular
 */
export function solveReal(n: number, a: Float64Array, b: Float64Array): boolean {
  for (let k = 0; k < n; k++) {
    let p = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i * n + k]!) > Math.abs(a[p * n + k]!)) p = i;
    if (a[p * n + k] === 0) return false;
    if (p !== k) {
      for (let j = k; j < n; j++) {
        const t = a[k * n + j]!;
        a[k * n + j] = a[p * n + j]!;
        a[p * n + j] = t;
      }
      const t = b[k]!;
      b[k] = b[p]!;
      b[p] = t;
    }
    for (let i = k + 1; i < n; i++) {
      const f = a[i * n + k]! / a[k * n + k]!;
      if (f === 0) continue;
      for (let j = k + 1; j < n; j++) a[i * n + j] = a[i * n + j]! - f * a[k * n + j]!;
      b[i] = b[i]! - f * b[k]!;
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    let s = b[k]!;
    for (let j = k + 1; j < n; j++) s -= a[k * n + j]! * b[j]!;
    b[k] = s / a[k * n + k]!;
  }
  return true;
}
