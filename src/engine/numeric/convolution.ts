import { type FourierTransform, fourierTransform } from './fft.ts';

/** Block sizes of the sums that go by transforms; taps before the first are multiplied out, which costs nothing to wait for. */
const SIZES = [32, 256, 2048];
const HEAD = SIZES[0]!;
/** A rest of so many blocks is left to the size at hand. */
const MOST_PARTS = 16;

/**
 * A long filter run along a signal without delay: y[n] = sum of h[k] x[n - k].
 *
 * The first 32 taps are multiplied out; later ones go by transforms of blocks that grow with the age of the tap, so that what a block needs is
 * always past when it begins. All blocks lie on one grid from the first sample on: however the signal is cut up, the result is the same to the bit.
 * Source: W. G. Gardner, J. Audio Eng. Soc. 43 (1995) 127.
 */
export class Convolution {
  readonly #head = new Float64Array(HEAD);
  /** the block before and the block at hand */
  readonly #past = new Float64Array(2 * HEAD);
  readonly #later: LaterTaps[] = [];
  #at = 0;

  constructor(taps: Float64Array) {
    this.#head.set(taps.subarray(0, HEAD));
    for (const [k, size] of SIZES.entries()) {
      if (taps.length <= size) break;
      const all = k === SIZES.length - 1 || taps.length <= size * (1 + MOST_PARTS);
      this.#later.push(new LaterTaps(taps.subarray(size, all ? undefined : SIZES[k + 1]!), size));
      if (all) break;
    }
  }

  /** Fills `out` with the samples that follow for those of `x`, as many; both may be the same array. */
  process(x: Float64Array, out: Float64Array): void {
    const [h, past] = [this.#head, this.#past];
    for (let n = 0; n < x.length; ) {
      const count = Math.min(x.length - n, HEAD - this.#at);
      const first = HEAD + this.#at;
      for (let i = 0; i < count; i++) past[first + i] = x[n + i]!;
      for (let i = 0; i < count; i++) {
        const now = first + i;
        let a = 0;
        let b = 0;
        for (let k = 0; k < HEAD; k += 2) {
          a += h[k]! * past[now - k]!;
          b += h[k + 1]! * past[now - k - 1]!;
        }
        out[n + i] = a + b;
      }
      for (const later of this.#later) later.add(past, first, count, out, n);
      n += count;
      this.#at += count;
      if (this.#at < HEAD) continue;
      this.#at = 0;
      past.copyWithin(0, HEAD);
    }
  }
}

/**
 * The taps from one block on: y[n] = sum of h[k] x[n - size - k], parts of one block each.
 *
 * Overlap and save by the transform whose circle closes with the sign changed (x^2B = -1): its bins are those of one complex transform of B points,
 * of (x[n] - j x[n + B]) exp(-j pi n/(2 B)). Source: H. J. Nussbaumer, Fast Fourier Transform and Convolution Algorithms, 2nd ed. (1982), sec. 3.3 (from memory).
 */
class LaterTaps {
  readonly #size: number;
  readonly #transform: FourierTransform;
  readonly #cos: Float64Array;
  readonly #sin: Float64Array;
  /** by part; of the signal the bins of its last blocks, in a ring */
  readonly #taps: readonly Bins[];
  readonly #signal: readonly Bins[];
  readonly #sum: Bins;
  readonly #window: Float64Array;
  /** what these taps give to the block at hand */
  readonly #share: Float64Array;
  #newest = 0;
  #at = 0;

  constructor(taps: Float64Array, size: number) {
    this.#size = size;
    this.#transform = fourierTransform(size);
    this.#cos = Float64Array.from({ length: size }, (_, n) => Math.cos((Math.PI * n) / (2 * size)));
    this.#sin = Float64Array.from({ length: size }, (_, n) => -Math.sin((Math.PI * n) / (2 * size)));
    const parts = Array.from({ length: Math.ceil(taps.length / size) }, (_, p) => taps.subarray(p * size, (p + 1) * size));
    const bins = (): Bins => ({ re: new Float64Array(size), im: new Float64Array(size) });
    this.#taps = parts.map(bins);
    this.#signal = parts.map(bins);
    this.#sum = bins();
    this.#window = new Float64Array(2 * size);
    this.#share = new Float64Array(size);
    for (const [p, part] of parts.entries()) {
      this.#window.fill(0);
      this.#window.set(part);
      this.#transformWindow(this.#taps[p]!);
    }
    this.#window.fill(0);
  }

  /** Takes `count` samples of x from `from` on and adds what these taps give to them; a block never ends within them. */
  add(x: Float64Array, from: number, count: number, out: Float64Array, to: number): void {
    const at = this.#at;
    const window = this.#window;
    const share = this.#share;
    for (let i = 0; i < count; i++) {
      window[this.#size + at + i] = x[from + i]!;
      out[to + i] = out[to + i]! + share[at + i]!;
    }
    this.#at += count;
    if (this.#at === this.#size) this.#nextBlock();
  }

  #nextBlock(): void {
    const parts = this.#taps.length;
    const { re, im } = this.#sum;
    this.#at = 0;
    this.#newest = (this.#newest + parts - 1) % parts;
    this.#transformWindow(this.#signal[this.#newest]!);
    re.fill(0);
    im.fill(0);
    for (let p = 0; p < parts; p++) addProduct(this.#taps[p]!, this.#signal[(this.#newest + p) % parts]!, this.#sum);
    this.#transform.inverse(re, im);
    // y[n + B] is minus the imaginary part, turned back
    for (let n = 0; n < this.#size; n++) this.#share[n] = re[n]! * this.#sin[n]! - im[n]! * this.#cos[n]!;
    this.#window.copyWithin(0, this.#size);
  }

  #transformWindow(to: Bins): void {
    const size = this.#size;
    const window = this.#window;
    for (let n = 0; n < size; n++) {
      const x = window[n]!;
      const y = -window[n + size]!;
      to.re[n] = x * this.#cos[n]! - y * this.#sin[n]!;
      to.im[n] = x * this.#sin[n]! + y * this.#cos[n]!;
    }
    this.#transform.forward(to.re, to.im);
  }
}

interface Bins {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

function addProduct(h: Bins, x: Bins, sum: Bins): void {
  const hRe = h.re;
  const hIm = h.im;
  const xRe = x.re;
  const xIm = x.im;
  const { re, im } = sum;
  for (let n = 0; n < re.length; n++) {
    const a = hRe[n]!;
    const b = hIm[n]!;
    const c = xRe[n]!;
    const d = xIm[n]!;
    re[n] = re[n]! + a * c - b * d;
    im[n] = im[n]! + a * d + b * c;
  }
}
