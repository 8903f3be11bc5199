import type { Kernel } from './low-pass-kernel.ts';

/** Gives the samples that follow, of one channel or of two; both arrays have equal length, and the second is left alone where there is but one. */
export interface SampleSource {
  next(first: Float64Array, second: Float64Array): void;
}

/** Samples asked of the source at a time. */
const CHUNK = 256;
/** Largest table of coefficients kept exactly, and the rows between which they are interpolated when it would be larger. */
const LARGEST_TABLE = 1 << 16;
const ROWS = 512;

/**
 * Samples of a filtered signal at another rate: y(m/to) = (1/from) sum of x(n/from) h(m/to - n/from).
 *
 * Time is counted in whole numbers, so it never drifts, and output k stands exactly at the time k/to of the source (which is silent before
 * its first sample): the source is read ahead by the kernel's length and a chunk. The block asked for never changes the result. Rates that
 * share no large factor, so that the table of h would exceed 65,536 entries, have it interpolated between 512 rows a sample: error
 * below (2 pi f/from/512)^2/8, or -108 dB at f = 0.46 from.
 */
export class Resampler implements SampleSource {
  readonly rate: number;
  readonly #source: SampleSource;
  readonly #stereo: boolean;
  /** output over input rate is #up/#down in lowest terms */
  readonly #up: number;
  readonly #down: number;
  readonly #taps: number;
  readonly #table: Float64Array;
  readonly #exact: boolean;
  readonly #first: Float64Array;
  readonly #second: Float64Array;
  readonly #firstChunk = new Float64Array(CHUNK);
  readonly #secondChunk = new Float64Array(CHUNK);
  /** place in the buffers of the oldest sample under the kernel, and how many are there */
  #at = 0;
  #filled: number;
  /** the output stands #phase/#up of a sample after the newest input that is not later than it */
  #phase = 0;

  /**
   * @param source - gives samples at `from`
   * @param from, to - rates [Hz], whole numbers
   * @param channels - 1 or 2
   */
  constructor(source: SampleSource, from: number, to: number, kernel: Kernel, channels: 1 | 2) {
    this.rate = to;
    this.#source = source;
    this.#stereo = channels === 2;
    const common = greatestCommonDivisor(from, to);
    this.#up = to / common;
    this.#down = from / common;
    // an output between inputs 0 and 1 has under it the inputs from 1 - back to ahead
    const back = Math.ceil(kernel.after * from);
    const ahead = Math.ceil(kernel.before * from);
    // summed by eights
    this.#taps = 8 * Math.ceil((back + ahead) / 8);
    this.#exact = this.#up * this.#taps <= LARGEST_TABLE;
    const rows = this.#exact ? this.#up : ROWS + 1;
    const step = this.#exact ? this.#up : ROWS;
    this.#table = new Float64Array(rows * this.#taps);
    for (let p = 0; p < rows; p++)
      for (let k = 0; k < this.#taps; k++) this.#table[p * this.#taps + k] = kernel.at((p / step + back - 1 - k) / from) / from;
    this.#first = new Float64Array(this.#taps + CHUNK);
    this.#second = new Float64Array(this.#taps + CHUNK);
    this.#filled = back - 1;
  }

  next(first: Float64Array, second: Float64Array): void {
    for (let m = 0; m < first.length; ) {
      while (this.#at + this.#taps > this.#filled) this.#refill();
      m = this.#exact ? this.#run(first, second, m) : this.#runBetweenRows(first, second, m);
    }
  }

  /** Fills the output from `from` on until it is full or the input is used up; returns how far it came. */
  #run(first: Float64Array, second: Float64Array, from: number): number {
    const [up, down, taps, table, x, y] = [this.#up, this.#down, this.#taps, this.#table, this.#first, this.#second];
    const last = this.#filled - taps;
    const stereo = this.#stereo;
    let at = this.#at;
    let phase = this.#phase;
    let m = from;
    for (; m < first.length && at <= last; m++) {
      const row = phase * taps;
      let a = 0;
      let b = 0;
      let c = 0;
      let d = 0;
      if (stereo) {
        for (let k = 0; k < taps; k += 2) {
          const even = table[row + k]!;
          const odd = table[row + k + 1]!;
          a += even * x[at + k]!;
          b += odd * x[at + k + 1]!;
          c += even * y[at + k]!;
          d += odd * y[at + k + 1]!;
        }
        second[m] = c + d;
        first[m] = a + b;
      } else {
        for (let k = 0; k < taps; k += 8) {
          const r = row + k;
          const i = at + k;
          a += table[r]! * x[i]! + table[r + 4]! * x[i + 4]!;
          b += table[r + 1]! * x[i + 1]! + table[r + 5]! * x[i + 5]!;
          c += table[r + 2]! * x[i + 2]! + table[r + 6]! * x[i + 6]!;
          d += table[r + 3]! * x[i + 3]! + table[r + 7]! * x[i + 7]!;
        }
        first[m] = a + b + (c + d);
      }
      for (phase += down; phase >= up; phase -= up) at++;
    }
    this.#at = at;
    this.#phase = phase;
    return m;
  }

  /** The same where the table does not hold every phase. */
  #runBetweenRows(first: Float64Array, second: Float64Array, from: number): number {
    const last = this.#filled - this.#taps;
    let m = from;
    for (; m < first.length && this.#at <= last; m++) {
      const x = (this.#phase / this.#up) * ROWS;
      const row = Math.floor(x);
      first[m] = this.#between(row, x - row, this.#first);
      if (this.#stereo) second[m] = this.#between(row, x - row, this.#second);
      const steps = Math.floor((this.#phase + this.#down) / this.#up);
      this.#phase += this.#down - steps * this.#up;
      this.#at += steps;
    }
    return m;
  }

  #between(row: number, share: number, x: Float64Array): number {
    const lower = row * this.#taps;
    let sum = 0;
    for (let k = 0; k < this.#taps; k++) {
      const c = this.#table[lower + k]!;
      sum += (c + share * (this.#table[lower + this.#taps + k]! - c)) * x[this.#at + k]!;
    }
    return sum;
  }

  /** The samples still under the kernel move to the front, and a chunk more is read. */
  #refill(): void {
    const kept = Math.max(0, this.#filled - this.#at);
    this.#first.copyWithin(0, this.#at, this.#filled);
    if (this.#stereo) this.#second.copyWithin(0, this.#at, this.#filled);
    this.#source.next(this.#firstChunk, this.#secondChunk);
    this.#first.set(this.#firstChunk, kept);
    if (this.#stereo) this.#second.set(this.#secondChunk, kept);
    // where the output steps over more than the kernel's length, some of the chunk is stepped over too
    this.#at = Math.max(0, this.#at - this.#filled);
    this.#filled = kept + CHUNK;
  }
}

export function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
