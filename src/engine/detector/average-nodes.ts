import type { AverageGrid } from './average-grid.ts';
import {
  AVERAGES,
  type CycleAverages,
  FUNDAMENTAL_BY_BOTH,
  FUNDAMENTAL_BY_OUTPUT_TWICE,
  MEAN_BY_BOTH,
  MEAN_BY_OUTPUT_TWICE,
  REST_ABOVE_FLOOR,
  REST_BY_OUTPUT,
  REST_BY_OUTPUT_TWICE,
  REST_CURRENT,
  REST_QUARTER_BEND,
  REST_QUARTER_BEND_BY_OUTPUT,
  REST_SLOPE,
  REST_SLOPE_BY_OUTPUT,
  RESTS,
} from './cycle-average.ts';
import type { GradedGrid } from './graded-grid.ts';
import { FUNDAMENTAL, FUNDAMENTAL_BY_AMPLITUDE, FUNDAMENTAL_BY_OUTPUT, MEAN, MEAN_BY_AMPLITUDE, MEAN_BY_OUTPUT } from './model.ts';

/** Where F and its derivatives stand in what `AverageNodes.fill` writes; M and its own stand at 0. */
export const FILLED_F = 5;
const FILL_SIZE = 10;
const NODE_SIZE = 8;
/** Least M and F of which a logarithm is kept; below stands the logarithm of this, level: a law so far from conducting may as well conduct nothing. */
export const LEAST = 1e-300;

/** The functions M and F of `TabulatedAverage` with their slopes where the lines of its grid cross, each crossing computed once. */
export class AverageNodes {
  readonly #averages: CycleAverages;
  readonly #grid: AverageGrid;
  readonly #rows: GradedGrid;
  readonly #columns: GradedGrid;
  /** 1/fade^2 */
  readonly #perFade: number;
  readonly #nodes = new Map<number, Float64Array>();
  readonly #direct = new Float64Array(AVERAGES);
  readonly #still = new Float64Array(RESTS);
  readonly #filled = new Float64Array(FILL_SIZE);

  constructor(averages: CycleAverages, grid: AverageGrid, rows: GradedGrid, columns: GradedGrid) {
    this.#averages = averages;
    this.#grid = grid;
    this.#rows = rows;
    this.#columns = columns;
    this.#perFade = grid.fade ** -2;
  }

  /** M and F with their derivatives [per volt] at A and U, along the axes of A and V: by A, V, both, V twice; overwritten by the next call. */
  fill(a: number, u: number): Float64Array {
    const n = this.#filled;
    const r = this.#still;
    const { rounding, ridge, trough } = this.#grid;
    const around = Math.sqrt(a * a + rounding * rounding);
    const bow = (a * a) / (around + rounding);
    const v = u + ridge * bow;
    this.#averages.rest(v + trough * bow, r);
    // (1 - q^2)/A^2 and its slope: what comes back as the current taken off fades
    const q = 1 / (1 + a * a * this.#perFade);
    const back = q * (1 + q) * this.#perFade;
    const backA = -2 * a * (q * this.#perFade) ** 2 * (1 + 2 * q);
    const rest = r[REST_CURRENT]!;
    const restV = r[REST_BY_OUTPUT]!;
    const restVTwice = r[REST_BY_OUTPUT_TWICE]!;
    if (a === 0) {
      // r is A^2/(2 rounding) there
      const shift = trough / (2 * rounding);
      n.fill(0);
      n[0] = r[REST_QUARTER_BEND]! - shift * restV + back * rest;
      n[2] = r[REST_QUARTER_BEND_BY_OUTPUT]! - shift * restVTwice + back * restV;
      n[FILLED_F] = r[REST_SLOPE]!;
      n[FILLED_F + 2] = r[REST_SLOPE_BY_OUTPUT]!;
      return n;
    }
    const d = this.#direct;
    this.#averages.average(a, v, d);
    const square = a * a;
    const turn = (trough * a) / around;
    const above = d[MEAN]! - r[REST_ABOVE_FLOOR]!;
    const aboveV = d[MEAN_BY_OUTPUT]! - restV;
    n[0] = above / square + back * rest;
    n[1] = (d[MEAN_BY_AMPLITUDE]! - turn * restV - (2 * above) / a) / square + backA * rest + back * turn * restV;
    n[2] = aboveV / square + back * restV;
    n[3] = (d[MEAN_BY_BOTH]! - turn * restVTwice - (2 * aboveV) / a) / square + backA * restV + back * turn * restVTwice;
    n[4] = (d[MEAN_BY_OUTPUT_TWICE]! - restVTwice) / square + back * restVTwice;
    n[FILLED_F] = d[FUNDAMENTAL]! / a;
    n[FILLED_F + 1] = (d[FUNDAMENTAL_BY_AMPLITUDE]! - n[FILLED_F]!) / a;
    n[FILLED_F + 2] = d[FUNDAMENTAL_BY_OUTPUT]! / a;
    n[FILLED_F + 3] = (d[FUNDAMENTAL_BY_BOTH]! - n[FILLED_F + 2]!) / a;
    n[FILLED_F + 4] = d[FUNDAMENTAL_BY_OUTPUT_TWICE]! / a;
    return n;
  }

  /** Value, slopes and cross slope at a crossing of grid lines, along A with U held and along U; of M and then of F, or of their logarithms. */
  #node(row: number, column: number): Float64Array {
    const key = row * (2 * this.#columns.lines + 1) + column + this.#columns.lines;
    const known = this.#nodes.get(key);
    if (known) return known;
    const a = this.#rows.at(row);
    const n = this.fill(a, this.#columns.at(column));
    const { rounding, ridge, logarithmic } = this.#grid;
    const turn = (ridge * a) / Math.sqrt(a * a + rounding * rounding);
    const node = new Float64Array(NODE_SIZE);
    for (const [f, o] of [
      [0, 0],
      [FILLED_F, 4],
    ] as const) {
      let value = n[f]!;
      let byA = n[f + 1]!;
      let byV = n[f + 2]!;
      let byBoth = n[f + 3]!;
      let byVTwice = n[f + 4]!;
      if (logarithmic && value < LEAST) {
        value = Math.log(LEAST);
        byA = 0;
        byV = 0;
        byBoth = 0;
        byVTwice = 0;
      } else if (logarithmic) {
        byA /= value;
        byV /= value;
        byBoth = byBoth / value - byA * byV;
        byVTwice = byVTwice / value - byV * byV;
        value = Math.log(value);
      }
      node[o] = value;
      node[o + 1] = byA + turn * byV;
      node[o + 2] = byV;
      node[o + 3] = byBoth + turn * byVTwice;
    }
    this.#nodes.set(key, node);
    return node;
  }

  /** The same with its slopes in lengths of the cell that rows and columns last found, as its polynomials want them. */
  corner(row: number, column: number): Float64Array {
    const node = this.#node(row, column).slice();
    const { perLength: perRow } = this.#rows;
    const { perLength: perColumn } = this.#columns;
    for (const o of [0, 4]) {
      node[o + 1]! /= perRow;
      node[o + 2]! /= perColumn;
      node[o + 3]! /= perRow * perColumn;
    }
    return node;
  }
}
