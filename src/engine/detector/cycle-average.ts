import { gaussLegendre } from '../numeric/index.ts';
import { gradedPanels } from './graded-panels.ts';
import { FUNDAMENTAL, FUNDAMENTAL_BY_AMPLITUDE, FUNDAMENTAL_BY_OUTPUT, MEAN, MEAN_BY_AMPLITUDE, MEAN_BY_OUTPUT } from './model.ts';
import {
  ABOVE_FLOOR,
  BY_DRIVE,
  BY_DRIVE_AND_OUTPUT,
  BY_DRIVE_TWICE,
  BY_DRIVE_TWICE_AND_OUTPUT,
  BY_OUTPUT,
  BY_OUTPUT_TWICE,
  MOST_BENDS,
  type SmoothLaw,
} from './smooth-law.ts';

/** `CycleAverages.average` writes the six of a describing function and then the second derivatives of mean and fundamental that have V in them [A/V^2]. */
export const MEAN_BY_BOTH = 6;
export const FUNDAMENTAL_BY_BOTH = 7;
export const MEAN_BY_OUTPUT_TWICE = 8;
export const FUNDAMENTAL_BY_OUTPUT_TWICE = 9;
export const AVERAGES = 10;
/** Order of the values written by `CycleAverages.rest`. */
export const REST_CURRENT = 0;
export const REST_ABOVE_FLOOR = 1;
export const REST_BY_OUTPUT = 2;
export const REST_BY_OUTPUT_TWICE = 3;
export const REST_QUARTER_BEND = 4;
export const REST_QUARTER_BEND_BY_OUTPUT = 5;
export const REST_SLOPE = 6;
export const REST_SLOPE_BY_OUTPUT = 7;
export const RESTS = 8;

/** A law averaged over the RF cycle, at whatever cost. */
export interface CycleAverages {
  /** steady current of the blocking law [A], which the mean does not hold */
  readonly floor: number;
  /** writes ten values, the mean being that above the floor */
  average(amplitude: number, output: number, out: Float64Array): void;
  /**
   * without RF: current i, the same above the floor, derivatives by V and by V twice; i''/4 (what mean current grows by with A^2), i' (what the
   * fundamental grows by with A), each with its derivative by V
   */
  rest(output: number, out: Float64Array): void;
}

const POINTS = 10;
/** Length at the peak of the cycle over which a law that rises e-fold within its scale may be taken at once, in sqrt(scale/A). */
const PEAK = 1.2;

/**
 * Cycle average of a smooth law by Gauss-Legendre panels that crowd where the swing crosses the law's bends.
 *
 * Half a cycle suffices, as cos(wt) is even. A bend at x lies at wt = arccos(x/A); the law's singularities stand pi scales beside it in x, so
 * pi (scale/A) / sin(wt) in wt, or the root of that at the turn of the swing. Where the swing ends short of a bend, the law rises e-fold towards
 * that end of the swing, and conducts for some sqrt(2 scale/A) of wt about it. Two panels average a swing of one scale, sixteen one of 4000.
 *
 * Accuracy: 1e-8 of each value or better, amplitudes from a quarter of the law's scale to 4000 times that, by brute force.
 * Source: as `gradedPanels`; positions of the singularities derived.
 */
export class SmoothAverage implements CycleAverages {
  readonly #law: SmoothLaw;
  readonly #point = new Float64Array(7);
  readonly #bends = new Float64Array(MOST_BENDS);
  readonly #angles = new Float64Array(MOST_BENDS + 2);
  readonly #widths = new Float64Array(MOST_BENDS + 2);
  readonly #edges = new Float64Array(40 * (MOST_BENDS + 2));
  readonly floor: number;

  constructor(law: SmoothLaw) {
    this.#law = law;
    this.floor = law.floor;
  }

