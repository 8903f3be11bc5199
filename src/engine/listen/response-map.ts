import { solveReal } from '../numeric/index.ts';
import type { DetectorSolver } from './detector-solver.ts';

/** Chebyshev points in each direction of a cell at which the instant is solved. */
const POINTS = 5;
/** Coefficients of a polynomial of total degree 3 in x and y: 1, x, y, x^2, xy, y^2, x^3, x^2 y, x y^2, y^3. */
const TERMS = 10;
/** Cell: radio current over drive, real and imaginary; mean current over drive squared; current without drive over the voltage that stands there (powers of y). */
export const RADIO_RE = 0;
export const RADIO_IM = TERMS;
export const RISE = 2 * TERMS;
export const REST = 3 * TERMS;
export const CELL_SIZE = 3 * TERMS + 4;
/** Visits after which a cell pays for its making. */
const WORTH_WHILE = 24;
/** Error allowed at the corners of a cell: of the mean current, by itself; of what the radio current makes of the voltage, by the voltage. */
const CELL_ERROR = 1e-6;
const RADIO_ERROR = 1e-7;
const MOST_CELLS = 16_384;
const LEAST_TABLE = 4096;
const EMPTY = -(2 ** 31);
const GIVEN_UP = -(2 ** 30);
/** Columns are counted from here, so that keys are above zero; rows and columns beyond these are solved directly. */
const MOST_COLUMNS = 32_768;
const MOST_ROWS = 32_768;
/** Steps of the grid that are tried, coarsest first [V]. */
const STEPS = Array.from({ length: 12 }, (_, k) => 0.1 / 2 ** k);

/** Shares of the resting drive and output at which a step is tried. */
const PROBED = [1, 0.1, 0.5, 1.5, 2];
const PROBED_OUTPUT = [1, 0.7, 1.3];

const CHEBYSHEV = Float64Array.from({ length: POINTS }, (_, k) => -Math.cos((Math.PI * (k + 0.5)) / POINTS));
const powers = (x: number, y: number): number[] => [1, x, y, x * x, x * y, y * y, x * x * x, x * x * y, x * y * y, y * y * y];
const PLANE = leastSquares(
  Array.from({ length: POINTS * POINTS }, (_, k) => powers(CHEBYSHEV[Math.floor(k / POINTS)]!, CHEBYSHEV[k % POINTS]!)),
);
const LINE = leastSquares(Array.from(CHEBYSHEV, (y) => [1, y, y * y, y * y * y]));

/** The matrix that takes values at the points to coefficients: (B^T B)^-1 B^T, row by row. */
function leastSquares(basis: readonly number[][]): Float64Array[] {
  const terms = basis[0]!.length;
  const columns = basis.map((row) => {
    const normal = new Float64Array(terms * terms);
    for (const b of basis) for (let i = 0; i < terms; i++) for (let k = 0; k < terms; k++) normal[i * terms + k]! += b[i]! * b[k]!;
    const x = Float64Array.from(row);
    solveReal(terms, normal, x);
    return x;
  });
  return Array.from({ length: terms }, (_, i) => Float64Array.from(columns, (c) => c[i]!));
}

/**
 * What one detector answers at an instant, as a function of the open drive d and the output Vh it would have without current: solved once
 * for each patch of the plane and looked up ever after.
 *
 * The answer depends on nothing else while the dial stands. Kept are the radio current beyond that of the resting conductance, u = w(|d|, Vh) d, w complex
 * and even in |d|, and the mean current as i = Vh r(Vh) + |d|^2 m(|d|, Vh), so that weak signals keep their figures. The plane is cut into cells; a
 * cell that has been met often enough gets the polynomials of degree 3 closest to its solutions at 25 points, and is proved at its corners
 * against direct solutions. Until then, where the proof fails, and beyond the grid, each instant is solved directly.
 */
export class ResponseMap {
  readonly #solver: DetectorSolver;
  /** of the grid [V], and its inverse */
  readonly step: number;
  readonly perStep: number;
  /** coefficients of the cells, one after another */
  cells = new Float64Array(64 * CELL_SIZE);
  #made = 0;
  #keys = new Int32Array(LEAST_TABLE).fill(-1);
  #entries = new Int32Array(LEAST_TABLE);
  #used = 0;
  readonly #wRe = new Float64Array(POINTS * POINTS);
  readonly #wIm = new Float64Array(POINTS * POINTS);
  readonly #m = new Float64Array(POINTS * POINTS);
  readonly #rest = new Float64Array(POINTS);

