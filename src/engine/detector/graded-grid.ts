/** Octaves beyond the even part. */
const OCTAVES = 12;
/** Steps to a cell of each octave, and cells to a step. */
const STEPS = Float64Array.from({ length: OCTAVES + 1 }, (_, k) => 2 ** k);
const CELLS = STEPS.map((steps) => 1 / steps);

/**
 * A line cut into cells: of one length about a centre, then of a length that doubles from octave to octave.
 *
 * The grid lines are numbered ..., -1, 0, 1, ... with 0 at the centre. The first 2 N cells on either side are one step long; of each octave
 * beyond there are N, so that no cell is longer than the step or 1/N of its distance from the centre. A cell lies between an inner line and
 * the next one outwards; places in it are counted from the inner line, so that a point a hair from the centre keeps its figures on either side.
 */
export class GradedGrid {
  readonly #centre: number;
  readonly #step: number;
  readonly #perStep: number;
  readonly #size: number;
  readonly #reach: number;
  /** lines on either side of the centre */
  readonly lines: number;
  /** of the point last found: the outer line of its cell, */
  outer = 0;
  /** where it lies between inner and outer line, 0 to 1, */
  place = 0;
  /** and one over the signed distance from inner to outer line */
  perLength = 0;

  /**
   * @param step - length of the cells about the centre
   * @param size - N
   */
  constructor(centre: number, step: number, size: number) {
    this.#centre = centre;
    this.#step = step;
    this.#perStep = 1 / step;
    this.#size = size;
    this.#reach = size * 2 ** (OCTAVES + 1);
    this.lines = size * (OCTAVES + 2);
  }

  /** Finds the cell of a point; false where the grid does not reach that far, or the point is not a number. */
  find(x: number): boolean {
    const d = (x - this.#centre) * this.#perStep;
    const m = Math.abs(d);
    if (!(m < this.#reach)) return false;
    const octave = m < this.#size ? 0 : 31 - Math.clz32(m / this.#size);
    const cells = m * CELLS[octave]!;
    const whole = cells | 0;
    const outer = octave * this.#size + whole + 1;
    const perLength = this.#perStep * CELLS[octave]!;
    this.place = cells - whole;
    this.outer = d < 0 ? -outer : outer;
    this.perLength = d < 0 ? -perLength : perLength;
    return true;
  }

  /** The inner line of the cell that was found. */
  get inner(): number {
    return this.outer - Math.sign(this.outer);
  }

  /** Where a line stands. */
  at(line: number): number {
    const n = Math.abs(line);
    const octave = Math.min(OCTAVES, Math.max(0, Math.floor(n / this.#size) - 1));
    return this.#centre + Math.sign(line) * this.#step * (n - octave * this.#size) * STEPS[octave]!;
  }
}
