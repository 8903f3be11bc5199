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
  #between = false;

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
    const reach = Math.ceil(kernel.after * from);
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
    const [x, y, taps, stereo] = [this.#first, this.#second, this.#taps, this.#stereo];
    const reach = taps.length;
    const end = this.#filled - reach;
    let at = this.#at;
    let between = this.#between;
    let m = from;
    for (; m < first.length && at < end; m++) {
      if (!between) {
        first[m] = x[at]!;
        if (stereo) second[m] = y[at]!;
      } else {
        let a = 0;
        let b = 0;
        if (stereo)
          for (let k = 0; k < reach; k++) {
            const c = taps[k]!;
            a += c * (x[at - k]! + x[at + 1 + k]!);
            b += c * (y[at - k]! + y[at + 1 + k]!);
          }
        else for (let k = 0; k < reach; k++) a += taps[k]! * (x[at - k]! + x[at + 1 + k]!);
        first[m] = a;
        if (stereo) second[m] = b;
        at++;
      }
      between = !between;
    }
    this.#at = at;
    this.#between = between;
    return m;
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
