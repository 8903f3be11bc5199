import { GaussianNoise } from '../numeric/index.ts';

const PIECE = 256;

/** White Gaussian noise of a complex envelope, from a seed: real and imaginary part are drawn in turn, so that the block asked for never changes the result. */
export class ComplexNoise {
  readonly #white: GaussianNoise;
  readonly #deviation: number;
  readonly #drawn = new Float64Array(2 * PIECE);

  /**
   * @param seed - whole number, 0 to 2^32 - 1
   * @param deviation - rms of the real and of the imaginary part
   */
  constructor(seed: number, deviation: number) {
    this.#white = new GaussianNoise(seed);
    this.#deviation = deviation;
  }

  /** Adds `count` samples from `at` on. */
  add(re: Float64Array, im: Float64Array, at: number, count: number): void {
    const deviation = this.#deviation;
    for (let from = at; from < at + count; from += PIECE) {
      const drawn = this.#drawn.subarray(0, 2 * Math.min(PIECE, at + count - from));
      this.#white.next(drawn);
      for (let k = 0, n = from; k < drawn.length; k += 2, n++) {
        re[n] = re[n]! + deviation * drawn[k]!;
        im[n] = im[n]! + deviation * drawn[k + 1]!;
      }
    }
  }
}
