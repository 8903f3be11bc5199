import { wrightOmega } from '../numeric/index.ts';
import {
  BY_DRIVE,
  BY_DRIVE_AND_OUTPUT,
  BY_DRIVE_TWICE,
  BY_DRIVE_TWICE_AND_OUTPUT,
  BY_OUTPUT,
  CURRENT,
  type SmoothLaw,
} from './smooth-law.ts';

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
    const i = this.#saturation * this.#relative((drive - output) / this.#slope);
    // slope, curvature and third derivative of the junction alone at its own voltage, all (Is + i) over powers of n Vt
    const g = Math.max(0, this.#saturation + i) / this.#slope;
    const bend = g / this.#slope;
    const one = 1 / (1 + this.#resistance * g);
    const first = g * one;
    const second = bend * one * one * one;
    // i''' = (g''' (1 + R g') - 3 R g''^2) / (1 + R g')^5 with g''' = bend / (n Vt)
    const third = (bend / this.#slope) * (1 + this.#resistance * g) - 3 * this.#resistance * bend * bend;
    out[CURRENT] = i;
    out[BY_DRIVE] = first;
    out[BY_OUTPUT] = -first;
    out[BY_DRIVE_TWICE] = second;
    out[BY_DRIVE_AND_OUTPUT] = -second;
    out[BY_DRIVE_TWICE_AND_OUTPUT] = -third * one ** 5;
  }
}
