import {
  BY_DRIVE,
  BY_DRIVE_AND_OUTPUT,
  BY_DRIVE_TWICE,
  BY_DRIVE_TWICE_AND_OUTPUT,
  BY_OUTPUT,
  CURRENT,
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
   * Current with the series resistance: i - g(v - i Rs) = 0, where g rises and is hollow downwards, so that Newton's method from the side
   * where the left is positive comes down to the root without ever passing it.
   */
  #solve(gate: number, across: number): number {
    this.#source(gate);
    const direct = this.#through(gate, across);
    if (this.#resistance === 0 || direct === 0) return direct;
    let i = Math.max(0, direct);
    for (let step = 0; step < 100; step++) {
      const miss = i - this.#through(gate, across - i * this.#resistance);
      const next = i - miss / (1 + this.#resistance * this.#drainSlope());
      if (Math.abs(next - i) <= 4e-16 * Math.abs(next)) break;
      i = next;
    }
    this.#through(gate, across - i * this.#resistance);
    return i;
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
    out[CURRENT] = i;
    out[BY_DRIVE] = byDrive;
    out[BY_OUTPUT] = byOutput;
    out[BY_DRIVE_TWICE] = byDriveTwice;
    out[BY_DRIVE_AND_OUTPUT] = byBoth;
    out[BY_DRIVE_TWICE_AND_OUTPUT] =
      -(drain3 * endByDrive * endByDrive * endByOutput + 2 * drain2 * endByDrive * r * byBoth + drain2 * endByOutput * r * byDriveTwice) *
      one;
  }
}
