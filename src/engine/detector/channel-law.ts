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

/** What makes a field-effect channel. */
export interface Channel {
  /** [V] */
  readonly threshold: number;
  /** [A/V^2] */
  readonly transconductanceFactor: number;
  /** weak-inversion slope factor */
  readonly slopeFactor: number;
  readonly gateDrive: number;
  /** [V] */
  readonly gateBias: number;
  /** [ohm] */
  readonly seriesResistance: number;
}

/** Where exp is so small that the channel is off for good: its conductance stays a number above zero. */
const LOWEST = -300;
/** Where 1 + exp(z) is exp(z) to the last bit. */
const HIGHEST = 37;

/**
 * Field-effect channel from weak inversion to strong, with part of the RF on its gate.
 *
 * i = K (F(vgs - Vth) - F(vgd - Vth)), F(q) = ln^2(1 + exp(q/(2 n Vt))), K = 2 n^2 beta Vt^2.
 *
 * Signs: v = x - V is the voltage from tank (drain) to output (source), i flows from tank to output, x = A cos(wt). The gate stands at
 * gateBias + gateDrive x against the output, so vgs = gateBias + gateDrive x and vgd = vgs - v + i Rs; the series resistance is
 * on the tank's side. Drain and source are alike: exchange them and i changes sign. The slope factor acts on both ends, that is, the
 * body is taken to follow the channel; a body tied to one end would bend the other end's law by n more.
 *
 * Limits: strong inversion, triode: i = beta ((vgs - Vth) v - v^2/2), so RF on the drain alone rectifies to -beta A^2/4, RF on drain and
 * gate together (gateDrive 1) to +beta A^2/4, and gateDrive 1/2 to nothing. Weak inversion: the exponential junction, open-circuit output
 * A^2/(4 n Vt) at gateDrive 1. In general to the second order (2 gateDrive - 1) (A^2/4) d ln(sigma)/dVg, sigma the conductance.
 *
 * The fundamental current rises with amplitude for gateDrive 0 to 1. With the gate against the drain (gateDrive below 0) it rises too at the
 * output the channel makes for itself, but with the output held further below that the channel turns the output's power into RF:
 * fundamental and slope go below zero. Not held: the body's junction (forward beyond some 0.5 V), velocity saturation.
 *
 * Source: C. C. Enz, F. Krummenacher, E. A. Vittoz, Analog Integrated Circuits and Signal Processing 8 (1995) 83 (interpolation ln^2(1 + exp));
 * M. Dyakonov, M. Shur, IEEE Trans. ED-43 (1996) 380; M. Sakowicz et al., J. Appl. Phys. 110 (2011) 054512 (limits).
 */
export class ChannelLaw implements SmoothLaw {
  readonly #overdrive: number;
  readonly #k: number;
  readonly #share: number;
  readonly #two: number;
  readonly #resistance: number;
  readonly #factor: number;
  readonly floor = 0;
  readonly driveScale: number;
  readonly outputScale: number;
  /** ln(1 + exp(z)) and its derivative, of the source and of the drain end */
  #softSource = 0;
  #sourceShare = 0;
  #softDrain = 0;
  #drainShare = 0;

  /** @param thermal - Vt [V] */
  constructor(channel: Channel, thermal: number) {
    const slope = channel.slopeFactor * thermal;
    this.#overdrive = channel.gateBias - channel.threshold;
    this.#k = 2 * channel.transconductanceFactor * slope * slope;
    this.#share = channel.gateDrive;
    this.#two = 2 * slope;
    this.#factor = channel.transconductanceFactor;
    this.#resistance = channel.seriesResistance;
    this.outputScale = slope;
    this.driveScale = slope / Math.max(Math.abs(channel.gateDrive), Math.abs(1 - channel.gateDrive));
  }

  #source(gate: number): void {
    const z = Math.max(LOWEST, gate / this.#two);
    if (z > HIGHEST) {
      this.#softSource = z;
      this.#sourceShare = 1;
    } else {
      const e = Math.exp(z);
      this.#softSource = Math.log1p(e);
      this.#sourceShare = e / (1 + e);
    }
  }