  /**
   * @param solver - set to what radio and audio side answer within the instant
   * @param drive, before - where the set stands at rest: the grid is made fine enough about there
   */
  constructor(solver: DetectorSolver, drive: number, before: number) {
    this.#solver = solver;
    let step = STEPS.at(-1)!;
    const scratch = new Float64Array(CELL_SIZE);
    for (const s of STEPS) {
      const good = PROBED.every((x) =>
        PROBED_OUTPUT.every((y) => this.#make(Math.floor((x * drive) / s), Math.floor((y * before) / s), s, scratch, 0)),
      );
      if (good) {
        step = s;
        break;
      }
    }
    this.step = step;
    this.perStep = 1 / step;
  }

  /** cells made so far */
  get made(): number {
    return this.#made;
  }

  /** Where the cell of a row and a column stands in `cells`; below zero where the instant must be solved directly. */
  find(row: number, column: number): number {
    if (!(row < MOST_ROWS && column >= -MOST_COLUMNS && column < MOST_COLUMNS)) return -1;
    const key = row * 2 * MOST_COLUMNS + column + MOST_COLUMNS;
    const mask = this.#keys.length - 1;
    let at = (Math.imul(row, 0x9e3779b1) + Math.imul(column, 0x85ebca6b)) >>> 7;
    for (;;) {
      at &= mask;
      const found = this.#keys[at]!;
      if (found === key) break;
      if (found === -1) {
        if (this.#used > MOST_CELLS) return -1;
        this.#keys[at] = key;
        this.#entries[at] = EMPTY;
        if (++this.#used * 2 > this.#keys.length) {
          this.#grow();
          return -1;
        }
        break;
      }
      at++;
    }
    const entry = this.#entries[at]!;
    if (entry >= 0) return entry;
    if (entry === GIVEN_UP) return -1;
    this.#entries[at] = entry + 1;
    if (entry + 1 < EMPTY + WORTH_WHILE) return -1;
    this.#entries[at] = this.#add(row, column);
    return Math.max(-1, this.#entries[at]!);
  }

  #grow(): void {
    const keys = this.#keys;
    const entries = this.#entries;
    this.#keys = new Int32Array(2 * keys.length).fill(-1);
    this.#entries = new Int32Array(2 * keys.length);
    const mask = this.#keys.length - 1;
    keys.forEach((key, k) => {
      if (key === -1) return;
      const row = Math.floor(key / (2 * MOST_COLUMNS));
      const column = (key % (2 * MOST_COLUMNS)) - MOST_COLUMNS;
      let at = ((Math.imul(row, 0x9e3779b1) + Math.imul(column, 0x85ebca6b)) >>> 7) & mask;
      while (this.#keys[at] !== -1) at = (at + 1) & mask;
      this.#keys[at] = key;
      this.#entries[at] = entries[k]!;
    });
  }

  #add(row: number, column: number): number {
    const o = this.#made * CELL_SIZE;
    if (o + CELL_SIZE > this.cells.length) {
      const grown = new Float64Array(2 * this.cells.length);
      grown.set(this.cells);
      this.cells = grown;
    }
    if (!this.#make(row, column, this.step, this.cells, o)) return GIVEN_UP;
    this.#made++;
    return o;
  }

  /** Solves the instants of a cell and fits them; false where the fit is not good enough. */
  #make(row: number, column: number, step: number, out: Float64Array, o: number): boolean {
    const s = this.#solver;
    const amplitude = s.amplitude;
    const output = s.output;
    for (let k = 0; k < POINTS; k++) {
      const before = (column + 0.5 + 0.5 * CHEBYSHEV[k]!) * step;
      s.output = before;
      s.solve(0, before);
      this.#rest[k] = s.current / before;
    }
    for (let t = 0; t < 4; t++) out[o + REST + t] = dot(LINE[t]!, this.#rest);
    for (let i = 0; i < POINTS; i++)
      for (let k = 0; k < POINTS; k++) {
        const x = CHEBYSHEV[i]!;
        const y = CHEBYSHEV[k]!;
        const drive = (row + 0.5 + 0.5 * x) * step;
        const before = (column + 0.5 + 0.5 * y) * step;
        if (k === 0) s.output = before;
        s.solve(drive, before);
        this.#wRe[i * POINTS + k] = s.radioRe;
        this.#wIm[i * POINTS + k] = s.radioIm;
        this.#m[i * POINTS + k] = (s.current - before * this.#rest[k]!) / (drive * drive);
      }
    for (let t = 0; t < TERMS; t++) {
      out[o + RADIO_RE + t] = dot(PLANE[t]!, this.#wRe);
      out[o + RADIO_IM + t] = dot(PLANE[t]!, this.#wIm);
      out[o + RISE + t] = dot(PLANE[t]!, this.#m);
    }
    const good = this.#proved(row, column, step, out, o);
    s.amplitude = amplitude;
    s.output = output;
    return good;
  }

  #proved(row: number, column: number, step: number, c: Float64Array, o: number): boolean {
    const s = this.#solver;
    const allowed = RADIO_ERROR * s.radioAdmittance;
    for (const x of [-0.999, 1])
      for (const y of [-0.999, 1]) {
        const drive = (row + 0.5 + 0.5 * x) * step;
        const before = (column + 0.5 + 0.5 * y) * step;
        s.output = before;
        s.solve(drive, before);
        const rise = drive * drive * plane(c, o + RISE, x, y);
        const rest = before * (c[o + REST]! + y * (c[o + REST + 1]! + y * (c[o + REST + 2]! + y * c[o + REST + 3]!)));
        if (!(Math.abs(plane(c, o + RADIO_RE, x, y) - s.radioRe) <= allowed)) return false;
        if (!(Math.abs(plane(c, o + RADIO_IM, x, y) - s.radioIm) <= allowed)) return false;
        if (!(Math.abs(rise + rest - s.current) <= CELL_ERROR * (Math.abs(rise) + Math.abs(rest)))) return false;
      }
    return true;
  }
}

/** The polynomial of degree 3 whose coefficients start at o; x and y run from -1 to 1 across the cell. */
export function plane(c: Float64Array, o: number, x: number, y: number): number {
  return (
    c[o]! +
    x * (c[o + 1]! + x * (c[o + 3]! + x * c[o + 6]! + y * c[o + 7]!) + y * c[o + 4]!) +
    y * (c[o + 2]! + y * (c[o + 5]! + y * c[o + 9]! + x * c[o + 8]!))
  );
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]!;
  return sum;
}
