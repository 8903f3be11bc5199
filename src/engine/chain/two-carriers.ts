import {
  type DescribingFunction,
  FUNDAMENTAL,
  FUNDAMENTAL_BY_AMPLITUDE,
  FUNDAMENTAL_BY_OUTPUT,
  MEAN,
  MEAN_BY_AMPLITUDE,
  MEAN_BY_OUTPUT,
} from '../detector/index.ts';
import { solveReal } from '../numeric/index.ts';

/** A carrier as the detector's port has it: open-circuit amplitude [V peak] and source impedance at its own frequency [ohm]. */
interface Carrier {
  readonly amplitude: number;
  readonly zRe: number;
  readonly zIm: number;
}

/** Phases of one carrier against the other over half a turn; the other half is its mirror. */
const TURN = 12;
const COSINE = Float64Array.from({ length: TURN }, (_, k) => Math.cos((Math.PI * (k + 0.5)) / TURN));
/** Averages over the turn, and their derivatives by first amplitude, second amplitude, output voltage. */
const SIZE = 3;

/**
 * A detector law held against two carriers of unlike frequency at once.
 *
 * Together they make the amplitude a(phi) = |A1 + A2 e^(j phi)|, which turns at their difference. Of the mean current i and the fundamental I1
 * only the averages over that turn count: the mean <i>, and the parts of I1 that belong to either carrier,
 *
 * F1 = <I1(a) (A1 + A2 cos phi)/a>, F2 = <I1(a) (A2 + A1 cos phi)/a>.
 *
 * Both carriers and the output are then balanced at once, D1 = |A1 + Z1 F1|, D2 = |A2 + Z2 F2|, V - V0 = R (<i> - i0), by Newton's method; V0, i0 is
 * the set at rest on the first carrier alone, to which everything returns as the second vanishes.
 *
 * Holds for: a difference too fast for the output to follow. The mixing products beside the two carriers (2 f1 - f2 and so on) are taken to
 * meet no impedance: right to 1.2 dB in square law and where the source damps the tank three times as much as the detector, to 2.5 dB beyond.
 * Source: derived; A. Blachman, IEEE Trans. IT-10 (1964) 162, for a law's answer to two sinusoids (from memory).
 */
export class TwoCarriers {
  readonly #law: DescribingFunction;
  readonly #out = new Float64Array(6);
  readonly #meanBy = new Float64Array(SIZE);
  readonly #currentBy = [new Float64Array(SIZE), new Float64Array(SIZE)] as const;
  readonly #misfitBy = [new Float64Array(SIZE), new Float64Array(SIZE)] as const;
  readonly #misfit = new Float64Array(SIZE);
  readonly #matrix = new Float64Array(SIZE * SIZE);
  readonly #step = new Float64Array(SIZE);
  /** amplitudes across the law [V peak] */
  first = 0;
  second = 0;
  /** output voltage [V] and mean current [A] */
  output = 0;
  mean = 0;
  /** fundamental current that belongs to either carrier [A peak] */
  firstCurrent = 0;
  secondCurrent = 0;
  /** current at the difference of the carriers [A peak], amplitudes held */
  beatCurrent = 0;
  settled: boolean = true;

  constructor(law: DescribingFunction) {
    this.#law = law;
  }

  /**
   * Balances both carriers; the results stand in the fields.
   *
   * @param rest - the first carrier alone: amplitude [V peak], output [V], current [A]
   * @param resistance - of the output's way for direct current [ohm]
   */
  solve(
    one: Carrier,
    two: Carrier,
    rest: { readonly amplitude: number; readonly output: number; readonly current: number; readonly radioConductance: number },
    resistance: number,
  ): void {
    const g = rest.radioConductance;
    this.first = rest.amplitude;
    this.second = two.amplitude / Math.hypot(1 + two.zRe * g, two.zIm * g);
    this.output = rest.output;
    this.settled = this.#newton(one, two, rest, resistance);
    if (this.settled) return;
    // the second carrier is let in by and by
    this.first = rest.amplitude;
    this.output = rest.output;
    this.second = 0;
    for (const share of [1e-3, 0.01, 0.03, 0.1, 0.2, 0.35, 0.5, 0.75, 1]) {
      const part = { ...two, amplitude: share * two.amplitude };
      if (share === 1e-3) this.second = part.amplitude / Math.hypot(1 + two.zRe * g, two.zIm * g);
      this.settled = this.#newton(one, part, rest, resistance);
    }
  }

  /**
   * Change of the mean current, output held, for changes that pull the balance of either carrier apart [A per unit of the change].
   *
   * @param first - of |A1 + Z1 F1| - D1 per unit, amplitude and current held [V]
   * @param second - of the second carrier
   */
  answer(first: number, second: number): number {
    const [a, b] = this.#misfitBy;
    const determinant = a[0]! * b[1]! - a[1]! * b[0]!;
    if (determinant === 0) return 0;
    const byFirst = (a[1]! * second - b[1]! * first) / determinant;
    const bySecond = (b[0]! * first - a[0]! * second) / determinant;
    return this.#meanBy[0]! * byFirst + this.#meanBy[1]! * bySecond;
  }

