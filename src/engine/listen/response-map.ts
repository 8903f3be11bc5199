import { solveReal } from '../numeric/index.ts';
import type { DetectorSolver } from './detector-solver.ts';

/** Chebyshev points in each direction of a cell at which the instant is solved. */
const POINTS = 5;
/** Coefficients of a polynomial of total degree 3 in x and y: 1, x, y, x^2, xy, y^2, x^3, x^2 y, x y^2, y^3. */
const TERMS = 10;
/** Cell: radio current over drive, real and imaginary; mean current over drive squared; then x = square * scale - shift. */
export const RADIO_RE = 0;
export const RADIO_IM = TERMS;
export const RISE = 2 * TERMS;
export const SCALE = 3 * TERMS;
export const SHIFT = 3 * TERMS + 1;
export const CELL_SIZE = 3 * TERMS + 2;
/** Visits of a row after which a cell pays for its making. */
const WORTH_WHILE = 8;
/** Error allowed at the corners of a cell: of the mean current, by itself; of what the radio current makes of the voltage, by the voltage. */
const CELL_ERROR = 1e-6;
const RADIO_ERROR = 1e-7;
const MOST_CELLS = 16_384;
/** A cell spans 2^k rows, k at most this. */
const LARGEST = 8;
const LEAST_ROWS = 256;
const EMPTY = -(2 ** 31);
const GIVEN_UP = -(2 ** 30);
/** Rows and columns beyond these are solved directly. */
const MOST_COLUMNS = 32_768;
const MOST_ROWS = 32_768;
/** Widths of a column that are tried, coarsest first [V]. */
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

/** All cells of one column. */
export interface Strip {
  readonly column: number;
  /** where the cell of each row stands in `cells`; below zero where there is none yet */
  rows: Int32Array;
  /** current without drive over the voltage that stands there: powers of y */
  readonly rest: Float64Array;
}

/**
 * What one detector answers at an instant, as a function of the open drive d and the output Vh it would have without current: solved once
 * for each patch of the plane and looked up ever after.
 *
 * The answer depends on nothing else while the dial stands. Kept are the radio current beyond that of the resting conductance, u = w(|d|, Vh) d, w complex
 * and even in |d|, and the mean current as i = Vh r(Vh) + |d|^2 m(|d|, Vh), so that weak signals keep their figures. The plane is cut into columns of Vh and,
 * as all of it is even in |d|, rows of |d|^2: no root is taken, and far from the knee a cell spans many rows, so that a column's few cells stay in the fastest
 * memory. A cell that has been met often enough gets the polynomials of degree 3 closest to its solutions at 25 points, as many rows high as they
 * can be, and is proved at its corners against direct solutions. Until then, where the proof fails, and beyond the grid, each instant is solved directly.
 */
