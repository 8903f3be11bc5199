const LENGTH = 624;
const SHIFT = 397;

/**
 * Seeded uniform random numbers, the same everywhere: the Mersenne twister MT19937.
 *
 * Source: M. Matsumoto, T. Nishimura, ACM Trans. Model. Comput. Simul. 8 (1998) 3; seeding and 53 bits as in their program of 2002.
 */
export class MersenneTwister {
  readonly #state = new Uint32Array(LENGTH);
  #at = LENGTH;

  /** @param seed - whole number, 0 to 2^32 - 1 */
  constructor(seed: number) {
    const s = this.#state;
    s[0] = seed;
    for (let k = 1; k < LENGTH; k++) s[k] = Math.imul(1812433253, s[k - 1]! ^ (s[k - 1]! >>> 30)) + k;
  }

  /** Next number, at least 0 and below 1, a multiple of 2^-53. */
  uniform(): number {
    const a = this.#word() >>> 5;
    const b = this.#word() >>> 6;
    return (a * 67108864 + b) / 9007199254740992;
  }

  #word(): number {
    if (this.#at === LENGTH) this.#twist();
    let y = this.#state[this.#at++]!;
    y ^= y >>> 11;
    y ^= (y << 7) & 0x9d2c5680;
    y ^= (y << 15) & 0xefc60000;
    return (y ^ (y >>> 18)) >>> 0;
  }

  #twist(): void {
    const s = this.#state;
    for (let k = 0; k < LENGTH; k++) {
      const y = (s[k]! & 0x80000000) | (s[(k + 1) % LENGTH]! & 0x7fffffff);
      s[k] = s[(k + SHIFT) % LENGTH]! ^ (y >>> 1) ^ (y & 1 ? 0x9908b0df : 0);
    }
    this.#at = 0;
  }
}
