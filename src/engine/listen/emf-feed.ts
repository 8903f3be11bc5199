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
    this.read();
    this.feed(tuning, 0, BLOCK);
  }

  /** The next block of e.m.f. alone. */
  read(): void {
    this.#re.copyWithin(0, BLOCK);
    this.#im.copyWithin(0, BLOCK);
    this.#sum.next(this.#re, this.#im, this.#kept);
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
      // two taps at a time: each sample of the feed is loaded and stored half as often
      for (let d = 0; d < taps; d += 2) {
        const o = at + 2 * (j * taps + d);
        addTaps(numbers[o]!, numbers[o + 1]!, numbers[o + 2]!, numbers[o + 3]!, this.#re, this.#im, taps - 2 - d, re, im, start, count);
      }
    }
  }
}

/** Adds tap a on the newer and tap b on the older of neighbouring samples, the older at n + `shift`. */
function addTaps(
  aRe: number,
  aIm: number,
  bRe: number,
  bIm: number,
  xRe: Float64Array,
  xIm: Float64Array,
  shift: number,
  re: Float64Array,
  im: Float64Array,
  start: number,
  count: number,
): void {
  let oldRe = xRe[start + shift]!;
  let oldIm = xIm[start + shift]!;
  for (let n = start; n < start + count; n++) {
    const newRe = xRe[n + shift + 1]!;
    const newIm = xIm[n + shift + 1]!;
    re[n] = re[n]! + aRe * newRe - aIm * newIm + bRe * oldRe - bIm * oldIm;
    im[n] = im[n]! + aRe * newIm + aIm * newRe + bRe * oldIm + bIm * oldRe;
    oldRe = newRe;
    oldIm = newIm;
  }
}
