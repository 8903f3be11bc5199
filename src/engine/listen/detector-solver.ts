import {
  type DescribingFunction,
  FUNDAMENTAL,
  FUNDAMENTAL_BY_AMPLITUDE,
  FUNDAMENTAL_BY_OUTPUT,
  MEAN,
  MEAN_BY_AMPLITUDE,
  MEAN_BY_OUTPUT,
} from '../detector/index.ts';
import { brent } from '../numeric/index.ts';

const NEWTON_STEPS = 14;
/** A step smaller than this share leaves an error of its square. */
const SETTLED = 1e-6;
const MOST_WIDENINGS = 60;
/** Amplitude over drive from which a search begins at the most; brackets are widened beyond it. */
const FARTHEST = 100;

/**
 * One detector between what the radio side and the audio side have been, at one instant.
 *
 * Radio: the open voltage d behind the impedance z gives f v + z (I1(A, V)/A) v = d, A = |v|, so |f A + z I1(A, V)| = |d|. Audio: V = Vh + r i(A, V).
 * For a law whose I1 rises with A, and Re(z conj f) >= 0, the first has one root A(V) in [0, |d|/|f|]; for a mean current that falls
 * as V rises, and r >= 0, V - Vh - r i(A(V), V) rises with a slope of one at least, so the second root lies within r |i(A(Vh), Vh)| of Vh. Newton's
 * method on both at once from the last instant; should it leave the brackets or stall, Brent's method in the two brackets, one within the other.
 */
export class DetectorSolver {
  readonly #law: DescribingFunction;
  readonly #out = new Float64Array(6);
  #fRe = 1;
  #fIm = 0;
  #zRe = 0;
  #zIm = 0;
  #r = 0;
  #resting = 0;
  /** drive to which the amplitude in the field belongs [V peak] */
  #drive = 0;
  /** amplitude across the law [V peak] and output voltage [V] */
  amplitude = 0;
  output = 0;
  /** mean current [A] */
  current = 0;
  /** fundamental current over amplitude [S] */
  conductance = 0;
  /** instants at which Newton's method gave way to the brackets */
  fallbacks = 0;
  /** instants at which no root was found: the law is then none that a passive part can have */
  failures = 0;

  constructor(law: DescribingFunction) {
    this.#law = law;
  }

  /**
   * What the two sides answer within the instant itself.
   *
   * @param zRe, zIm - impedance of the radio side, z [ohm]
   * @param conductance - taken into the radio side already [S]: f = 1 - z g
   * @param r - of the audio side [ohm]
   */
  between(zRe: number, zIm: number, conductance: number, r: number): void {
    this.#resting = conductance;
    this.#fRe = 1 - zRe * conductance;
    this.#fIm = -zIm * conductance;
    this.#zRe = zRe;
    this.#zIm = zIm;
    this.#r = r;
  }