  /** Current through the channel proper with `across` from drain to source; leaves the drain end's numbers behind. Call `#source` first. */
  #through(gate: number, across: number): number {
    const z = Math.max(LOWEST, (gate - across) / this.#two);
    if (z > HIGHEST) {
      this.#softDrain = z;
      this.#drainShare = 1;
    } else {
      const e = Math.exp(z);
      this.#softDrain = Math.log1p(e);
      this.#drainShare = e / (1 + e);
    }
    // the difference of the two logarithms directly, so that a small voltage across keeps its figures
    const step = across / this.#two;
    const difference = Math.abs(step) < 1 ? Math.log1p(this.#drainShare * Math.expm1(step)) : this.#softSource - this.#softDrain;
    return this.#k * difference * (this.#softSource + this.#softDrain);
  }

  /** slope of F at the drain end by gate voltage, times K [S] */
  #drainSlope(): number {
    return (this.#k * 2 * this.#softDrain * this.#drainShare) / this.#two;
  }

  /**
   * Current with the series resistance: i - g(v - i Rs) = 0. g rises and is hollow downwards, so the left side has a slope of one or more and is hollow
   * upwards: Newton's method comes past the root at most once, and then down to it. It starts from the square law of strong inversion.
   */
  #solve(gate: number, across: number): number {
    this.#source(gate);
    const direct = this.#through(gate, across);
    const r = this.#resistance;
    if (r === 0 || direct === 0) return direct;
    let i = this.#start(gate, across, direct);
    for (let step = 0; step < 100; step++) {
      const miss = i - this.#through(gate, across - i * r);
      const change = miss / (1 + r * this.#drainSlope());
      i -= change;
      // the error left is of the order of the square of the change
      if (Math.abs(change) <= 1e-9 * Math.abs(i)) break;
    }
    this.#through(gate, across - i * r);
    return i;
  }

  /** i = (beta/2) (gate^2 - D^2), D = gate - across + i Rs, each square only where its end is open; the current without resistance where that says nothing. */
  #start(gate: number, across: number, direct: number): number {
    const half = this.#factor / 2;
    const r = this.#resistance;
    const drain = gate - across;
    const source = gate > 0 ? half * gate * gate : 0;
    if (drain + r * source <= 0) return source > 0 ? source : direct;
    const b = 1 + 2 * half * r * drain;
    const c = source - half * drain * drain;
    const root = b + Math.sqrt(Math.max(0, b * b + 4 * half * r * r * c));
    const i = root > 0 ? (2 * c) / root : direct;
    // near no voltage the smooth law is far from the square law
    return Math.abs(i) < Math.abs(direct) ? i : direct;
  }

  current(voltage: number, outputVoltage: number): number {
    return this.#solve(this.#overdrive + this.#share * (voltage + outputVoltage), voltage);
  }

  point(drive: number, output: number, out: Float64Array): void {
    const i = this.#solve(this.#overdrive + this.#share * drive, drive - output);
    const k1 = (2 * this.#k) / this.#two;
    const k2 = k1 / this.#two;
    const k3 = k2 / this.#two;
    const s = this.#sourceShare;
    const d = this.#drainShare;
    const ds = d * (1 - d);
    // K F', K F'' at the source end; K F', K F'', K F''' at the drain end
    const source1 = k1 * this.#softSource * s;
    const source2 = k2 * (s * s + this.#softSource * s * (1 - s));
    const drain1 = k1 * this.#softDrain * d;
    const drain2 = k2 * (d * d + this.#softDrain * ds);
    const drain3 = k3 * ds * (3 * d + this.#softDrain * (1 - 2 * d));
    // drain-end argument D = overdrive + (share - 1) x + V + i Rs; i = K F(source) - K F(D), differentiated implicitly
    const r = this.#resistance;
    const one = 1 / (1 + r * drain1);
    const byDrive = (this.#share * source1 - (this.#share - 1) * drain1) * one;
    const byOutput = -drain1 * one;
    const endByDrive = this.#share - 1 + r * byDrive;
    const endByOutput = 1 + r * byOutput;
    const byDriveTwice = (this.#share * this.#share * source2 - drain2 * endByDrive * endByDrive) * one;
    const byBoth = -drain2 * endByDrive * endByOutput * one;
    out[ABOVE_FLOOR] = i;
    out[BY_DRIVE] = byDrive;
    out[BY_OUTPUT] = byOutput;
    out[BY_DRIVE_TWICE] = byDriveTwice;
    out[BY_DRIVE_AND_OUTPUT] = byBoth;
    out[BY_OUTPUT_TWICE] = -drain2 * endByOutput * endByOutput * one;
    out[BY_DRIVE_TWICE_AND_OUTPUT] =
      -(drain3 * endByDrive * endByDrive * endByOutput + 2 * drain2 * endByDrive * r * byBoth + drain2 * endByOutput * r * byDriveTwice) *
      one;
  }

  /**
   * Where the source end opens, and where the drain end does: there the drain end's argument D = overdrive + (share - 1) x + V + i Rs is zero,
   * with i = (beta/2) q^2 above threshold, q = overdrive + share x > 0, and none below.
   */
  bends(output: number, out: Float64Array): number {
    const still = 1 - this.#share;
    let count = 0;
    if (this.#share !== 0) out[count++] = -this.#overdrive / this.#share;
    if (still !== 0) {
      const x = (this.#overdrive + output) / still;
      if (this.#overdrive + this.#share * x <= 0) out[count++] = x;
    }
    const bow = this.#factor * this.#resistance;
    if (this.#share === 0) {
      const open = Math.max(0, this.#overdrive);
      out[count++] = this.#overdrive + output + (bow / 2) * open * open;
      return count;
    }
    // (bow/2) q^2 - (still/share) q + V + overdrive/share = 0
    const half = still / this.#share;
    const rest = output + this.#overdrive / this.#share;
    const root = half * half - 2 * bow * rest;
    if (root < 0) return count;
    // both roots without loss of figures as bow goes to nothing
    const sum = half + (half < 0 ? -1 : 1) * Math.sqrt(root);
    for (const q of [sum / bow, (2 * rest) / sum])
      if (q > 0 && q < Number.POSITIVE_INFINITY) out[count++] = (q - this.#overdrive) / this.#share;
    return count;
  }
}
