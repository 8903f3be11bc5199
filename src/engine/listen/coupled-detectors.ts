import type { DescribingFunction } from '../detector/index.ts';
import { DetectorSolver } from './detector-solver.ts';

const MOST_ROUNDS = 400;
/** Change of a round, by the largest voltage, below which all detectors agree. */
const AGREED = 1e-8;
/** A detector is left as it is in a round that would change what it is given by less than this share. */
const UNCHANGED = 1e-9;

/**
 * Any number of detectors on one circuit, at one instant.
 *
 * sum over p of (F_jp + Z_jp G_p) v_p = d_j, V_j = Vh_j + sum over p of R_jp i_p, G_p and i_p by the law from |v_p| and V_p. One detector after another is
 * solved with the others held (Gauss-Seidel), until none moves. For a passive circuit the matrices are those of a positive form and the laws rise, so
 * each round lowers it.
 */
export class CoupledDetectors {
  readonly count: number;
  readonly solvers: readonly DetectorSolver[];
  /** Z, row-major, real and imaginary planes; R; conductances g_p that are in the circuit already: F = 1 - Z g */
  readonly zRe: Float64Array;
  readonly zIm: Float64Array;
  readonly r: Float64Array;
  readonly conductances: Float64Array;
  readonly #fRe: Float64Array;
  readonly #fIm: Float64Array;
  /** in: d_j and Vh_j; out: v_j */
  readonly driveRe: Float64Array;
  readonly driveIm: Float64Array;
  readonly before: Float64Array;
  readonly voltageRe: Float64Array;
  readonly voltageIm: Float64Array;
  /** what each was last solved for */
  readonly #givenRe: Float64Array;
  readonly #givenIm: Float64Array;
  readonly #givenBefore: Float64Array;
  /** instants at which the rounds did not end */
  failures = 0;

  constructor(laws: readonly DescribingFunction[]) {
    const n = laws.length;
    this.count = n;
    this.solvers = laws.map((law) => new DetectorSolver(law));
    this.conductances = new Float64Array(n);
    this.#fRe = new Float64Array(n * n);
    this.#fIm = new Float64Array(n * n);
    this.zRe = new Float64Array(n * n);
    this.zIm = new Float64Array(n * n);
    this.r = new Float64Array(n * n);
    this.driveRe = new Float64Array(n);
    this.driveIm = new Float64Array(n);
    this.before = new Float64Array(n);
    this.voltageRe = new Float64Array(n);
    this.voltageIm = new Float64Array(n);
    this.#givenRe = new Float64Array(n);
    this.#givenIm = new Float64Array(n);
    this.#givenBefore = new Float64Array(n);
  }

  /** To be called once the matrices are filled in. */
  settle(): void {
    const n = this.count;
    for (let j = 0; j < n; j++) {
      for (let p = 0; p < n; p++) {
        const k = j * n + p;
        this.#fRe[k] = (j === p ? 1 : 0) - this.zRe[k]! * this.conductances[p]!;
        this.#fIm[k] = -this.zIm[k]! * this.conductances[p]!;
      }
      const own = j * n + j;
      this.solvers[j]!.between(this.zRe[own]!, this.zIm[own]!, this.conductances[j]!, this.r[own]!);
    }
  }

  /** Solves the instant from where the last one ended. */
  solve(): void {
    for (let round = 0; round < MOST_ROUNDS; round++) {
      let moved = 0;
      let size = 0;
      for (let j = 0; j < this.count; j++) {
        moved = Math.max(moved, this.#one(j, round > 0));
        size = Math.max(size, Math.hypot(this.voltageRe[j]!, this.voltageIm[j]!));
      }
      if (this.count === 1 || moved <= AGREED * size) return;
    }
    this.failures++;
  }

  /**
   * @param again - whether it has been solved at this instant
   * @returns how far the detector's voltages moved [V]
   */
  #one(j: number, again: boolean): number {
    const n = this.count;
    let re = this.driveRe[j]!;
    let im = this.driveIm[j]!;
    let before = this.before[j]!;
    for (let p = 0; p < n; p++) {
      if (p === j) continue;
      const k = j * n + p;
      const other = this.solvers[p]!;
      const a = this.#fRe[k]! + this.zRe[k]! * other.conductance;
      const b = this.#fIm[k]! + this.zIm[k]! * other.conductance;
      re -= a * this.voltageRe[p]! - b * this.voltageIm[p]!;
      im -= a * this.voltageIm[p]! + b * this.voltageRe[p]!;
      before += this.r[k]! * other.current;
    }
    if (again) {
      const changed = Math.abs(re - this.#givenRe[j]!) + Math.abs(im - this.#givenIm[j]!) + Math.abs(before - this.#givenBefore[j]!);
      if (changed <= UNCHANGED * (Math.abs(re) + Math.abs(im))) return 0;
    }
    this.#givenRe[j] = re;
    this.#givenIm[j] = im;
    this.#givenBefore[j] = before;
    const solver = this.solvers[j]!;
    const lastOutput = solver.output;
    solver.solve(Math.hypot(re, im), before);
    const own = j * n + j;
    const a = this.#fRe[own]! + this.zRe[own]! * solver.conductance;
    const b = this.#fIm[own]! + this.zIm[own]! * solver.conductance;
    const size = a * a + b * b;
    const vRe = (re * a + im * b) / size;
    const vIm = (im * a - re * b) / size;
    const moved = Math.hypot(vRe - this.voltageRe[j]!, vIm - this.voltageIm[j]!) + Math.abs(solver.output - lastOutput);
    this.voltageRe[j] = vRe;
    this.voltageIm[j] = vIm;
    return moved;
  }
}
