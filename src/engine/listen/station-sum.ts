import { C, type Complex } from '../numeric/index.ts';
import type { EnvelopeSource } from '../programme/index.ts';
import type { ComplexNoise } from './complex-noise.ts';

/** One station as the time engine takes it. */
export interface StationInTime {
  readonly name: string;
  /** carrier [Hz] */
  readonly frequency: number;
  /** open-circuit voltage of the aerial at the carrier [V rms] */
  readonly emf: number;
  /** of its spectrum, on either side of the carrier [Hz] */
  readonly halfWidth: number;
  /** at the engine's rate */
  readonly source: EnvelopeSource;
  /** whether the source is about the reference frequency already; about its own carrier unless given */
  readonly turned?: boolean;
}

/** Samples worked on at a time. */
export const BLOCK = 256;
/** Carriers start apart in phase by steps of the golden section, so that no chance meeting of all of them stands at the beginning. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** The e.m.f. of all stations about the reference, sample by sample: sum of sqrt 2 E_i g_i u_i(t) exp(j 2 pi (f_i - f0) t) [V peak], and noise if any. */
export class StationSum {
  readonly #stations: readonly StationInTime[];
  readonly #noise: ComplexNoise | null;
  readonly #re = new Float64Array(BLOCK);
  readonly #im = new Float64Array(BLOCK);
  /** of each station [turns], at the next sample */
  readonly #phase: Float64Array;
  /** turns a sample, and a block, whole turns taken off */
  readonly #perSample: Float64Array;
  readonly #perBlock: Float64Array;
  #restLeft: number;
  /** as they stand at the next sample */
  readonly #gains: Float64Array;

  /**
   * @param rest - samples of bare carriers before the sources are asked
   * @param gains - of the stations, to begin with
   */
  constructor(
    stations: readonly StationInTime[],
    reference: number,
    rate: number,
    rest: number,
    noise: ComplexNoise | null,
    gains: Float64Array,
  ) {
    this.#stations = stations;
    this.#noise = noise;
    this.#gains = gains.slice();
    this.#restLeft = rest;
    this.#perSample = Float64Array.from(stations, (s) => (s.frequency - reference) / rate);
    this.#perBlock = this.#perSample.map((p) => (p * BLOCK) % 1);
    // a source that is turned already has phase zero at its first sample; while it is at rest its carrier runs up to that
    this.#phase = Float64Array.from(stations, (s, k) => (s.turned ? -((rest * this.#perSample[k]!) % 1) : (k * GOLDEN) % 1));
  }

  /** The carriers as they stood so many samples before the first, each [V peak]. */
  before(samples: number): Complex[] {
    return this.#stations.map((s, k) =>
      C.scale(C.cis(2 * Math.PI * (this.#phase[k]! - samples * this.#perSample[k]!)), Math.SQRT2 * s.emf * this.#gains[k]!),
    );
  }

  /**
   * Writes the next block from `at` of the arrays on.
   *
   * @param gains - of the stations at its end; they run straight to there
   */
  next(re: Float64Array, im: Float64Array, at: number, gains: Float64Array): void {
    re.fill(0, at, at + BLOCK);
    im.fill(0, at, at + BLOCK);
    const resting = Math.min(this.#restLeft, BLOCK);
    this.#restLeft -= resting;
    this.#stations.forEach((s, k) => {
      const gain = gains[k]!;
      const peak = Math.SQRT2 * s.emf * gain;
      if (s.source.add && s.turned && resting === 0 && gain === this.#gains[k]) {
        s.source.add(re, im, at, BLOCK, peak);
        return;
      }
      if (resting === 0) s.source.next(this.#re, this.#im);
      else {
        this.#re.fill(1, 0, resting);
        this.#im.fill(0, 0, resting);
        if (resting < BLOCK) s.source.next(this.#re.subarray(resting), this.#im.subarray(resting));
      }
      if (gain !== this.#gains[k]) this.#ramp(this.#gains[k]! / gain);
      this.#gains[k] = gain;
      const turned = s.turned === true;
      if (!turned || resting > 0) this.#turn(re, im, at, turned ? resting : BLOCK, peak, this.#phase[k]!, this.#perSample[k]!);
      if (turned) this.#add(re, im, at, resting, peak);
      this.#phase[k] = (this.#phase[k]! + this.#perBlock[k]!) % 1;
    });
    this.#noise?.add(re, im, at, BLOCK);
  }

  /** From a share of the gain to the whole. */
  #ramp(from: number): void {
    for (let n = 0; n < BLOCK; n++) {
      const share = from + ((1 - from) * (n + 1)) / BLOCK;
      this.#re[n] = this.#re[n]! * share;
      this.#im[n] = this.#im[n]! * share;
    }
  }

  #add(re: Float64Array, im: Float64Array, at: number, from: number, peak: number): void {
    const a = this.#re;
    const b = this.#im;
    for (let n = from; n < BLOCK; n++) {
      re[at + n] = re[at + n]! + peak * a[n]!;
      im[at + n] = im[at + n]! + peak * b[n]!;
    }
  }

  /** The phasor is made afresh for each block and multiplied along within it: 256 roundings, no drift. */
  #turn(re: Float64Array, im: Float64Array, at: number, count: number, peak: number, phase: number, perSample: number): void {
    const a = this.#re;
    const b = this.#im;
    let c = peak * Math.cos(2 * Math.PI * phase);
    let s = peak * Math.sin(2 * Math.PI * phase);
    const stepC = Math.cos(2 * Math.PI * perSample);
    const stepS = Math.sin(2 * Math.PI * perSample);
    for (let n = 0; n < count; n++) {
      re[at + n] = re[at + n]! + a[n]! * c - b[n]! * s;
      im[at + n] = im[at + n]! + a[n]! * s + b[n]! * c;
      const turned = c * stepC - s * stepS;
      s = c * stepS + s * stepC;
      c = turned;
    }
  }
}
