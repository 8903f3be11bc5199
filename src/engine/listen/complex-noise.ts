import { MersenneTwister } from '../numeric/index.ts';

/**
 * White Gaussian noise from a seed.
 *
 * Pairs by Box and Muller: r = sqrt(-2 ln u), (r cos 2 pi v, r sin 2 pi v). Source: G. E. P. Box, M. E. Muller, Ann. Math. Statist. 29 (1958) 610.
 */
export class ComplexNoise {
  readonly #random: MersenneTwister;
  readonly #deviation: number;

  /**
   * @param seed - whole number, 0 to 2^32 - 1
   * @param deviation - rms of the real and of the imaginary part
   */
  constructor(seed: number, deviation: number) {
    this.#random = new MersenneTwister(seed);
    this.#deviation = deviation;
  }

  /** Adds `count` samples from `at` on. */
  add(re: Float64Array, im: Float64Array, at: number, count: number): void {
    for (let n = at; n < at + count; n++) {
      // 1 - u is above zero
      const r = this.#deviation * Math.sqrt(-2 * Math.log(1 - this.#random.uniform()));
      const angle = 2 * Math.PI * this.#random.uniform();
      re[n] = re[n]! + r * Math.cos(angle);
      im[n] = im[n]! + r * Math.sin(angle);
    }
  }
}

/** One real sample at a time, of unit deviation. */
export class RealNoise {
  readonly #source: ComplexNoise;
  readonly #re = new Float64Array(1);
  readonly #im = new Float64Array(1);
  #half: boolean = false;

  constructor(seed: number) {
    this.#source = new ComplexNoise(seed, 1);
  }

  next(): number {
    if (this.#half) {
      this.#half = false;
      return this.#im[0]!;
    }
    this.#re[0] = 0;
    this.#im[0] = 0;
    this.#source.add(this.#re, this.#im, 0, 1);
    this.#half = true;
    return this.#re[0]!;
  }
}
