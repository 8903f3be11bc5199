import { bicubic, bicubicThrough, cubicThrough, fastExp } from '../numeric/index.ts';
import {
  type CycleAverages,
  FUNDAMENTAL_BY_BOTH,
  MEAN_BY_BOTH,
  REST_BY_OUTPUT,
  REST_CURRENT,
  REST_QUARTER_BEND,
  REST_QUARTER_BEND_BY_OUTPUT,
  REST_SLOPE,
  REST_SLOPE_BY_OUTPUT,
} from './cycle-average.ts';
import { FUNDAMENTAL, FUNDAMENTAL_BY_AMPLITUDE, FUNDAMENTAL_BY_OUTPUT, MEAN, MEAN_BY_AMPLITUDE, MEAN_BY_OUTPUT } from './model.ts';

/** Steps of the grid in amplitude, and in output voltage below and above zero. */
const ROWS = 2048;
const BELOW = 1024;
const COLUMNS = 3072;
/** Cells kept; a steady calculation visits some tens. 12 MB at the most. */
const MOST_CELLS = 40_000;
/** Relative error at the middle of a cell above which the cell is given up. */
const CELL_ERROR = 2e-5;
/** Parts of a cell in output voltage, each with a cubic of its own for the current at rest. */
const REST_PARTS = 4;
/** Two bicubics of sixteen, then a cubic of four for each part. */
const CELL_SIZE = 32 + 4 * REST_PARTS;
/** M, dM/dA, dM/dV, d2M/dAdV (or of ln M), the same of F. */
const NODE_SIZE = 8;
/** Least M and F of which a logarithm is kept; a cell that meets it fails its proof. */
const LEAST = 1e-300;
const NOT_YET = -1;
const GIVEN_UP = -2;

/**
 * A describing function computed once and looked up ever after.
 *
 * Kept are M = (mean - i(-V))/A^2, F = fundamental/A and the current at rest i(-V): all smooth and even in A, so that mean and fundamental
 * keep their relative precision down to no signal at all. For a law that bends one way only (a junction), M and F are above zero and their
 * logarithms are kept, which are far straighter. The plane of A and V is cut into cells; in each, M and F are the bicubic
 * Hermite polynomials through values, slopes and cross slopes at its corners. The result and its derivatives by A and V belong to
 * each other exactly and are continuous. A cell is made when it is first asked for, and proved at its middle against the direct average; a
 * cell that fails (more than 2e-5 off), and whatever lies beyond the grid, is answered by the direct average.
 *
 * Source: bicubic Hermite interpolation, error h^4/384 of the fourth derivative in each direction: 4e-6 for an exponential at h of a fifth of
 * its scale, a tenth of that for the logarithm of a junction's averages.
 */
export class TabulatedAverage {
  readonly #averages: CycleAverages;
  readonly #stepA: number;
  readonly #stepV: number;
  readonly #firstRow: number;
  readonly #logarithmic: boolean;
  readonly #rows: (Int32Array | undefined)[] = new Array<Int32Array | undefined>(ROWS).fill(undefined);
  #cells = new Float64Array(16 * CELL_SIZE);
  #count = 0;
  readonly #nodes = new Map<number, Float64Array>();
  readonly #direct = new Float64Array(8);
  readonly #rest = new Float64Array(6);
  readonly #value = new Float64Array(3);

  /**
   * @param stepA - of the grid in amplitude [V]
   * @param stepV - of the grid in output voltage [V]
   * @param logarithmic - the law's slope and curvature are above zero everywhere
   * @param firstRow - amplitudes below this many steps are always averaged directly: for laws whose curvature has steps
   */
  constructor(averages: CycleAverages, stepA: number, stepV: number, logarithmic: boolean, firstRow: number) {
    this.#averages = averages;
    this.#stepA = stepA;
    this.#stepV = stepV;
    this.#logarithmic = logarithmic;
    this.#firstRow = firstRow;
  }

