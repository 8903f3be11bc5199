import { MersenneTwister } from './mersenne-twister.ts';

/**
 * White Gaussian noise of unit deviation from a seed.
 *
 * Pairs by Box and Muller: r = sqrt(-2 ln u), r cos 2 pi v and r sin 2 pi v. Source: G. E. P. Box, M. E. Muller, Ann. Math. Statist. 29 (1958) 610.
 */
export class GaussianNoise {
  readonly #random: MersenneTwister;

  /** @param seed - whole number, 0 to 2^32 - 1 */
  constructor(seed: number) {
    this.#random = new MersenneTwister(seed);
  }

  /** Fills the array, of even length, with the samples that follow. */
  next(out: Float64Array): void {
    for (let n = 0; n < out.length; n += 2) {
      // 1 - u is above zero
      const r = Math.sqrt(-2 * Math.log(1 - this.#random.uniform()));
      const angle = 2 * Math.PI * this.#random.uniform();
      out[n] = r * Math.cos(angle);
      out[n + 1] = r * Math.sin(angle);
    }
  }
}
