import type { LoopInput } from './detector-loop.ts';
import { lookAhead } from './emf-filter.ts';
import { layout, type RadioTuning } from './radio-tuning.ts';
import { BLOCK, type StationSum } from './station-sum.ts';

/** The e.m.f. block by block, with the past and the future that the taps reach, and what the taps make of it at each port. */
export class EmfFeed implements LoopInput {
  readonly feedRe: readonly Float64Array[];
  readonly feedIm: readonly Float64Array[];
  /** from the present sample of the loop on, which is behind the newest by as much as the taps look ahead */
  readonly emfRe: Float64Array;
  readonly emfIm: Float64Array;
  readonly #sum: StationSum;
  readonly #kept: number;
  readonly #re: Float64Array;
  readonly #im: Float64Array;

  constructor(sum: StationSum, taps: number, ports: number) {
    this.#sum = sum;
    this.#kept = taps - 1;
    this.#re = new Float64Array(this.#kept + BLOCK);
    this.#im = new Float64Array(this.#kept + BLOCK);
    // as if the carriers had always been on
    for (let k = 1; k <= this.#kept; k++)
      for (const e of sum.before(k)) {
        const at = BLOCK + this.#kept - k;
        this.#re[at] = this.#re[at]! + e.re;
        this.#im[at] = this.#im[at]! + e.im;
      }
    this.emfRe = this.#re.subarray(this.#kept - lookAhead(taps));
    this.emfIm = this.#im.subarray(this.#kept - lookAhead(taps));
    this.feedRe = Array.from({ length: ports }, () => new Float64Array(BLOCK));
    this.feedIm = Array.from({ length: ports }, () => new Float64Array(BLOCK));
  }

  /** The next block through a tuning. */
  next(tuning: RadioTuning): void {
    this.read(tuning.gains);
    this.feed(tuning, 0, BLOCK);
  }

  /**
   * The next block of e.m.f. alone.
   *
   * @param gains - of the stations at its end
   */
  read(gains: Float64Array): void {
    this.#re.copyWithin(0, BLOCK);
    this.#im.copyWithin(0, BLOCK);
    this.#sum.next(this.#re, this.#im, this.#kept, gains);
  }

  /** What the taps of a tuning make of part of the block. */
  feed(tuning: RadioTuning, start: number, count: number): void {
    const { taps, numbers, ports } = tuning;
    const at = layout(tuning.modes, ports, taps).taps;
    for (let j = 0; j < ports; j++) {
      const re = this.feedRe[j]!;
      const im = this.feedIm[j]!;
      re.fill(0, start, start + count);
      im.fill(0, start, start + count);
      for (let d = 0; d < taps; d += 4) addFour(numbers, at + 2 * (j * taps + d), this.#re, this.#im, taps - 4 - d, re, im, start, count);
    }
  }
}

/** Adds four taps at once, so that each sample of the feed is loaded and stored but once for them; the oldest is at n + `shift`. */
function addFour(
  taps: Float64Array,
  o: number,
  xRe: Float64Array,
  xIm: Float64Array,
  shift: number,
  re: Float64Array,
  im: Float64Array,
  start: number,
  count: number,
): void {
  const aRe = taps[o]!;
  const aIm = taps[o + 1]!;
  const bRe = taps[o + 2]!;
  const bIm = taps[o + 3]!;
  const cRe = taps[o + 4]!;
  const cIm = taps[o + 5]!;
  const dRe = taps[o + 6]!;
  const dIm = taps[o + 7]!;
  let x3Re = xRe[start + shift]!;
  let x3Im = xIm[start + shift]!;
  let x2Re = xRe[start + shift + 1]!;
  let x2Im = xIm[start + shift + 1]!;
  let x1Re = xRe[start + shift + 2]!;
  let x1Im = xIm[start + shift + 2]!;
  for (let n = start; n < start + count; n++) {
    const x0Re = xRe[n + shift + 3]!;
    const x0Im = xIm[n + shift + 3]!;
    re[n] = re[n]! + (aRe * x0Re - aIm * x0Im + (bRe * x1Re - bIm * x1Im)) + (cRe * x2Re - cIm * x2Im + (dRe * x3Re - dIm * x3Im));
    im[n] = im[n]! + (aRe * x0Im + aIm * x0Re + (bRe * x1Im + bIm * x1Re)) + (cRe * x2Im + cIm * x2Re + (dRe * x3Im + dIm * x3Re));
    x3Re = x2Re;
    x3Im = x2Im;
    x2Re = x1Re;
    x2Im = x1Im;
    x1Re = x0Re;
    x1Im = x0Im;
  }
}