  /** Radio current beyond the resting conductance, over the open drive: (G - g)/(f + z G) [S]. */
  get radioRe(): number {
    const a = this.#fRe + this.#zRe * this.conductance;
    const b = this.#fIm + this.#zIm * this.conductance;
    return ((this.conductance - this.#resting) * a) / (a * a + b * b);
  }
  get radioIm(): number {
    const a = this.#fRe + this.#zRe * this.conductance;
    const b = this.#fIm + this.#zIm * this.conductance;
    return (-(this.conductance - this.#resting) * b) / (a * a + b * b);
  }

  /** 1/|z| [S]: a radio current over drive far below it is not noticed. */
  get radioAdmittance(): number {
    return 1 / Math.hypot(this.#zRe, this.#zIm);
  }

  /**
   * Solves from the amplitude and output that stand in the fields; the results replace them.
   *
   * @param drive - |d| [V peak]
   * @param before - Vh, what the output would be without current at this instant [V]
   */
  solve(drive: number, before: number): void {
    if (!(drive > 0)) {
      this.amplitude = 0;
      this.#bracketOutput(0, before);
      return;
    }
    if (!this.#newton(drive, before)) {
      this.fallbacks++;
      this.#bracketOutput(drive, before);
    }
  }

  #newton(drive: number, before: number): boolean {
    const out = this.#out;
    const fRe = this.#fRe;
    const fIm = this.#fIm;
    const zRe = this.#zRe;
    const zIm = this.#zIm;
    const r = this.#r;
    const top = this.#top(drive);
    const guess = this.amplitude * (drive / this.#drive);
    let a = guess > 0 && guess < top ? guess : top;
    let v = this.output;
    for (let step = 0; step < NEWTON_STEPS; step++) {
      this.#law.at(a, v, out);
      const i = out[MEAN]!;
      const i1 = out[FUNDAMENTAL]!;
      const i1A = out[FUNDAMENTAL_BY_AMPLITUDE]!;
      const i1V = out[FUNDAMENTAL_BY_OUTPUT]!;
      const re = fRe * a + zRe * i1;
      const im = fIm * a + zIm * i1;
      // both equations with their slopes; the first squared and halved
      const e1 = (re * re + im * im - drive * drive) / 2;
      const e1A = re * (fRe + zRe * i1A) + im * (fIm + zIm * i1A);
      const e1V = i1V * (re * zRe + im * zIm);
      const e2 = v - before - r * i;
      const e2A = -r * out[MEAN_BY_AMPLITUDE]!;
      const e2V = 1 - r * out[MEAN_BY_OUTPUT]!;
      const determinant = e1A * e2V - e1V * e2A;
      const dA = (e1V * e2 - e2V * e1) / determinant;
      const dV = (e2A * e1 - e1A * e2) / determinant;
      if (!(Math.abs(dA) < Number.POSITIVE_INFINITY && Math.abs(dV) < Number.POSITIVE_INFINITY)) return false;
      const next = a + dA;
      if (next > 0) {
        v += dV;
        if (Math.abs(dA) <= SETTLED * a && Math.abs(dV) <= SETTLED * (a + Math.abs(v))) {
          this.amplitude = next;
          this.#drive = drive;
          this.output = v;
          this.current = i + out[MEAN_BY_AMPLITUDE]! * dA + out[MEAN_BY_OUTPUT]! * dV;
          this.conductance = (i1 + i1A * dA + i1V * dV) / next;
          return true;
        }
        a = next;
        // lost: no law is asked for what lies beyond the brackets
        if (a > 4 * top || Math.abs(v - before) > FARTHEST * (drive + Math.abs(before))) return false;
      } else a /= 2;
    }
    return false;
  }

  /** Where a law that draws nothing would stand; a radio side that is all but a current source would send that to the skies. */
  #top(drive: number): number {
    return Math.min(drive / Math.hypot(this.#fRe, this.#fIm), FARTHEST * drive);
  }

  /** The outer bracket: output voltage. */
  #bracketOutput(drive: number, before: number): void {
    const excess = (v: number): number => {
      this.#bracketAmplitude(drive, v);
      return v - before - this.#r * this.current;
    };
    const first = excess(before);
    let output: number | null = before;
    if (first !== 0) {
      let far = before - first;
      for (let widening = 0; widening < MOST_WIDENINGS && excess(far) * first > 0; widening++) far -= first * 2 ** widening;
      output = brent(excess, Math.min(before, far), Math.max(before, far));
    }
    if (output === null) {
      this.failures++;
      output = before;
    }
    excess(output);
    this.output = output;
    this.#drive = drive;
  }

  /** The inner bracket: amplitude at a given output; leaves amplitude, current and conductance in the fields. */
  #bracketAmplitude(drive: number, output: number): void {
    const out = this.#out;
    const excess = (a: number): number => {
      this.#law.at(a, output, out);
      const i1 = out[FUNDAMENTAL]!;
      return Math.hypot(this.#fRe * a + this.#zRe * i1, this.#fIm * a + this.#zIm * i1) - drive;
    };
    let a: number | null = 0;
    if (drive > 0) {
      let top = this.#top(drive);
      for (let widening = 0; widening < MOST_WIDENINGS && excess(top) < 0; widening++) top *= 2;
      a = brent(excess, 0, top);
    }
    if (a === null) {
      this.failures++;
      a = 0;
    }
    this.#law.at(a, output, out);
    this.amplitude = a;
    this.current = out[MEAN]!;
    this.conductance = a > 0 ? out[FUNDAMENTAL]! / a : out[FUNDAMENTAL_BY_AMPLITUDE]!;
  }
}