  average(amplitude: number, output: number, out: Float64Array): void {
    const law = this.#law;
    const p = this.#point;
    const edges = this.#edges;
    const { nodes, weights } = gaussLegendre(POINTS);
    const count = gradedPanels(this.#angles, this.#widths, this.#mark(amplitude, output), edges);
    out.fill(0);
    for (let k = 0; k + 1 < count; k++) {
      const half = (edges[k + 1]! - edges[k]!) / 2;
      const middle = (edges[k + 1]! + edges[k]!) / 2;
      for (let j = 0; j < POINTS; j++) {
        const c = Math.cos(middle + half * nodes[j]!);
        const w = (half * weights[j]!) / Math.PI;
        const w1 = 2 * w * c;
        law.point(amplitude * c, output, p);
        out[MEAN]! += w * p[ABOVE_FLOOR]!;
        out[FUNDAMENTAL]! += w1 * p[ABOVE_FLOOR]!;
        out[MEAN_BY_AMPLITUDE]! += w * c * p[BY_DRIVE]!;
        out[FUNDAMENTAL_BY_AMPLITUDE]! += w1 * c * p[BY_DRIVE]!;
        out[MEAN_BY_OUTPUT]! += w * p[BY_OUTPUT]!;
        out[FUNDAMENTAL_BY_OUTPUT]! += w1 * p[BY_OUTPUT]!;
        out[MEAN_BY_BOTH]! += w * c * p[BY_DRIVE_AND_OUTPUT]!;
        out[FUNDAMENTAL_BY_BOTH]! += w1 * c * p[BY_DRIVE_AND_OUTPUT]!;
        out[MEAN_BY_OUTPUT_TWICE]! += w * p[BY_OUTPUT_TWICE]!;
        out[FUNDAMENTAL_BY_OUTPUT_TWICE]! += w1 * p[BY_OUTPUT_TWICE]!;
      }
    }
  }

  /** Angles of the bends in ascending order between the ends of the half cycle, and their widths. */
  #mark(amplitude: number, output: number): number {
    const angles = this.#angles;
    const widths = this.#widths;
    const scale = this.#law.driveScale / amplitude;
    const bends = this.#law.bends(output, this.#bends);
    angles[0] = 0;
    angles[1] = Math.PI;
    widths[0] = Number.POSITIVE_INFINITY;
    widths[1] = Number.POSITIVE_INFINITY;
    let last = 1;
    for (let k = 0; k < bends; k++) {
      const x = this.#bends[k]! / amplitude;
      if (Math.abs(x) >= 1) {
        // distance of arccos(x + i pi scale) from the turn of the swing
        const width = Math.min(PEAK * Math.sqrt(scale), Math.sqrt(Math.hypot(Math.abs(x) - 1, Math.PI * scale)));
        const end = x > 0 ? 0 : last;
        widths[end] = Math.min(widths[end]!, width);
        continue;
      }
      const angle = Math.acos(x);
      let place = ++last;
      for (; place > 1 && angles[place - 1]! > angle; place--) {
        angles[place] = angles[place - 1]!;
        widths[place] = widths[place - 1]!;
      }
      angles[place] = angle;
      widths[place] = (Math.PI * scale) / Math.sqrt(1 - x * x + Math.PI * scale);
    }
    return last + 1;
  }

  rest(output: number, out: Float64Array): void {
    const p = this.#point;
    this.#law.point(0, output, p);
    out[REST_CURRENT] = this.#law.current(-output, output);
    out[REST_ABOVE_FLOOR] = p[ABOVE_FLOOR]!;
    out[REST_BY_OUTPUT] = p[BY_OUTPUT]!;
    out[REST_BY_OUTPUT_TWICE] = p[BY_OUTPUT_TWICE]!;
    out[REST_QUARTER_BEND] = p[BY_DRIVE_TWICE]! / 4;
    out[REST_QUARTER_BEND_BY_OUTPUT] = p[BY_DRIVE_TWICE_AND_OUTPUT]! / 4;
    out[REST_SLOPE] = p[BY_DRIVE]!;
    out[REST_SLOPE_BY_OUTPUT] = p[BY_DRIVE_AND_OUTPUT]!;
  }
}
