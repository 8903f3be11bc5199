import { interval, monotoneSlopes } from '../numeric/index.ts';
import {
  type CycleAverages,
  FUNDAMENTAL_BY_BOTH,
  FUNDAMENTAL_BY_OUTPUT_TWICE,
  MEAN_BY_BOTH,
  MEAN_BY_OUTPUT_TWICE,
  REST_ABOVE_FLOOR,
  REST_BY_OUTPUT,
  REST_BY_OUTPUT_TWICE,
  REST_CURRENT,
  REST_QUARTER_BEND,
  REST_QUARTER_BEND_BY_OUTPUT,
  REST_SLOPE,
  REST_SLOPE_BY_OUTPUT,
} from './cycle-average.ts';
import { FUNDAMENTAL, FUNDAMENTAL_BY_AMPLITUDE, FUNDAMENTAL_BY_OUTPUT, MEAN, MEAN_BY_AMPLITUDE, MEAN_BY_OUTPUT } from './model.ts';

/** Pieces narrower than this share of the table are taken as straight: two readings at one voltage, to the last digits. */
const NARROW = 1e-6;

/**
 * Measured current-voltage law: a piecewise cubic that never turns back, straight on beyond both ends with the end's slope.
 *
 * Where the table does not hold 0 V the point (0 V, 0 A) is put in: a body without a battery has no current without a voltage. The cycle average
 * is taken in closed form piece by piece: on each the current is a cubic in cos(wt), whose integrals between the angles at which the swing
 * crosses the table's points are elementary.
 *
 * Source: interpolation as `monotoneSlopes`; integrals of powers of the cosine, Abramowitz & Stegun 4.3.127 and following.
 */
export class MeasuredLaw implements CycleAverages {
  readonly floor = 0;
  readonly voltage: readonly number[];
  readonly #current: readonly number[];
  readonly #slope: Float64Array;
  /** second and third power's coefficients about the left point of each piece */
  readonly #square: Float64Array;
  readonly #cube: Float64Array;
  /** the cubic of one piece about the middle of the swing: i, i', i''/2, i'''/6 */
  readonly #about = new Float64Array(4);

  /** The table is taken as checked: ascending, current not falling, no current at no voltage, zero within its ends. */
  constructor(voltage: readonly number[], current: readonly number[]) {
    const at = voltage.findIndex((v) => v >= 0);
    const missing = voltage[at] !== 0;
    this.voltage = missing ? [...voltage.slice(0, at), 0, ...voltage.slice(at)] : voltage;
    this.#current = missing ? [...current.slice(0, at), 0, ...current.slice(at)] : current;
    const n = this.voltage.length;
    this.#slope = monotoneSlopes(this.voltage, this.#current);
    this.#square = new Float64Array(n - 1);
    this.#cube = new Float64Array(n - 1);
    for (let k = 0; k < n - 1; k++) {
      const h = this.voltage[k + 1]! - this.voltage[k]!;
      // over the swing a cubic of such a piece cancels to noise; straight on, it errs by its own width
      if (h < NARROW * (this.voltage[n - 1]! - this.voltage[0]!)) continue;
      const chord = (this.#current[k + 1]! - this.#current[k]!) / h;
      this.#square[k] = (3 * chord - 2 * this.#slope[k]! - this.#slope[k + 1]!) / h;
      this.#cube[k] = (this.#slope[k]! + this.#slope[k + 1]! - 2 * chord) / (h * h);
    }
  }

  /** Piece that holds a voltage: -1 below the table, n - 1 above it. */
  #piece(v: number): number {
    const last = this.voltage.length - 1;
    if (v < this.voltage[0]!) return -1;
    if (v >= this.voltage[last]!) return last;
    return interval(this.voltage, v);
  }

