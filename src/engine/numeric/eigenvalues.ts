import { abs, add, type Complex, div, mul, scale, sqrt, sub, ZERO } from './complex.ts';

/**
 * Eigenvalues of a dense complex matrix (n x n, row-major planes; overwritten), in no particular order.
 *
 * Reduction to Hessenberg form by stabilised elimination, then the QR iteration with Wilkinson's shift, by complex Givens rotations.
 * For the small matrices of a receiver's circuits; not tuned for large ones.
 * Source: G. H. Golub, C. F. Van Loan, Matrix Computations, ch. 7.4-7.5.
 *
 * @returns n eigenvalues, or null where the iteration does not settle (never seen; kept so that it cannot hang)
 */
export function eigenvalues(n: number, re: Float64Array, im: Float64Array): Complex[] | null {
  hessenberg(n, re, im);
  const at = (i: number, k: number): Complex => ({ re: re[i * n + k]!, im: im[i * n + k]! });
  const put = (i: number, k: number, z: Complex): void => {
    re[i * n + k] = z.re;
    im[i * n + k] = z.im;
  };
  const out: Complex[] = new Array<Complex>(n).fill(ZERO);
  let high = n - 1;
  let steps = 0;
  while (high >= 0) {
    let low = high;
    while (low > 0) {
      const size = abs(at(low, low)) + abs(at(low - 1, low - 1));
      if (abs(at(low, low - 1)) <= Number.EPSILON * size) break;
      low--;
    }
    if (low === high) {
      out[high] = at(high, high);
      high--;
      steps = 0;
      continue;
    }
    if (++steps > 300) return null;
    // an odd shift now and then breaks the rare cycles of the iteration
    const shift =
      steps % 20 === 0
        ? scale(at(high, high - 1), 0.75)
        : wilkinson(at(high - 1, high - 1), at(high - 1, high), at(high, high - 1), at(high, high));
    qrStep(low, high, shift, at, put);
  }
  return out;
}

/** The eigenvalue of the last 2 x 2 block that lies nearer its last element. */
function wilkinson(a: Complex, b: Complex, c: Complex, d: Complex): Complex {
  const half = scale(sub(a, d), 0.5);
  const root = sqrt(add(mul(half, half), mul(b, c)));
  const p = add(half, root);
  const m = sub(half, root);
  const larger = abs(p) > abs(m) ? p : m;
  return abs(larger) === 0 ? d : sub(d, div(mul(b, c), larger));
}

type Get = (i: number, k: number) => Complex;
type Put = (i: number, k: number, z: Complex) => void;

/** One explicit-shift QR step on rows and columns low..high of a Hessenberg matrix, by Givens rotations. */
function qrStep(low: number, high: number, shift: Complex, at: Get, put: Put): void {
  const rotations: { c: number; s: Complex }[] = [];
  for (let i = low; i <= high; i++) put(i, i, sub(at(i, i), shift));
  for (let i = low; i < high; i++) {
    const x = at(i, i);
    const y = at(i + 1, i);
    const r = Math.hypot(abs(x), abs(y));
    // rotation [c s; -s* c] with real c that turns (x, y) into (r', 0)
    const ax = abs(x);
    const c = r === 0 ? 1 : ax / r;
    const phase = ax === 0 ? { re: 1, im: 0 } : scale(x, 1 / ax);
    const s = r === 0 ? ZERO : scale(mul(phase, { re: y.re, im: -y.im }), 1 / r);
    rotations.push({ c, s });
    for (let k = i; k <= high; k++) {
      const p = at(i, k);
      const q = at(i + 1, k);
      put(i, k, add(scale(p, c), mul(s, q)));
      put(i + 1, k, sub(scale(q, c), mul({ re: s.re, im: -s.im }, p)));
    }
  }
  rotations.forEach(({ c, s }, o) => {
    const k = low + o;
    for (let i = low; i <= Math.min(k + 1, high); i++) {
      const p = at(i, k);
      const q = at(i, k + 1);
      put(i, k, add(scale(p, c), mul({ re: s.re, im: -s.im }, q)));
      put(i, k + 1, sub(scale(q, c), mul(s, p)));
    }
  });
  for (let i = low; i <= high; i++) put(i, i, add(at(i, i), shift));
}

/** Reduces to upper Hessenberg form in place by elimination with row and column exchange (a similarity transformation). */
function hessenberg(n: number, re: Float64Array, im: Float64Array): void {
  for (let k = 1; k < n - 1; k++) {
    let p = k;
    let best = 0;
    for (let i = k; i < n; i++) {
      const v = re[i * n + k - 1]! ** 2 + im[i * n + k - 1]! ** 2;
      if (v > best) {
        best = v;
        p = i;
      }
    }
    if (best === 0) continue;
    if (p !== k)
      for (let j = 0; j < n; j++) {
        for (const m of [re, im]) {
          const row = m[k * n + j]!;
          m[k * n + j] = m[p * n + j]!;
          m[p * n + j] = row;
        }
      }
    if (p !== k)
      for (let i = 0; i < n; i++) {
        for (const m of [re, im]) {
          const column = m[i * n + k]!;
          m[i * n + k] = m[i * n + p]!;
          m[i * n + p] = column;
        }
      }
    const pivot = { re: re[k * n + k - 1]!, im: im[k * n + k - 1]! };
    for (let i = k + 1; i < n; i++) {
      const f = div({ re: re[i * n + k - 1]!, im: im[i * n + k - 1]! }, pivot);
      if (f.re === 0 && f.im === 0) continue;
      for (let j = 0; j < n; j++) {
        const a = k * n + j;
        const b = i * n + j;
        const r = re[a]!;
        const m = im[a]!;
        re[b] = re[b]! - (f.re * r - f.im * m);
        im[b] = im[b]! - (f.re * m + f.im * r);
      }
      for (let j = 0; j < n; j++) {
        const a = j * n + k;
        const b = j * n + i;
        const r = re[b]!;
        const m = im[b]!;
        re[a] = re[a]! + (f.re * r - f.im * m);
        im[a] = im[a]! + (f.re * m + f.im * r);
      }
    }
  }
}
