import {
  type DescribingFunction,
  FUNDAMENTAL,
  FUNDAMENTAL_BY_AMPLITUDE,
  FUNDAMENTAL_BY_OUTPUT,
  MEAN,
  MEAN_BY_AMPLITUDE,
  MEAN_BY_OUTPUT,
} from '../detector/index.ts';

const MOST_STEPS = 120;

/**
 * A detector law held against a Thevenin source, at one instant of the modulation.
 *
 * The source has open-circuit amplitude D [V peak] and impedance Z = R + jX [ohm]; the law draws the fundamental current I1(A, V), in phase
 * with its own voltage A. So A follows from D = |A + Z I1(A, V)|. For a law whose I1 does not fall with A and R >= 0 the right side
 * rises with A, so the root in [0, D] is unique and a guarded Newton step cannot miss it. A channel with an opposed gate may
 * deliver power (I1 < 0); the bracket is then widened, and `settled` says whether a root was found at all.
 */
export class OperatingPoint {
  readonly #law: DescribingFunction;
  readonly #out = new Float64Array(6);
  /** RF amplitude across the law [V peak] */
  amplitude = 0;
  /** mean current into the output [A] */
  current = 0;
  /** its derivative by the output voltage, the source held [S]; never above zero for a passive law */
  conductance = 0;
  /** its derivative by the drive D, output held [S] */
  byDrive = 0;
  /** fundamental current [A peak] */
  fundamental = 0;
  /** its derivative by the amplitude [S] */
  fundamentalByAmplitude = 0;
  settled: boolean = true;

  constructor(law: DescribingFunction) {
    this.#law = law;
  }

  /**
   * Solves for the amplitude and leaves the results in the fields.
   *
   * @param drive - open-circuit amplitude [V peak], >= 0
   * @param guess - amplitude to start from [V peak]
   */
  solve(drive: number, zRe: number, zIm: number, output: number, guess: number): void {
    const out = this.#out;
    let low = 0;
    let high = drive;
    let a = Math.min(Math.max(guess, 0), high);
    this.settled = true;
    if (drive > 0) {
      let widened = 0;
      for (let step = 0; step < MOST_STEPS; step++) {
        this.#law.at(a, output, out);
        const i1 = out[FUNDAMENTAL]!;
        const re = a + zRe * i1;
        const e = Math.hypot(re, zIm * i1) - drive;
        // the law's values at `a` stand in `out`: they are the result
        if (Math.abs(e) <= 1e-12 * drive) break;
        if (e > 0) high = a;
        else {
          low = a;
          if (a >= high) {
            high *= 2;
            if (++widened > 40) {
              this.settled = false;
              break;
            }
          }
        }
        const di = out[FUNDAMENTAL_BY_AMPLITUDE]!;
        const slope = (re * (1 + zRe * di) + zIm * zIm * i1 * di) / (e + drive);
        // above the root the law may grow as an exponential, which is straight in its logarithm; below it hardly counts
        const next = a - (e > 0 ? (e + drive) * Math.log1p(e / drive) : e) / slope;
        const before = a;
        // beyond the bracket: its end is tried first, then its middle
        a = next > low && next < high ? next : next >= high && before < high && e < 0 ? high : (low + high) / 2;
        if (a === before || high - low <= 1e-15 * high) break;
        if (step === MOST_STEPS - 1) this.settled = false;
      }
    } else {
      a = 0;
      this.#law.at(a, output, out);
    }
    this.amplitude = a;
    this.current = out[MEAN]!;
    this.fundamental = out[FUNDAMENTAL]!;
    this.fundamentalByAmplitude = out[FUNDAMENTAL_BY_AMPLITUDE]!;
    this.#derivatives(drive, zRe, zIm, a, out);
  }

  /** Implicit derivatives of D^2 = (A + R I1)^2 + (X I1)^2. */
  #derivatives(drive: number, zRe: number, zIm: number, a: number, out: Float64Array): void {
    if (!(drive > 0)) {
      this.conductance = out[MEAN_BY_OUTPUT]!;
      this.byDrive = 0;
      return;
    }
    const i1 = out[FUNDAMENTAL]!;
    const re = a + zRe * i1;
    const byA = re * (1 + zRe * out[FUNDAMENTAL_BY_AMPLITUDE]!) + zIm * zIm * i1 * out[FUNDAMENTAL_BY_AMPLITUDE]!;
    const byV = re * zRe * out[FUNDAMENTAL_BY_OUTPUT]! + zIm * zIm * i1 * out[FUNDAMENTAL_BY_OUTPUT]!;
    this.conductance = out[MEAN_BY_OUTPUT]! - (out[MEAN_BY_AMPLITUDE]! * byV) / byA;
    this.byDrive = (out[MEAN_BY_AMPLITUDE]! * drive) / byA;
  }
}
