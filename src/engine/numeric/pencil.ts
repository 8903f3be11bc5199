import type { Complex } from './complex.ts';
import * as C from './complex.ts';
import { eigenvalues } from './eigenvalues.ts';
import * as LU from './lu.ts';

/** Complex matrices of the linear system (G + s E) x = b, row-major, split planes. E may be singular: algebraic equations are welcome. */
export class Pencil {
  readonly size: number;
  readonly gRe: Float64Array;
  readonly gIm: Float64Array;
  readonly eRe: Float64Array;
  readonly eIm: Float64Array;

  constructor(size: number) {
    this.size = size;
    this.gRe = new Float64Array(size * size);
    this.gIm = new Float64Array(size * size);
    this.eRe = new Float64Array(size * size);
    this.eIm = new Float64Array(size * size);
  }

  /** Adds g + s e to the element in a row and a column. */
  add(row: number, column: number, g: Complex, e: Complex): void {
    const k = row * this.size + column;
    this.gRe[k] = this.gRe[k]! + g.re;
    this.gIm[k] = this.gIm[k]! + g.im;
    this.eRe[k] = this.eRe[k]! + e.re;
    this.eIm[k] = this.eIm[k]! + e.im;
  }

  /** The factors of G + s E (or its transpose), ready for solving; null where it is singular. */
  factorAt(s: Complex, transposed = false): Factored | null {
    const n = this.size;
    const re = new Float64Array(n * n);
    const im = new Float64Array(n * n);
    for (let i = 0; i < n; i++)
      for (let k = 0; k < n; k++) {
        const from = i * n + k;
        const to = transposed ? k * n + i : from;
        re[to] = this.gRe[from]! + s.re * this.eRe[from]! - s.im * this.eIm[from]!;
        im[to] = this.gIm[from]! + s.re * this.eIm[from]! + s.im * this.eRe[from]!;
      }
    const pivots = new Int32Array(n);
    if (!LU.factor(n, re, im, pivots)) return null;
    return { solve: (x) => LU.solve(n, re, im, pivots, x.re, x.im) };
  }
}

export interface Factored {
  /** overwrites the right-hand side by the solution */
  solve(x: ComplexVector): void;
}

