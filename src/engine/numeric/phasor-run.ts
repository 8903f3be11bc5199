import { phasorTable } from './phasor.ts';
import { greatestCommonDivisor, type SampleSource } from './resample.ts';
import { sixWeights } from './six-tap-interpolator.ts';

const CHUNK = 256;
const TAPS = 6;
const BACK = 3;
/** Value and differences kept of the polynomial between two samples, of degree 4. */
const ORDERS = 5;
/** Places between two samples through which it goes: Chebyshev points. */
const PLACES = Float64Array.from({ length: ORDERS }, (_, k) => 0.5 - 0.5 * Math.cos((Math.PI * (k + 0.5)) / ORDERS));
const { POINTS, TABLE } = phasorTable;
/** Added so that what is cut off to a whole number is above zero: a multiple of all points, beyond the phase that can gather between two samples. */
const MOST_RATIO = 400;
const ABOVE = (MOST_RATIO + 1) * POINTS;

/**
 * Phasor of a frequency that is known at a rate several times lower: phase and phasor as by `runPhasor`, the frequency as by `SixTapInterpolator`.
 *
 * Between two of its samples the frequency is the polynomial of degree 4 through what the six taps give at five places, run along by its differences: that
 * takes five additions a sample in place of six products. Its miss in the band stays below that of the six taps where (2 pi B/from)^5/(5! 512) does: -106 dB for
 * B = 0.14 from. Phase is counted in points of the table. Time is counted in whole numbers; the block asked for never changes the result.
 */
export class PhasorRun {
  readonly #source: SampleSource;
  readonly #up: number;
  readonly #down: number;
  /** by place of the first output between two samples and order of difference: six weights [points of the table/Hz] */
  readonly #table: Float64Array;
  readonly #steady: number;
  readonly #x = new Float64Array(TAPS + CHUNK);
  readonly #chunk = new Float64Array(CHUNK);
  readonly #unused = new Float64Array(CHUNK);
  #at = 0;
  #filled = BACK - 1;
  #place = 0;
  /** outputs left before the next sample of the frequency */
  #left = 0;
  /** phase, then the next step of it and that step's differences [points] */
  readonly #state = new Float64Array(1 + ORDERS);

  /**
   * @param source - gives the frequency [Hz] at `from`, the first of its channels
   * @param from, to - rates [Hz], whole numbers, `to` the greater by 1 to 400 times
   * @param band - B, the frequency has no faster change [Hz]
   * @param offset - added to the frequency [Hz]; both together below `to`
   */
  constructor(source: SampleSource, from: number, to: number, band: number, offset: number) {
    this.#source = source;
    const common = greatestCommonDivisor(from, to);
    this.#up = to / common;
    this.#down = from / common;
    this.#steady = (offset / to) * POINTS;
    const share = (2 * band) / from;
    const through = Array.from(PLACES, (place) => sixWeights(place, share, from / to / 2));
    this.#table = new Float64Array(this.#down * ORDERS * TAPS);
    for (let p = 0; p < this.#down; p++) {
      const rows = Array.from({ length: ORDERS }, (_, j) => lagrange((p + j * this.#down) / this.#up));
      for (let order = 0; order < ORDERS; order++)
        for (let l = 0; l < TAPS; l++) {
          // differences of the values at this output and the next four
          let sum = 0;
          for (let j = 0; j <= order; j++) {
            const value = rows[j]!.reduce((s, a, k) => s + a * through[k]![l]!, 0);
            sum += (((order - j) & 1) === 1 ? -1 : 1) * binomial(order, j) * value;
          }
          this.#table[(p * ORDERS + order) * TAPS + l] = (sum * POINTS) / to;
        }
    }
  }

  /** Adds `gain` times the phasors that follow to `count` places from `from` on. */
  add(re: Float64Array, im: Float64Array, from: number, count: number, gain: number): void {
    const state = this.#state;
    let [p, f, d1, d2, d3, d4] = [state[0]!, state[1]!, state[2]!, state[3]!, state[4]!, state[5]!];
    const end = from + count;
    for (let n = from; n < end; ) {
      if (this.#left === 0) {
        while (this.#at + TAPS > this.#filled) this.#refill();
        const t = this.#table;
        const x = this.#x;
        const o = this.#place * ORDERS * TAPS;
        const x0 = x[this.#at]!;
        const x1 = x[this.#at + 1]!;
        const x2 = x[this.#at + 2]!;
        const x3 = x[this.#at + 3]!;
        const x4 = x[this.#at + 4]!;
        const x5 = x[this.#at + 5]!;
        f = this.#steady + t[o]! * x0 + t[o + 1]! * x1 + t[o + 2]! * x2 + (t[o + 3]! * x3 + t[o + 4]! * x4 + t[o + 5]! * x5);
        d1 = t[o + 6]! * x0 + t[o + 7]! * x1 + t[o + 8]! * x2 + (t[o + 9]! * x3 + t[o + 10]! * x4 + t[o + 11]! * x5);
        d2 = t[o + 12]! * x0 + t[o + 13]! * x1 + t[o + 14]! * x2 + (t[o + 15]! * x3 + t[o + 16]! * x4 + t[o + 17]! * x5);
        d3 = t[o + 18]! * x0 + t[o + 19]! * x1 + t[o + 20]! * x2 + (t[o + 21]! * x3 + t[o + 22]! * x4 + t[o + 23]! * x5);
        d4 = t[o + 24]! * x0 + t[o + 25]! * x1 + t[o + 26]! * x2 + (t[o + 27]! * x3 + t[o + 28]! * x4 + t[o + 29]! * x5);
        this.#left = Math.ceil((this.#up - this.#place) / this.#down);
        this.#place += this.#left * this.#down - this.#up;
        this.#at++;
        // whole turns, exactly
        p -= Math.round(p / POINTS) * POINTS;
      }
      const stop = Math.min(end, n + this.#left);
      this.#left -= stop - n;
      for (; n < stop; n++) {
        p += f;
        f += d1;
        d1 += d2;
        d2 += d3;
        d3 += d4;
        const nearest = (p + (ABOVE + 0.5)) | 0;
        const d = (p - (nearest - ABOVE)) * ((2 * Math.PI) / POINTS);
        const o = (nearest & (POINTS - 1)) << 1;
        const c = gain * TABLE[o]!;
        const s = gain * TABLE[o + 1]!;
        const cosine = 1 - 0.5 * d * d;
        re[n] = re[n]! + (c * cosine - s * d);
        im[n] = im[n]! + (s * cosine + c * d);
      }
    }
    state[0] = p;
    state[1] = f;
    state[2] = d1;
    state[3] = d2;
    state[4] = d3;
    state[5] = d4;
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

/** Weights of the values at the places for the polynomial through them. */
function lagrange(t: number): Float64Array {
  return PLACES.map((place, k) => PLACES.reduce((product, other, m) => (m === k ? product : (product * (t - other)) / (place - other)), 1));
}

function binomial(n: number, k: number): number {
  let b = 1;
  for (let i = 0; i < k; i++) b = (b * (n - i)) / (i + 1);
  return b;
}
