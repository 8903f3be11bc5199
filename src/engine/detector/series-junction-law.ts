import { fastExp, wrightOmega } from '../numeric/index.ts';
import {
  ABOVE_FLOOR,
  BY_DRIVE,
  BY_DRIVE_AND_OUTPUT,
  BY_DRIVE_TWICE,
  BY_DRIVE_TWICE_AND_OUTPUT,
  BY_OUTPUT,
  BY_OUTPUT_TWICE,
  type SmoothLaw,
} from './smooth-law.ts';

/** Below here the omega function is its own exponential to ten figures, one more than averages are computed to. */
const BLOCKED = -23;

/**
 * Exponential junction with its series resistance folded in.
 *
 * i = Is (exp((v - i Rs)/(n Vt)) - 1). With a = Is Rs/(n Vt) and y = 1 + i/Is: a y + ln(a y) = v/(n Vt) + a + ln a, so a y is the
 * Wright omega function of the right side. One Newton step on ln(1 + j) + a j = v/(n Vt), j = i/Is, gives small currents their figures back.
 *
 * Source: T. C. Banwell, A. Jayakumar, Electronics Letters 36 (2000) 291 (the same with Lambert's W, from memory; re-derived).
 */
export class SeriesJunctionLaw implements SmoothLaw {
  readonly #saturation: number;
  readonly #slope: number;
  readonly #resistance: number;
  readonly #a: number;
  readonly #shift: number;
  readonly driveScale: number;
  readonly outputScale: number;
  readonly floor: number;
  /** voltage at which the exponential goes over into the straight line of the resistance: the singularities a y = -1 stand pi n Vt beside it [V] */
  readonly bend: number;

  /**
   * @param saturation - Is [A]
   * @param slope - n Vt [V]
   * @param resistance - Rs [ohm], above zero
   */
  constructor(saturation: number, slope: number, resistance: number) {
    this.#saturation = saturation;
    this.#slope = slope;
    this.#resistance = resistance;
    this.#a = (saturation * resistance) / slope;
    this.#shift = this.#a + Math.log(this.#a);
    this.driveScale = slope;
    this.outputScale = slope;
    this.floor = -saturation;
    this.bend = -slope * (1 + this.#shift);
  }

  /** i/Is at a voltage over n Vt */
  #relative(w: number): number {
    if (w === 0) return 0;
    const a = this.#a;
    const j = wrightOmega(w + this.#shift) / a - 1;
    // far in reverse j is -1 and has all its figures
    if (!(Math.abs(j) < 0.5)) return j;
    return j - (Math.log1p(j) + a * j - w) / (1 / (1 + j) + a);
  }

  current(voltage: number): number {
    return this.#saturation * this.#relative(voltage / this.#slope);
  }

  point(drive: number, output: number, out: Float64Array): void {
    // z = a y = (i + Is) Rs/(n Vt) is also Rs times the junction's own slope conductance
    const y = (drive - output) / this.#slope + this.#shift;
    const z = y < BLOCKED ? fastExp(y) : wrightOmega(y);
    const above = (z * this.#slope) / this.#resistance;
    const one = 1 / (1 + z);
    const first = (above / this.#slope) * one;
    const second = (first / this.#slope) * one * one;
    out[ABOVE_FLOOR] = above;
    out[BY_DRIVE] = first;
    out[BY_OUTPUT] = -first;
    out[BY_DRIVE_TWICE] = second;
    out[BY_DRIVE_AND_OUTPUT] = -second;
    out[BY_OUTPUT_TWICE] = second;
    out[BY_DRIVE_TWICE_AND_OUTPUT] = (-second / this.#slope) * one * one * (1 - 2 * z);
  }

  bends(output: number, out: Float64Array): number {
    out[0] = output + this.bend;
    return 1;
  }
}