  /** Conductance that the output sees, both sources held [S]. */
  get outputConductance(): number {
    return -(this.#meanBy[2]! + this.answer(this.#misfitBy[0][2]!, this.#misfitBy[1][2]!));
  }

  #newton(one: Carrier, two: Carrier, rest: { readonly output: number; readonly current: number }, resistance: number): boolean {
    const miss = this.#misfit;
    const step = this.#step;
    let worst = this.#look(one, two, rest, resistance);
    for (let round = 0; round < 60; round++) {
      if (worst <= 1e-10) return true;
      for (let row = 0; row < 2; row++) this.#matrix.set(this.#misfitBy[row]!, row * SIZE);
      for (let k = 0; k < SIZE; k++) this.#matrix[2 * SIZE + k] = (k === 2 ? 1 : 0) - resistance * this.#meanBy[k]!;
      step.set(miss);
      if (!solveReal(SIZE, this.#matrix, step)) return false;
      const from = [this.first, this.second, this.output] as const;
      const before = worst;
      let share = 1;
      // an amplitude has no sign: a step never takes more than nine tenths of it
      for (const k of [0, 1]) if (step[k]! * share > 0.9 * from[k]!) share = (0.9 * from[k]!) / step[k]!;
      for (;;) {
        this.first = from[0] - share * step[0]!;
        this.second = from[1] - share * step[1]!;
        this.output = from[2] - share * step[2]!;
        worst = this.#look(one, two, rest, resistance);
        if (worst < before) break;
        share /= 2;
        if (share < 1e-5) return before <= 1e-7;
      }
    }
    return false;
  }

  /** Averages at the present amplitudes and output; the greatest misfit over what it is measured against. */
  #look(one: Carrier, two: Carrier, rest: { readonly output: number; readonly current: number }, resistance: number): number {
    const { first, second, output } = this;
    const [f, s] = this.#currentBy;
    const m = this.#meanBy;
    m.fill(0);
    f.fill(0);
    s.fill(0);
    let mean = 0;
    let own = 0;
    let other = 0;
    let beat = 0;
    for (let k = 0; k < TURN; k++) {
      const c = COSINE[k]!;
      const a = Math.sqrt(Math.max(0, first * first + second * second + 2 * first * second * c));
      if (a === 0) continue;
      this.#law.at(a, output, this.#out);
      const out = this.#out;
      const p = (first + second * c) / a;
      const q = (second + first * c) / a;
      const chord = out[FUNDAMENTAL]! / a;
      const bend = out[FUNDAMENTAL_BY_AMPLITUDE]! - chord;
      mean += out[MEAN]!;
      beat += 2 * out[MEAN]! * c;
      own += out[FUNDAMENTAL]! * p;
      other += out[FUNDAMENTAL]! * q;
      m[0] = m[0]! + out[MEAN_BY_AMPLITUDE]! * p;
      m[1] = m[1]! + out[MEAN_BY_AMPLITUDE]! * q;
      m[2] = m[2]! + out[MEAN_BY_OUTPUT]!;
      f[0] = f[0]! + bend * p * p + chord;
      f[1] = f[1]! + bend * p * q + chord * c;
      f[2] = f[2]! + out[FUNDAMENTAL_BY_OUTPUT]! * p;
      s[1] = s[1]! + bend * q * q + chord;
      s[2] = s[2]! + out[FUNDAMENTAL_BY_OUTPUT]! * q;
    }
    s[0] = f[1]!;
    for (let k = 0; k < SIZE; k++) {
      m[k] = m[k]! / TURN;
      f[k] = f[k]! / TURN;
      s[k] = s[k]! / TURN;
    }
    this.mean = mean / TURN;
    this.beatCurrent = beat / TURN;
    this.firstCurrent = own / TURN;
    this.secondCurrent = other / TURN;
    this.#misfit[0] = this.#apart(one, first, this.firstCurrent, f, 0, this.#misfitBy[0]);
    this.#misfit[1] = this.#apart(two, second, this.secondCurrent, s, 1, this.#misfitBy[1]);
    this.#misfit[2] = output - rest.output - resistance * (this.mean - rest.current);
    const scale = Math.abs(output) + Math.abs(resistance * this.mean);
    return Math.max(
      one.amplitude > 0 ? Math.abs(this.#misfit[0]) / one.amplitude : 0,
      two.amplitude > 0 ? Math.abs(this.#misfit[1]) / two.amplitude : 0,
      scale > 0 ? Math.abs(this.#misfit[2]) / scale : 0,
    );
  }

  /** |A + Z F| - D and its derivatives, `own` the place of its own amplitude among them. */
  #apart(source: Carrier, a: number, current: number, by: Float64Array, own: number, out: Float64Array): number {
    const { zRe, zIm } = source;
    const re = a + zRe * current;
    const im = zIm * current;
    const size = Math.hypot(re, im);
    for (let k = 0; k < SIZE; k++)
      out[k] = size > 0 ? (re * ((k === own ? 1 : 0) + zRe * by[k]!) + im * zIm * by[k]!) / size : k === own ? 1 : 0;
    return size - source.amplitude;
  }
}
