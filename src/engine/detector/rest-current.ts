import { cubicThrough } from '../numeric/index.ts';
import { type CycleAverages, REST_BY_OUTPUT, REST_CURRENT } from './cycle-average.ts';
import { GradedGrid } from './graded-grid.ts';

/** Cells of one length on either side of zero are twice as many as this, and so many to each octave beyond. */
const SIZE = 32;
/** Cells within the voltage over which the law grows e-fold. */
const CELLS_PER_SCALE = 16;
/** Relative error at the middle of a cell above which the law itself is asked. */
const CELL_ERROR = 1e-6;
const NOT_YET = 0;
const MADE = 1;
const GIVEN_UP = 2;

/**
 * The current without RF as a function of the output voltage, looked up.
 *
 * Cubics through value and slope at the lines of a graded grid with zero among them, so that microvolts keep their figures: they are made when
 * first asked for, and proved at their middle.
 */
export class RestCurrent {
  readonly #averages: CycleAverages;
  readonly #grid: GradedGrid;
  readonly #state: Uint8Array;
  readonly #cubics: Float64Array;
  readonly #rest = new Float64Array(8);
  /** of the voltage last asked for: the current [A] and its derivative by the output voltage [S] */
  current = 0;
  byOutput = 0;

  /** @param scale - output voltage over which the law grows e-fold [V] */
  constructor(averages: CycleAverages, scale: number) {
    this.#averages = averages;
    this.#grid = new GradedGrid(0, scale / CELLS_PER_SCALE, SIZE);
    this.#state = new Uint8Array(2 * this.#grid.lines + 1);
    this.#cubics = new Float64Array(4 * this.#state.length);
  }

  at(output: number): void {
    const grid = this.#grid;
    if (grid.find(output)) {
      // cells are numbered by their outer line; zero is nobody's
      const cell = grid.outer + grid.lines;
      if (this.#state[cell] === NOT_YET) this.#make(cell);
      if (this.#state[cell] === MADE) {
        const c = this.#cubics;
        const o = 4 * cell;
        const z = grid.place;
        this.current = ((c[o + 3]! * z + c[o + 2]!) * z + c[o + 1]!) * z + c[o]!;
        this.byOutput = ((3 * c[o + 3]! * z + 2 * c[o + 2]!) * z + c[o + 1]!) * grid.perLength;
        return;
      }
    }
    this.#ask(output);
  }

  #ask(output: number): void {
    this.#averages.rest(output, this.#rest);
    this.current = this.#rest[REST_CURRENT]!;
    this.byOutput = this.#rest[REST_BY_OUTPUT]!;
  }

  #make(cell: number): void {
    const { inner, outer, perLength } = this.#grid;
    this.#ask(this.#grid.at(inner));
    const from = this.current;
    const slope = this.byOutput / perLength;
    this.#ask(this.#grid.at(outer));
    cubicThrough(from, this.current, slope, this.byOutput / perLength, this.#cubics, 4 * cell, 1);
    const between = (from + this.current) / 2 + (slope - this.byOutput / perLength) / 8;
    this.#ask((this.#grid.at(inner) + this.#grid.at(outer)) / 2);
    this.#state[cell] = Math.abs(between - this.current) <= CELL_ERROR * Math.abs(this.current) ? MADE : GIVEN_UP;
  }
}