export interface ComplexVector {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** One natural mode: pole s, right vector t and left vector w, (G + s E) t = 0, w^T (G + s E) = 0, w^T E t = 1. */
export interface Mode {
  readonly pole: Complex;
  readonly right: ComplexVector;
  readonly left: ComplexVector;
}

/** Eigenvalues of the inverse below this share of the largest are poles at infinity: the algebraic equations. */
const INFINITE = 1e-11;
/** Least w^T E t of unit vectors; below it two modes have run into one and cannot be told apart. */
const DEFECTIVE = 1e-9;
/** Poles nearer to each other than this, by their distance from s0, are one. */
const COINCIDENT = 1e-10;

/**
 * Finite natural modes of a pencil within a distance of a point, nearest first.
 *
 * Poles by shift and inversion about the point (eigenvalues mu of (G + s0 E)^-1 E give s0 - 1/mu; infinite poles have mu = 0 and drop out),
 * each then refined together with its vectors by inverse iteration with the two-sided Rayleigh quotient s = -(w^T G t)/(w^T E t), which
 * converges cubically. With them x(s) = sum of t w^T b/(s - pole) + what the modes left out give.
 *
 * @param about - s0; must not itself be a pole
 * @param reach - greatest |pole - s0|
 * @returns null where the pencil is singular at s0, or where two poles coincide so closely that their vectors cannot be told apart
 * Source: G. H. Golub, C. F. Van Loan, Matrix Computations, ch. 7.7; A. M. Ostrowski, Arch. Rational Mech. Anal. 3 (1959) 472 (two-sided quotient).
 */
export function pencilModes(pencil: Pencil, about: Complex, reach: number): Mode[] | null {
  const n = pencil.size;
  const inverse = pencil.factorAt(about);
  if (!inverse) return null;
  const mRe = new Float64Array(n * n);
  const mIm = new Float64Array(n * n);
  const column: ComplexVector = { re: new Float64Array(n), im: new Float64Array(n) };
  for (let k = 0; k < n; k++) {
    for (let i = 0; i < n; i++) {
      column.re[i] = pencil.eRe[i * n + k]!;
      column.im[i] = pencil.eIm[i * n + k]!;
    }
    inverse.solve(column);
    for (let i = 0; i < n; i++) {
      mRe[i * n + k] = column.re[i]!;
      mIm[i * n + k] = column.im[i]!;
    }
  }
  const mu = eigenvalues(n, mRe, mIm);
  if (!mu) return null;
  const largest = mu.reduce((m, z) => Math.max(m, C.abs(z)), 0);
  const modes: Mode[] = [];
  for (const z of mu) {
    const size = C.abs(z);
    if (size <= INFINITE * largest || size * reach < 1) continue;
    const mode = refine(pencil, C.sub(about, C.inv(z)), about);
    // a double pole: both searches have found the same vector
    if (!mode || modes.some((m) => C.abs(C.sub(m.pole, mode.pole)) <= COINCIDENT * C.abs(C.sub(mode.pole, about)))) return null;
    modes.push(mode);
  }
  const distance = (m: Mode): number => C.abs(C.sub(m.pole, about));
  return modes.sort((a, b) => distance(a) - distance(b));
}

function refine(pencil: Pencil, guess: Complex, about: Complex): Mode | null {
  const n = pencil.size;
  // any start will do that is not orthogonal to the mode: uneven numbers, the same every time
  const start = (): ComplexVector => ({ re: Float64Array.from({ length: n }, (_, k) => 1 / (1 + ((7 * k) % 5))), im: new Float64Array(n) });
  const right = start();
  const left = start();
  let pole = guess;
  for (let step = 0; step < 4; step++) {
    // exactly on the pole there is nothing to solve: a hair beside it
    const beside = C.add(pole, C.scale(C.sub(pole, about), 1e-13));
    const plain = pencil.factorAt(pole) ?? pencil.factorAt(beside);
    const turned = pencil.factorAt(pole, true) ?? pencil.factorAt(beside, true);
    if (!plain || !turned) return null;
    multiply(pencil, right, false);
    plain.solve(right);
    normalise(right);
    multiply(pencil, left, true);
    turned.solve(left);
    normalise(left);
    const e = bilinear(pencil.eRe, pencil.eIm, left, right);
    if (C.abs(e.value) < DEFECTIVE * e.size) return null;
    const g = bilinear(pencil.gRe, pencil.gIm, left, right);
    const next = C.neg(C.div(g.value, e.value));
    const moved = C.abs(C.sub(next, pole));
    pole = next;
    if (step > 0 && moved <= 1e-13 * C.abs(C.sub(pole, about))) break;
  }
  const { value } = bilinear(pencil.eRe, pencil.eIm, left, right);
  const scale = C.inv(value);
  for (let i = 0; i < n; i++) {
    const r = left.re[i]!;
    const m = left.im[i]!;
    left.re[i] = r * scale.re - m * scale.im;
    left.im[i] = r * scale.im + m * scale.re;
  }
  return { pole, right, left };
}

/** x = E x, or E^T x. */
function multiply(pencil: Pencil, x: ComplexVector, transposed: boolean): void {
  const n = pencil.size;
  const re = x.re.slice();
  const im = x.im.slice();
  for (let i = 0; i < n; i++) {
    let r = 0;
    let m = 0;
    for (let k = 0; k < n; k++) {
      const o = transposed ? k * n + i : i * n + k;
      r += pencil.eRe[o]! * re[k]! - pencil.eIm[o]! * im[k]!;
      m += pencil.eRe[o]! * im[k]! + pencil.eIm[o]! * re[k]!;
    }
    x.re[i] = r;
    x.im[i] = m;
  }
}

function normalise(x: ComplexVector): void {
  let size = 0;
  for (let i = 0; i < x.re.length; i++) size = Math.max(size, Math.abs(x.re[i]!), Math.abs(x.im[i]!));
  for (let i = 0; i < x.re.length; i++) {
    x.re[i] = x.re[i]! / size;
    x.im[i] = x.im[i]! / size;
  }
}

/** w^T M t, and the sum of the magnitudes of its terms. */
function bilinear(mRe: Float64Array, mIm: Float64Array, w: ComplexVector, t: ComplexVector): { value: Complex; size: number } {
  const n = w.re.length;
  let re = 0;
  let im = 0;
  let size = 0;
  for (let i = 0; i < n; i++) {
    let r = 0;
    let m = 0;
    for (let k = 0; k < n; k++) {
      const o = i * n + k;
      r += mRe[o]! * t.re[k]! - mIm[o]! * t.im[k]!;
      m += mRe[o]! * t.im[k]! + mIm[o]! * t.re[k]!;
    }
    const a = w.re[i]! * r - w.im[i]! * m;
    const b = w.re[i]! * m + w.im[i]! * r;
    re += a;
    im += b;
    size += Math.hypot(a, b);
  }
  return { value: { re, im }, size };
}
