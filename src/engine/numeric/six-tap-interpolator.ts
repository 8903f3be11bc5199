import { integrate } from './gauss-legendre.ts';
import { greatestCommonDivisor, type SampleSource } from './resample.ts';
import { solveReal } from './solve-real.ts';

const CHUNK = 256;
const TAPS = 6;
const BACK = 3;
/** White noise of -120 dB is taken to be there too, so that weights stay small where a narrow band would leave them open. */
const NOISE = 1e-12;

/**
 * Samples of one signal at another rate, from the six samples about each, for signals much narrower than their rate; or its means over an interval
 * about each.
 *
 * For each place between two samples the six weights are those whose response misses the wanted one least over the band, in the mean square:
 * sum over l of sinc(2 B (k - l)/from) c_l = mean of sinc(2 B (k - x)/from) over the interval. Nothing is spent on frequencies where
 * there is no signal. Worst miss in the band, at its edge: -76 dB for B = 0.14 from, -94 dB for 0.1, and in the mean square 11 dB less.
 * Time is counted in whole numbers; output k stands at the time k/to of the source; the block asked for never changes the result.
 * Source: T. I. Laakso et al., IEEE Signal Processing Magazine 13, 1 (1996) 30 (general least squares).
 */
export class SixTapInterpolator {
  readonly rate: number;
  readonly #source: SampleSource;
  readonly #up: number;
  readonly #down: number;
  readonly #table: Float64Array;
  readonly #x = new Float64Array(TAPS + CHUNK);
  readonly #chunk = new Float64Array(CHUNK);
  readonly #unused = new Float64Array(CHUNK);
  #at = 0;
  #filled = BACK - 1;
  #phase = 0;

  /**
   * @param source - gives samples at `from`, the first of its channels
   * @param from, to - rates [Hz], whole numbers; the table has 6 to/gcd(from, to) entries
   * @param band - B, the signal ends there [Hz]
   * @param interval - over which means are taken [s], at most 1/from; 0 for the samples themselves
   */
  constructor(source: SampleSource, from: number, to: number, band: number, interval: number) {
    this.rate = to;
    this.#source = source;
    const common = greatestCommonDivisor(from, to);
    this.#up = to / common;
    this.#down = from / common;
    this.#table = new Float64Array(this.#up * TAPS);
    const share = (2 * band) / from;
    const reach = (interval * from) / 2;
    for (let p = 0; p < this.#up; p++) this.#table.set(sixWeights(p / this.#up, share, reach), p * TAPS);
  }

  next(out: Float64Array): void {
    for (let m = 0; m < out.length; ) {
      while (this.#at + TAPS > this.#filled) this.#refill();
      m = this.#run(out, m);
    }
  }

  #run(out: Float64Array, from: number): number {
    const x = this.#x;
    const table = this.#table;
    const up = this.#up;
    const down = this.#down;
    const last = this.#filled - TAPS;
    let at = this.#at;
    let phase = this.#phase;
    let m = from;
    while (m < out.length && at <= last) {
      const x0 = x[at]!;
      const x1 = x[at + 1]!;
      const x2 = x[at + 2]!;
      const x3 = x[at + 3]!;
      const x4 = x[at + 4]!;
      const x5 = x[at + 5]!;
      for (; phase < up && m < out.length; phase += down, m++) {
        const r = phase * TAPS;
        out[m] = table[r]! * x0 + table[r + 1]! * x1 + table[r + 2]! * x2 + (table[r + 3]! * x3 + table[r + 4]! * x4 + table[r + 5]! * x5);
      }
      for (; phase >= up; phase -= up) at++;
    }
    this.#at = at;
    this.#phase = phase;
    return m;
  }

  #refill(): void {
    const kept = Math.max(0, this.#filled - this.#at);
    this.#x.copyWithin(0, this.#at, this.#filled);
    this.#source.next(this.#chunk, this.#unused);
    this.#x.set(this.#chunk, kept);
    this.#at = Math.max(0, this.#at - this.#filled);
    this.#filled = kept + CHUNK;
  }
}

const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));

/**
 * Weights of the samples at -2 to 3 for a place between samples 0 and 1.
 *
 * @param share - 2 B/from
 * @param reach - half the interval, in samples
 */
export function sixWeights(place: number, share: number, reach: number): Float64Array {
  const matrix = new Float64Array(TAPS * TAPS);
  const wanted = new Float64Array(TAPS);
  for (let k = 0; k < TAPS; k++) {
    for (let l = 0; l < TAPS; l++) matrix[k * TAPS + l] = sinc(share * (k - l)) + (k === l ? NOISE : 0);
    const at = k - (BACK - 1) - place;
    wanted[k] = reach === 0 ? sinc(share * at) : integrate((u) => sinc(share * (at - u)), -reach, reach, 8) / (2 * reach);
  }
  solveReal(TAPS, matrix, wanted);
  return wanted;
}