  at(amplitude: number, output: number, out: Float64Array): void {
    const s = amplitude / this.#stepA;
    const t = output / this.#stepV;
    const below = Math.floor(t);
    const column = below + BELOW;
    if (!(s < ROWS && column >= 0 && column < COLUMNS) || s < this.#firstRow) {
      this.direct(amplitude, output, out);
      return;
    }
    const row = s | 0;
    let o = this.#rows[row]?.[column] ?? NOT_YET;
    if (o === NOT_YET) o = this.#make(row, column);
    if (o === GIVEN_UP) {
      this.direct(amplitude, output, out);
      return;
    }
    const c = this.#cells;
    const v = this.#value;
    const x = s - row;
    // an output of femtovolts keeps its figures, as zero is a corner of the grid
    const y = t - below;
    bicubic(c, o, x, y, v);
    // a logarithm's slopes times the value are the value's slopes
    const m = this.#logarithmic ? fastExp(v[0]!) : v[0]!;
    const mScale = this.#logarithmic ? m : 1;
    const mA = (mScale * v[1]!) / this.#stepA;
    const mV = (mScale * v[2]!) / this.#stepV;
    bicubic(c, o + 16, x, y, v);
    const f = this.#logarithmic ? fastExp(v[0]!) : v[0]!;
    const fScale = this.#logarithmic ? f : 1;
    // y rounds to 1 a hair below a corner
    const part = Math.min((y * REST_PARTS) | 0, REST_PARTS - 1);
    const z = y * REST_PARTS - part;
    const r = o + 32 + 4 * part;
    const rest = ((c[r + 3]! * z + c[r + 2]!) * z + c[r + 1]!) * z + c[r]!;
    const restV = (((3 * c[r + 3]! * z + 2 * c[r + 2]!) * z + c[r + 1]!) * REST_PARTS) / this.#stepV;
    const a = amplitude;
    out[MEAN] = rest + a * a * m;
    out[MEAN_BY_AMPLITUDE] = a * (2 * m + a * mA);
    out[MEAN_BY_OUTPUT] = restV + a * a * mV;
    out[FUNDAMENTAL] = a * f;
    out[FUNDAMENTAL_BY_AMPLITUDE] = f + (a * fScale * v[1]!) / this.#stepA;
    out[FUNDAMENTAL_BY_OUTPUT] = (a * fScale * v[2]!) / this.#stepV;
  }

  /** The average itself; below a thousandth of the grid's first step by its limit for small signals, where the sum would lose figures. */
  direct(amplitude: number, output: number, out: Float64Array): void {
    if (this.#firstRow > 0 || amplitude > 1e-3 * this.#stepA) {
      this.#averages.average(amplitude, output, this.#direct);
      for (let k = 0; k < 6; k++) out[k] = this.#direct[k]!;
      return;
    }
    const r = this.#rest;
    this.#averages.rest(output, r);
    out[MEAN] = r[REST_CURRENT]! + amplitude * amplitude * r[REST_QUARTER_BEND]!;
    out[MEAN_BY_AMPLITUDE] = 2 * amplitude * r[REST_QUARTER_BEND]!;
    out[MEAN_BY_OUTPUT] = r[REST_BY_OUTPUT]! + amplitude * amplitude * r[REST_QUARTER_BEND_BY_OUTPUT]!;
    out[FUNDAMENTAL] = amplitude * r[REST_SLOPE]!;
    out[FUNDAMENTAL_BY_AMPLITUDE] = r[REST_SLOPE]!;
    out[FUNDAMENTAL_BY_OUTPUT] = amplitude * r[REST_SLOPE_BY_OUTPUT]!;
  }

