import { bicubic, bicubicThrough, fastExp } from '../numeric/index.ts';
import type { AverageGrid } from './average-grid.ts';
import { AverageNodes, FILLED_F, LEAST } from './average-nodes.ts';
import {
  AVERAGES,
  type CycleAverages,
  REST_BY_OUTPUT,
  REST_CURRENT,
  REST_QUARTER_BEND,
  REST_QUARTER_BEND_BY_OUTPUT,
  REST_SLOPE,
  REST_SLOPE_BY_OUTPUT,
  RESTS,
} from './cycle-average.ts';
import { GradedGrid } from './graded-grid.ts';
import { FUNDAMENTAL, FUNDAMENTAL_BY_AMPLITUDE, FUNDAMENTAL_BY_OUTPUT, MEAN, MEAN_BY_AMPLITUDE, MEAN_BY_OUTPUT } from './model.ts';
import { RestCurrent } from './rest-current.ts';

/** Cells kept; a search of the dial visits some thousand. 20 MB with their corners at the most. */
const MOST_CELLS = 40_000;
/** Relative error at the middle of a cell above which the cell is given up. */
const CELL_ERROR = 1e-5;
/** Two bicubics of sixteen. */
const CELL_SIZE = 32;
const NOT_YET = -1;
const GIVEN_UP = -2;

/**
 * A describing function computed once and looked up ever after.
 *
 * Kept are M = (mean - q^2 i(-V - trough r))/A^2, q = 1/(1 + (A/fade)^2), and F = fundamental/A: both smooth and even in A, so that mean and
 * fundamental keep their relative precision down to no signal at all. For a law that bends one way only (a junction), M and F are above zero and
 * their logarithms are kept, which are far straighter.
 *
 * A strong swing conducts near its peak, so its averages bend along V = A and, once along that ridge, change only as A itself does. The plane is
 * therefore cut along A and U = V - ridge r(A), r(A) = sqrt(A^2 + rounding^2) - rounding, in cells that grow with the distance from
 * no swing and from the bend: a modulated station near a mast visits some hundred of them. In each, M and F are the bicubic
 * Hermite polynomials through values, slopes and cross slopes at its corners. The result and its derivatives by A and V belong to
 * each other exactly and are continuous. A cell is made when it is first asked for, and proved at its middle against the direct average; a
 * cell that fails (by more than 1e-5), and whatever lies beyond the grid, is answered by the direct average.
 *
 * Source: bicubic Hermite interpolation, error h^4/384 of the fourth derivative in each direction; coordinates derived.
 */
export class TabulatedAverage {
  readonly #averages: CycleAverages;
  readonly #grid: AverageGrid;
  readonly #rows: GradedGrid;
  readonly #columns: GradedGrid;
  readonly #rest: RestCurrent;
  /** 1/fade^2 */
  readonly #perFade: number;
  readonly #index: (Int32Array | undefined)[];
  #cells = new Float64Array(16 * CELL_SIZE);
  #count = 0;
  readonly #nodes: AverageNodes;
  readonly #direct = new Float64Array(AVERAGES);
  readonly #still = new Float64Array(RESTS);
  readonly #value = new Float64Array(3);

  /** @param scale - output voltage over which the law grows e-fold [V] */
  constructor(averages: CycleAverages, scale: number, grid: AverageGrid) {
    this.#averages = averages;
    this.#grid = grid;
    this.#rows = new GradedGrid(0, grid.amplitudeStep, grid.rows);
    this.#columns = new GradedGrid(grid.centre, grid.outputStep, grid.columns);
    this.#rest = new RestCurrent(averages, scale);
    this.#perFade = grid.fade ** -2;
    this.#nodes = new AverageNodes(averages, grid, this.#rows, this.#columns);
    this.#index = new Array<Int32Array | undefined>(this.#rows.lines + 1).fill(undefined);
  }

