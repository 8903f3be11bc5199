/** State of a generator of chance: four words of 32 bits, plain data that can be written down and taken up again. */
export type Chance = readonly [number, number, number, number];

/**
 * A generator for one stream of chance. Different seeds and streams begin apart; the first numbers, in which small seeds still show, are thrown away.
 *
 * @param seed, stream - whole numbers, 0 to 2^32 - 1
 */
export function chanceFrom(seed: number, stream: number): Chance {
  let state: Chance = [
    (123456789 ^ Math.imul(seed, 0x9e3779b1)) >>> 0,
    (362436069 ^ Math.imul(stream, 0x85ebca6b)) >>> 0,
    (521288629 ^ seed) >>> 0,
    (88675123 + stream) >>> 0,
  ];
  for (let k = 0; k < 24; k++) state = next(state);
  return state;
}

/**
 * The state after one more draw; its last word is the number drawn.
 *
 * Source: G. Marsaglia, Xorshift RNGs, J. Stat. Softw. 8 (2003) 14, the generator of period 2^128 - 1.
 */
export function next([x, y, z, w]: Chance): Chance {
  const t = (x ^ (x << 11)) >>> 0;
  return [y, z, w, (w ^ (w >>> 19) ^ (t ^ (t >>> 8))) >>> 0];
}

/** Draws numbers from a state that can be read back at any time. */
export class Draws {
  state: Chance;

  constructor(state: Chance) {
    this.state = state;
  }

  /** At least 0, below 1. */
  uniform(): number {
    this.state = next(this.state);
    return this.state[3] / 2 ** 32;
  }

  /** A whole number, at least 0, below n. */
  below(n: number): number {
    return Math.floor(this.uniform() * n);
  }

  /** One of a list that is not empty. */
  oneOf<T>(list: readonly T[]): T {
    return list[this.below(list.length)]!;
  }
}