  #node(row: number, column: number): Float64Array {
    const key = row * (COLUMNS + 1) + column;
    let node = this.#nodes.get(key);
    if (node) return node;
    node = new Float64Array(NODE_SIZE);
    this.#fill(row * this.#stepA, (column - BELOW) * this.#stepV, node);
    for (const f of [0, 4]) {
      if (this.#logarithmic) {
        const value = Math.max(LEAST, node[f]!);
        node[f + 1] = node[f + 1]! / value;
        node[f + 2] = node[f + 2]! / value;
        node[f + 3] = node[f + 3]! / value - node[f + 1]! * node[f + 2]!;
        node[f] = Math.log(value);
      }
      // slopes per step, as the polynomials want them
      node[f + 1] = node[f + 1]! * this.#stepA;
      node[f + 2] = node[f + 2]! * this.#stepV;
      node[f + 3] = node[f + 3]! * this.#stepA * this.#stepV;
    }
    this.#nodes.set(key, node);
    return node;
  }

  /** M and F with their slopes [per volt] at a point of the plane. */
  #fill(a: number, v: number, node: Float64Array): void {
    const r = this.#rest;
    this.#averages.rest(v, r);
    if (a === 0) {
      node[0] = r[REST_QUARTER_BEND]!;
      node[2] = r[REST_QUARTER_BEND_BY_OUTPUT]!;
      node[4] = r[REST_SLOPE]!;
      node[6] = r[REST_SLOPE_BY_OUTPUT]!;
      return;
    }
    const d = this.#direct;
    this.#averages.average(a, v, d);
    const above = d[MEAN]! - r[REST_CURRENT]!;
    const aboveV = d[MEAN_BY_OUTPUT]! - r[REST_BY_OUTPUT]!;
    const square = a * a;
    node[0] = above / square;
    node[1] = (d[MEAN_BY_AMPLITUDE]! - (2 * above) / a) / square;
    node[2] = aboveV / square;
    node[3] = (d[MEAN_BY_BOTH]! - (2 * aboveV) / a) / square;
    node[4] = d[FUNDAMENTAL]! / a;
    node[5] = (d[FUNDAMENTAL_BY_AMPLITUDE]! - d[FUNDAMENTAL]! / a) / a;
    node[6] = d[FUNDAMENTAL_BY_OUTPUT]! / a;
    node[7] = (d[FUNDAMENTAL_BY_BOTH]! - d[FUNDAMENTAL_BY_OUTPUT]! / a) / a;
  }

  /** @returns where the cell's coefficients stand, or that it was given up */
  #make(row: number, column: number): number {
    let index = this.#rows[row];
    if (!index) {
      index = new Int32Array(COLUMNS).fill(NOT_YET);
      this.#rows[row] = index;
    }
    if (this.#count === MOST_CELLS) return GIVEN_UP;
    const o = this.#count * CELL_SIZE;
    if (o + CELL_SIZE > this.#cells.length) {
      const grown = new Float64Array(2 * this.#cells.length);
      grown.set(this.#cells);
      this.#cells = grown;
    }
    const n00 = this.#node(row, column);
    const n01 = this.#node(row, column + 1);
    const n10 = this.#node(row + 1, column);
    const n11 = this.#node(row + 1, column + 1);
    bicubicThrough(n00, n01, n10, n11, 0, this.#cells, o);
    bicubicThrough(n00, n01, n10, n11, 4, this.#cells, o + 16);
    this.#restThrough(column - BELOW, o + 32);
    const good = this.#proved(row, column, o, [n00, n01, n10, n11]);
    if (good) this.#count++;
    index[column] = good ? o : GIVEN_UP;
    return index[column]!;
  }

  /** The current at rest over one column: a cubic for each part. */
  #restThrough(column: number, o: number): void {
    const r = this.#rest;
    const step = this.#stepV / REST_PARTS;
    this.#averages.rest(column * this.#stepV, r);
    let current = r[REST_CURRENT]!;
    let slope = r[REST_BY_OUTPUT]! * step;
    for (let part = 0; part < REST_PARTS; part++) {
      this.#averages.rest((column + (part + 1) / REST_PARTS) * this.#stepV, r);
      cubicThrough(current, r[REST_CURRENT]!, slope, r[REST_BY_OUTPUT]! * step, this.#cells, o + 4 * part, 1);
      current = r[REST_CURRENT]!;
      slope = r[REST_BY_OUTPUT]! * step;
    }
  }

  /** Compares the middle of a cell with the direct average; M against the greatest of the corners, as it may pass through zero. */
  #proved(row: number, column: number, o: number, corners: readonly Float64Array[]): boolean {
    const middle = new Float64Array(NODE_SIZE);
    this.#fill((row + 0.5) * this.#stepA, (column + 0.5 - BELOW) * this.#stepV, middle);
    for (const [first, place] of [
      [0, o],
      [4, o + 16],
    ] as const) {
      bicubic(this.#cells, place, 0.5, 0.5, this.#value);
      const value = middle[first]!;
      if (this.#logarithmic) {
        if (!(value > LEAST && Math.abs(this.#value[0]! - Math.log(value)) < CELL_ERROR)) return false;
      } else {
        const size = Math.max(Math.abs(value), ...corners.map((n) => Math.abs(n[first]!)));
        if (!(Math.abs(this.#value[0]! - value) <= CELL_ERROR * size)) return false;
      }
    }
    return true;
  }
}