  at(amplitude: number, output: number, out: Float64Array): void {
    const grid = this.#grid;
    const a = amplitude;
    const around = Math.sqrt(a * a + grid.rounding * grid.rounding);
    const bow = (a * a) / (around + grid.rounding);
    const bowA = a / around;
    const rows = this.#rows;
    const columns = this.#columns;
    if (a < grid.least || !rows.find(a) || !columns.find(output - grid.ridge * bow)) {
      this.direct(a, output, out);
      return;
    }
    // cells are known by their outer lines
    let o = this.#index[rows.outer]?.[columns.outer + columns.lines] ?? NOT_YET;
    if (o === NOT_YET) o = this.#make();
    if (o === GIVEN_UP) {
      this.direct(a, output, out);
      return;
    }
    const c = this.#cells;
    const v = this.#value;
    const perRow = rows.perLength;
    const perColumn = columns.perLength;
    const turn = grid.ridge * bowA;
    bicubic(c, o, rows.place, columns.place, v);
    // a logarithm's slopes times the value are the value's slopes
    const m = grid.logarithmic ? fastExp(v[0]!) : v[0]!;
    const mScale = grid.logarithmic ? m : 1;
    const mV = mScale * v[2]! * perColumn;
    const mA = mScale * v[1]! * perRow - turn * mV;
    bicubic(c, o + 16, rows.place, columns.place, v);
    const f = grid.logarithmic ? fastExp(v[0]!) : v[0]!;
    const fScale = grid.logarithmic ? f : 1;
    const fV = fScale * v[2]! * perColumn;
    const fA = fScale * v[1]! * perRow - turn * fV;
    const rest = this.#rest;
    rest.at(output + grid.trough * bow);
    const q = 1 / (1 + a * a * this.#perFade);
    const share = q * q;
    out[MEAN] = share * rest.current + a * a * m;
    out[MEAN_BY_AMPLITUDE] = share * (grid.trough * bowA * rest.byOutput - 4 * a * q * this.#perFade * rest.current) + a * (2 * m + a * mA);
    out[MEAN_BY_OUTPUT] = share * rest.byOutput + a * a * mV;
    out[FUNDAMENTAL] = a * f;
    out[FUNDAMENTAL_BY_AMPLITUDE] = f + a * fA;
    out[FUNDAMENTAL_BY_OUTPUT] = a * fV;
  }

  /** The average itself; below a thousandth of the grid's first step by its limit for small signals, where the sum would lose figures. */
  direct(amplitude: number, output: number, out: Float64Array): void {
    if (this.#grid.least > 0 || amplitude > 1e-3 * this.#grid.amplitudeStep) {
      this.#averages.average(amplitude, output, this.#direct);
      for (let k = 0; k < 6; k++) out[k] = this.#direct[k]!;
      out[MEAN]! += this.#averages.floor;
      return;
    }
    const r = this.#still;
    this.#averages.rest(output, r);
    out[MEAN] = r[REST_CURRENT]! + amplitude * amplitude * r[REST_QUARTER_BEND]!;
    out[MEAN_BY_AMPLITUDE] = 2 * amplitude * r[REST_QUARTER_BEND]!;
    out[MEAN_BY_OUTPUT] = r[REST_BY_OUTPUT]! + amplitude * amplitude * r[REST_QUARTER_BEND_BY_OUTPUT]!;
    out[FUNDAMENTAL] = amplitude * r[REST_SLOPE]!;
    out[FUNDAMENTAL_BY_AMPLITUDE] = r[REST_SLOPE]!;
    out[FUNDAMENTAL_BY_OUTPUT] = amplitude * r[REST_SLOPE_BY_OUTPUT]!;
  }

  /**
   * Makes the cell that was found.
   *
   * @returns where its coefficients stand, or that it was given up
   */
  #make(): number {
    const rows = this.#rows;
    const columns = this.#columns;
    if (this.#count === MOST_CELLS) return GIVEN_UP;
    let index = this.#index[rows.outer];
    if (!index) {
      index = new Int32Array(2 * columns.lines + 1).fill(NOT_YET);
      this.#index[rows.outer] = index;
    }
    const o = this.#count * CELL_SIZE;
    if (o + CELL_SIZE > this.#cells.length) {
      const grown = new Float64Array(2 * this.#cells.length);
      grown.set(this.#cells);
      this.#cells = grown;
    }
    const corners = [
      this.#nodes.corner(rows.inner, columns.inner),
      this.#nodes.corner(rows.inner, columns.outer),
      this.#nodes.corner(rows.outer, columns.inner),
      this.#nodes.corner(rows.outer, columns.outer),
    ] as const;
    bicubicThrough(...corners, 0, this.#cells, o);
    bicubicThrough(...corners, 4, this.#cells, o + 16);
    const good = this.#proved(o, corners);
    if (good) this.#count++;
    const cell = good ? o : GIVEN_UP;
    index[columns.outer + columns.lines] = cell;
    return cell;
  }

  /** Compares the middle of the cell that was found with the direct average; without logarithms against the greatest of the corners, as M may pass through zero. */
  #proved(o: number, corners: readonly Float64Array[]): boolean {
    const rows = this.#rows;
    const columns = this.#columns;
    const middle = this.#nodes.fill(
      (rows.at(rows.inner) + rows.at(rows.outer)) / 2,
      (columns.at(columns.inner) + columns.at(columns.outer)) / 2,
    );
    for (const [f, node, place] of [
      [0, 0, o],
      [FILLED_F, 4, o + 16],
    ] as const) {
      bicubic(this.#cells, place, 0.5, 0.5, this.#value);
      const value = middle[f]!;
      if (this.#grid.logarithmic) {
        if (!(Math.abs(this.#value[0]! - Math.log(Math.max(LEAST, value))) < CELL_ERROR)) return false;
      } else {
        const size = Math.max(Math.abs(value), ...corners.map((n) => Math.abs(n[node]!)));
        if (!(Math.abs(this.#value[0]! - value) <= CELL_ERROR * size)) return false;
      }
    }
    return true;
  }
}