export class ResponseMap {
  readonly #solver: DetectorSolver;
  /** columns a volt, rows a volt squared */
  readonly perStep: number;
  readonly perSquare: number;
  readonly #step: number;
  readonly #square: number;
  /** coefficients of the cells, one after another */
  cells = new Float64Array(64 * CELL_SIZE);
  #made = 0;
  /** by column: 0, -1, 1, -2, ... */
  readonly #strips: (Strip | undefined)[] = [];
  readonly #beyond: Strip = { column: Number.NaN, rows: new Int32Array(0), rest: new Float64Array(4) };
  /** cells of this size were good last */
  #size = 0;
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
    // at the resting drive a row is as high as a column is wide
    const square = (s: number): number => 2 * s * Math.max(drive, s);
    const scratch = new Float64Array(CELL_SIZE);
    const good = (s: number): boolean =>
      PROBED.every((x) =>
        PROBED_OUTPUT.every((y) => {
          const strip = this.#strip(Math.floor((y * before) / s), s);
          return this.#make(strip, Math.floor((x * drive) ** 2 / square(s)), 1, s, square(s), scratch, 0);
        }),
      );
    this.#step = STEPS.find(good) ?? STEPS.at(-1)!;
    this.#square = square(this.#step);
    this.perStep = 1 / this.#step;
    this.perSquare = 1 / this.#square;
  }

  /** cells made so far */
  get made(): number {
    return this.#made;
  }

  /** The cells of a column. */
  strip(column: number): Strip {
    if (!(column >= -MOST_COLUMNS && column < MOST_COLUMNS)) return this.#beyond;
    const at = column < 0 ? -2 * column - 1 : 2 * column;
    while (this.#strips.length <= at) this.#strips.push(undefined);
    this.#strips[at] ??= this.#strip(column, this.#step);
    return this.#strips[at]!;
  }

  /** Where the cell of a row stands in `cells`, met once more; below zero where the instant must be solved directly. */
  find(strip: Strip, row: number): number {
    if (!(row >= 0 && row < MOST_ROWS) || strip === this.#beyond) return -1;
    if (row >= strip.rows.length) {
      const rows = new Int32Array(Math.min(MOST_ROWS, 2 ** Math.ceil(Math.log2(Math.max(LEAST_ROWS, row + 1))))).fill(EMPTY);
      rows.set(strip.rows);
      strip.rows = rows;
    }
    const entry = strip.rows[row]!;
    if (entry >= 0) return entry;
    if (entry === GIVEN_UP || this.#made >= MOST_CELLS) return -1;
    strip.rows[row] = entry + 1;
    if (entry + 1 < EMPTY + WORTH_WHILE) return -1;
    return this.#add(strip, row);
  }

  #strip(column: number, step: number): Strip {
    const s = this.#solver;
    const { amplitude, output } = s;
    for (let k = 0; k < POINTS; k++) {
      const before = (column + 0.5 + 0.5 * CHEBYSHEV[k]!) * step;
      s.output = before;
      s.solve(0, before);
      this.#rest[k] = s.current / before;
    }
    s.amplitude = amplitude;
    s.output = output;
    return { column, rows: new Int32Array(0), rest: Float64Array.from(LINE, (l) => dot(l, this.#rest)) };
  }

  /** Makes the highest cell that is good about a row, beginning with twice the height that was good last. */
  #add(strip: Strip, row: number): number {
    const o = this.#made * CELL_SIZE;
    if (o + CELL_SIZE > this.cells.length) {
      const grown = new Float64Array(2 * this.cells.length);
      grown.set(this.cells);
      this.cells = grown;
    }
    for (let size = Math.min(LARGEST, this.#size + 1); size >= 0; size--) {
      const count = 2 ** size;
      const first = row - (row % count);
      if (!this.#make(strip, first, count, this.#step, this.#square, this.cells, o)) continue;
      this.#size = size;
      this.#made++;
      for (let r = first; r < Math.min(first + count, strip.rows.length); r++) if (strip.rows[r]! < 0) strip.rows[r] = o;
      return o;
    }
    strip.rows[row] = GIVEN_UP;
    return -1;
  }

  /** Solves the instants of a cell of `count` rows from `row` on and fits them; false where the fit is not good enough. */
  #make(strip: Strip, row: number, count: number, step: number, square: number, out: Float64Array, o: number): boolean {
    const s = this.#solver;
    const { amplitude, output } = s;
    out[o + SCALE] = 2 / (count * square);
    out[o + SHIFT] = (2 * row) / count + 1;
    for (let i = 0; i < POINTS; i++)
      for (let k = 0; k < POINTS; k++) {
        const y = CHEBYSHEV[k]!;
        const drive = Math.sqrt((row + count * (0.5 + 0.5 * CHEBYSHEV[i]!)) * square);
        const before = (strip.column + 0.5 + 0.5 * y) * step;
        if (k === 0) s.output = before;
        s.solve(drive, before);
        this.#wRe[i * POINTS + k] = s.radioRe;
        this.#wIm[i * POINTS + k] = s.radioIm;
        this.#m[i * POINTS + k] = (s.current - before * line(strip.rest, y)) / (drive * drive);
      }
    for (let t = 0; t < TERMS; t++) {
      out[o + RADIO_RE + t] = dot(PLANE[t]!, this.#wRe);
      out[o + RADIO_IM + t] = dot(PLANE[t]!, this.#wIm);
      out[o + RISE + t] = dot(PLANE[t]!, this.#m);
    }
    const good = this.#proved(strip, row, count, step, square, out, o);
    s.amplitude = amplitude;
    s.output = output;
    return good;
  }

  #proved(strip: Strip, row: number, count: number, step: number, square: number, c: Float64Array, o: number): boolean {
    const s = this.#solver;
    const allowed = RADIO_ERROR * s.radioAdmittance;
    for (const x of [-0.999, 1])
      for (const y of [-0.999, 1]) {
        const drive = Math.sqrt((row + count * (0.5 + 0.5 * x)) * square);
        const before = (strip.column + 0.5 + 0.5 * y) * step;
        s.output = before;
        s.solve(drive, before);
        const rise = drive * drive * plane(c, o + RISE, x, y);
        const rest = before * line(strip.rest, y);
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

/** A polynomial of degree 3. */
export const line = (c: Float64Array, y: number): number => c[0]! + y * (c[1]! + y * (c[2]! + y * c[3]!));

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += a[k]! * b[k]!;
  return sum;
}