  /** Expands a piece about a voltage, from whichever of its ends is nearer, so that a point of the table gives its own current exactly. */
  #expand(piece: number, v: number): void {
    const c = this.#about;
    const last = this.voltage.length - 1;
    if (piece < 0 || piece === last) {
      const end = Math.max(0, piece);
      c[0] = this.#current[end]! + this.#slope[end]! * (v - this.voltage[end]!);
      c[1] = this.#slope[end]!;
      c[2] = 0;
      c[3] = 0;
      return;
    }
    const cube = this.#cube[piece]!;
    const left = v - this.voltage[piece]!;
    const right = v - this.voltage[piece + 1]!;
    const fromLeft = Math.abs(left) <= Math.abs(right);
    const end = fromLeft ? piece : piece + 1;
    const e = fromLeft ? left : right;
    const slope = this.#slope[end]!;
    const square = this.#square[piece]! + (fromLeft ? 0 : 3 * cube * (this.voltage[piece + 1]! - this.voltage[piece]!));
    c[0] = this.#current[end]! + e * (slope + e * (square + e * cube));
    c[1] = slope + e * (2 * square + 3 * e * cube);
    c[2] = square + 3 * e * cube;
    c[3] = cube;
  }

  current(v: number): number {
    this.#expand(this.#piece(v), v);
    return this.#about[0]!;
  }

  average(amplitude: number, output: number, out: Float64Array): void {
    out.fill(0);
    const c = this.#about;
    const a = amplitude;
    const last = this.#piece(-output - a);
    // angle, sine and powers' integrals at the start of a piece; the swing begins at its top, wt = 0
    let angle = 0;
    let p1 = 0;
    let p2 = 0;
    let p3 = 0;
    let p4 = 0;
    for (let piece = this.#piece(a - output); piece >= last; piece--) {
      let nextAngle = Math.PI;
      let sine = 0;
      let cosine = -1;
      if (piece > last) {
        cosine = Math.max(-1, Math.min(1, (this.voltage[piece]! + output) / a));
        nextAngle = Math.acos(cosine);
        sine = Math.sqrt((1 - cosine) * (1 + cosine));
      }
      const q1 = sine;
      const q2 = (nextAngle + sine * cosine) / 2;
      const q3 = sine * (1 - (sine * sine) / 3);
      const q4 = (3 * nextAngle + sine * cosine * (3 + 2 * cosine * cosine)) / 8;
      const j0 = (nextAngle - angle) / Math.PI;
      const j1 = (q1 - p1) / Math.PI;
      const j2 = (q2 - p2) / Math.PI;
      const j3 = (q3 - p3) / Math.PI;
      const j4 = (q4 - p4) / Math.PI;
      this.#expand(piece, -output);
      const i = c[0]!;
      const b1 = c[1]!;
      const b2 = c[2]! * a;
      const b3 = c[3]! * a * a;
      out[MEAN]! += i * j0 + a * (b1 * j1 + b2 * j2 + b3 * j3);
      out[FUNDAMENTAL]! += 2 * (i * j1 + a * (b1 * j2 + b2 * j3 + b3 * j4));
      out[MEAN_BY_AMPLITUDE]! += b1 * j1 + 2 * b2 * j2 + 3 * b3 * j3;
      out[MEAN_BY_OUTPUT]! -= b1 * j0 + 2 * b2 * j1 + 3 * b3 * j2;
      out[FUNDAMENTAL_BY_AMPLITUDE]! += 2 * (b1 * j2 + 2 * b2 * j3 + 3 * b3 * j4);
      out[FUNDAMENTAL_BY_OUTPUT]! -= 2 * (b1 * j1 + 2 * b2 * j2 + 3 * b3 * j3);
      out[MEAN_BY_BOTH]! -= 2 * c[2]! * j1 + 6 * c[3]! * a * j2;
      out[FUNDAMENTAL_BY_BOTH]! -= 2 * (2 * c[2]! * j2 + 6 * c[3]! * a * j3);
      out[MEAN_BY_OUTPUT_TWICE]! += 2 * c[2]! * j0 + 6 * c[3]! * a * j1;
      out[FUNDAMENTAL_BY_OUTPUT_TWICE]! += 2 * (2 * c[2]! * j1 + 6 * c[3]! * a * j2);
      angle = nextAngle;
      p1 = q1;
      p2 = q2;
      p3 = q3;
      p4 = q4;
    }
  }

  /** At a point of the table the curvature is the mean of both sides: that is what a small swing about it sees. */
  rest(output: number, out: Float64Array): void {
    const v = -output;
    const piece = this.#piece(v);
    this.#expand(piece, v);
    const c = this.#about;
    out[REST_CURRENT] = c[0]!;
    out[REST_ABOVE_FLOOR] = c[0]!;
    out[REST_BY_OUTPUT] = -c[1]!;
    out[REST_SLOPE] = c[1]!;
    let bend = 2 * c[2]!;
    let third = 6 * c[3]!;
    if (piece >= 0 && v === this.voltage[piece]) {
      this.#expand(piece - 1, v);
      bend = (bend + 2 * c[2]!) / 2;
      third = (third + 6 * c[3]!) / 2;
    }
    out[REST_SLOPE_BY_OUTPUT] = -bend;
    out[REST_BY_OUTPUT_TWICE] = bend;
    out[REST_QUARTER_BEND] = bend / 4;
    out[REST_QUARTER_BEND_BY_OUTPUT] = -third / 4;
  }
}
