import { FUNDAMENTAL, FUNDAMENTAL_BY_AMPLITUDE, FUNDAMENTAL_BY_OUTPUT, MEAN, MEAN_BY_AMPLITUDE, MEAN_BY_OUTPUT } from './model.ts';
import {
  BY_DRIVE,
  BY_DRIVE_AND_OUTPUT,
  BY_DRIVE_TWICE,
  BY_DRIVE_TWICE_AND_OUTPUT,
  BY_OUTPUT,
  CURRENT,
  type SmoothLaw,
} from './smooth-law.ts';

/** `CycleAverages.average` writes the six of a describing function and then the cross derivatives of mean and fundamental [A/V^2]. */
export const MEAN_BY_BOTH = 6;
export const FUNDAMENTAL_BY_BOTH = 7;
/** Order of the values written by `CycleAverages.rest`. */
export const REST_CURRENT = 0;
export const REST_BY_OUTPUT = 1;
export const REST_QUARTER_BEND = 2;
export const REST_QUARTER_BEND_BY_OUTPUT = 3;
export const REST_SLOPE = 4;
export const REST_SLOPE_BY_OUTPUT = 5;

/** A law averaged over the RF cycle, at whatever cost. */
export interface CycleAverages {
  /** amplitude above zero; writes eight values */
  average(amplitude: number, output: number, out: Float64Array): void;
  /** without RF: current i and its derivative by V; i''/4 (what mean current grows by with A^2), i' (what the fundamental grows by with A), each with its derivative by V */
  rest(output: number, out: Float64Array): void;
}

const MOST = 8192;
const FEWEST = 16;
/** Amplitudes beyond so many scales of the law are averaged over points drawn towards the peak of the cycle. */
const LARGE = 100;
const COSINE = Float64Array.from({ length: MOST + 1 }, (_, k) => Math.cos((Math.PI * k) / MOST));
const SINE = Float64Array.from({ length: MOST + 1 }, (_, k) => Math.sin((Math.PI * k) / MOST));

/**
 * Cycle average of a smooth law by the trapezoidal rule, the points doubled until two results agree.
 *
 * For a smooth periodic function the error of the rule falls as exp(-c N), so it is squared by each doubling: agreement to 1e-6 leaves an
 * error near 1e-12. Half a cycle suffices, as cos(wt) is even. A large swing conducts only for some sqrt(2 scale/A) of phase about its peak;
 * there wt = phi - k sin(phi) puts the points where the current is, and the integrand stays smooth and periodic in phi.
 *
 * Source: L. N. Trefethen, J. A. C. Weideman, SIAM Review 56 (2014) 385, theorem 3.2.
 */
export class SmoothAverage implements CycleAverages {
  readonly #law: SmoothLaw;
  readonly #point = new Float64Array(6);

  constructor(law: SmoothLaw) {
    this.#law = law;
  }

  average(amplitude: number, output: number, out: Float64Array): void {
    const law = this.#law;
    const p = this.#point;
    let i0 = 0;
    let i1 = 0;
    let x1 = 0;
    let x2 = 0;
    let v0 = 0;
    let v1 = 0;
    let b1 = 0;
    let b2 = 0;
    const drawn = amplitude > LARGE * law.driveScale ? 1 - 3 * Math.sqrt(law.driveScale / amplitude) : 0;
    for (let n = FEWEST; ; n *= 2) {
      const before0 = i0;
      const before1 = i1;
      const beforeB1 = b1;
      const beforeB2 = b2;
      // first all points, later only those half way between
      const first = n === FEWEST;
      const stride = MOST / n;
      for (let k = first ? 0 : stride; k <= MOST; k += first ? stride : 2 * stride) {
        const c = drawn === 0 ? COSINE[k]! : Math.cos((Math.PI * k) / MOST - drawn * SINE[k]!);
        const w = (k === 0 || k === MOST ? 0.5 : 1) * (1 - drawn * COSINE[k]!);
        law.point(amplitude * c, output, p);
        i0 += w * p[CURRENT]!;
        i1 += w * p[CURRENT]! * c;
        x1 += w * p[BY_DRIVE]! * c;
        x2 += w * p[BY_DRIVE]! * c * c;
        v0 += w * p[BY_OUTPUT]!;
        v1 += w * p[BY_OUTPUT]! * c;
        b1 += w * p[BY_DRIVE_AND_OUTPUT]! * c;
        b2 += w * p[BY_DRIVE_AND_OUTPUT]! * c * c;
      }
      if (!first) {
        const current = 1e-6 * (Math.abs(i0) + Math.abs(i1));
        const bend = 1e-5 * (Math.abs(b1) + Math.abs(b2)) + (1e-9 * Math.abs(x2)) / law.driveScale;
        const agree =
          Math.abs(i0 - 2 * before0) <= current &&
          Math.abs(i1 - 2 * before1) <= current &&
          Math.abs(b1 - 2 * beforeB1) <= bend &&
          Math.abs(b2 - 2 * beforeB2) <= bend;
        if (agree || n === MOST) {
          const w = 1 / n;
          out[MEAN] = i0 * w;
          out[FUNDAMENTAL] = 2 * i1 * w;
          out[MEAN_BY_AMPLITUDE] = x1 * w;
          out[MEAN_BY_OUTPUT] = v0 * w;
          out[FUNDAMENTAL_BY_AMPLITUDE] = 2 * x2 * w;
          out[FUNDAMENTAL_BY_OUTPUT] = 2 * v1 * w;
          out[MEAN_BY_BOTH] = b1 * w;
          out[FUNDAMENTAL_BY_BOTH] = 2 * b2 * w;
          return;
        }
      }
    }
  }

  rest(output: number, out: Float64Array): void {
    const p = this.#point;
    this.#law.point(0, output, p);
    out[REST_CURRENT] = p[CURRENT]!;
    out[REST_BY_OUTPUT] = p[BY_OUTPUT]!;
    out[REST_QUARTER_BEND] = p[BY_DRIVE_TWICE]! / 4;
    out[REST_QUARTER_BEND_BY_OUTPUT] = p[BY_DRIVE_TWICE_AND_OUTPUT]! / 4;
    out[REST_SLOPE] = p[BY_DRIVE]!;
    out[REST_SLOPE_BY_OUTPUT] = p[BY_DRIVE_AND_OUTPUT]!;
  }
}
