import { lowPassKernel } from './low-pass-kernel.ts';
import type { SampleSource } from './resample.ts';

/** Samples asked of the source at a time. */
const CHUNK = 128;

/**
 * Samples of a signal at twice its rate: every other one is as it was, those between are sums over pairs of neighbours.
 *
 * As `Resampler` with a low-pass half-way to the rate, whose response is zero at all other samples; output k stands at k/(2 from).
 * Passed: to `pass`; images are down by `attenuation` from `from` - `pass` on.
 */
export class Doubler implements SampleSource {
  readonly #source: SampleSource;
  readonly #stereo: boolean;
  readonly #taps: Float64Array;
  readonly #first: Float64Array;
  readonly #second: Float64Array;
  readonly #firstChunk = new Float64Array(CHUNK);
  readonly #secondChunk = new Float64Array(CHUNK);
  /** place of the sample at or before the output, and how many are there */
  #at: number;
  #filled: number;
  readonly #pair = new Float64Array(2);
  /** samples given modulo 2: 1 where the one between comes next */
  #odd = 0;

  /**
   * @param from - rate of the source [Hz]
   * @param pass - [Hz], below from/2
   * @param attenuation - [dB]
   * @param channels - 1 or 2
   */
  constructor(source: SampleSource, from: number, pass: number, attenuation: number, channels: 1 | 2) {
    this.#source = source;
    this.#stereo = channels === 2;
    const kernel = lowPassKernel(pass, from - pass, attenuation);
    // an even number, so that they are summed by twos
    const reach = 2 * Math.ceil((kernel.after * from) / 2);
    this.#taps = Float64Array.from({ length: reach }, (_, k) => kernel.at((k + 0.5) / from) / from);
    this.#first = new Float64Array(2 * reach + CHUNK);
    this.#second = new Float64Array(2 * reach + CHUNK);
    this.#at = reach - 1;
    this.#filled = reach - 1;
  }

  next(first: Float64Array, second: Float64Array): void {
    for (let m = 0; m < first.length; ) {
      if (this.#at + this.#taps.length >= this.#filled) this.#refill();
      m = this.#run(first, second, m);
    }
  }

  #run(first: Float64Array, second: Float64Array, from: number): number {
    const end = this.#filled - this.#taps.length;
    let m = from;
    if (this.#odd === 1 && this.#at < end) {
      // the second half of a pair whose first ended a block
      this.#pairs(this.#first, this.#pair, 0, 1);
      first[m] = this.#pair[1]!;
      if (this.#stereo) {
        this.#pairs(this.#second, this.#pair, 0, 1);
        second[m] = this.#pair[1]!;
      }
      this.#at++;
      m++;
    }
    const pairs = Math.max(0, Math.min((first.length - m) >> 1, end - this.#at));
    this.#pairs(this.#first, first, m, pairs);
    if (this.#stereo) this.#pairs(this.#second, second, m, pairs);
    m += 2 * pairs;
    this.#at += pairs;
    // a last sample that is as it was, its neighbour being beyond the block
    this.#odd = m < first.length && this.#at < end ? 1 : 0;
    if (this.#odd === 1) {
      first[m] = this.#first[this.#at]!;
      if (this.#stereo) second[m] = this.#second[this.#at]!;
      m++;
    }
    return m;
  }

  /** Samples as they were and between, by twos. */
  #pairs(x: Float64Array, out: Float64Array, from: number, count: number): void {
    const taps = this.#taps;
    const reach = taps.length;
    for (let i = 0, at = this.#at, m = from; i < count; i++, at++, m += 2) {
      out[m] = x[at]!;
      let a = 0;
      let b = 0;
      for (let k = 0; k < reach; k += 2) {
        a += taps[k]! * (x[at - k]! + x[at + 1 + k]!);
        b += taps[k + 1]! * (x[at - k - 1]! + x[at + 2 + k]!);
      }
      out[m + 1] = a + b;
    }
  }

  #refill(): void {
    const keepFrom = this.#at - this.#taps.length + 1;
    const kept = this.#filled - keepFrom;
    this.#first.copyWithin(0, keepFrom, this.#filled);
    if (this.#stereo) this.#second.copyWithin(0, keepFrom, this.#filled);
    this.#source.next(this.#firstChunk, this.#secondChunk);
    this.#first.set(this.#firstChunk, kept);
    if (this.#stereo) this.#second.set(this.#secondChunk, kept);
    this.#at -= keepFrom;
    this.#filled = kept + CHUNK;
  }
}
