import { SOBOL_DIRECTIONS } from './sobol-directions.ts';

const BITS = 32;
const SCALE = 2 ** -BITS;

/** Dimensions for which direction numbers are at hand. */
export const SOBOL_DIMENSIONS = SOBOL_DIRECTIONS.length + 1;

/**
 * Point k of the Sobol sequence: numbers in 0 to 1 that fill the cube more evenly than chance does.
 *
 * The sequence is counted in Gray-code order, so any first 2^m points are the same set as in natural order. A digital shift, one random word for
 * each dimension put on by exclusive or, keeps the evenness and makes every point uniform by itself: several shifts tell the error of a mean.
 *
 * @param index - k, from 0 to 2^32 - 1
 * @param out - one number for each dimension, at most `SOBOL_DIMENSIONS`
 * @param shift - a word of 32 bits for each dimension; left out: none, and point 0 is the origin
 * Source: I. M. Sobol, USSR Comput. Math. Math. Phys. 7 (1967) 86; I. A. Antonov & V. M. Saleev, ibid. 19 (1979) 252 (Gray code); digital shift:
 * P. L'Ecuyer & C. Lemieux, in Modeling Uncertainty (2002) 419.
 */
export function sobolPoint(index: number, out: Float64Array, shift?: Uint32Array): void {
  const gray = (index ^ (index >>> 1)) >>> 0;
  for (let d = 0; d < out.length; d++) {
    const v = directions(d);
    let x = shift?.[d] ?? 0;
    for (let bit = 0, g = gray; g !== 0; bit++, g >>>= 1) if (g & 1) x ^= v[bit]!;
    // the middle of the smallest cell once shifted: never 0 and never 1
    out[d] = ((x >>> 0) + (shift ? 0.5 : 0)) * SCALE;
  }
}

const known: Uint32Array[] = [];

function directions(dimension: number): Uint32Array {
  const made = known[dimension];
  if (made) return made;
  const v = new Uint32Array(BITS);
  if (dimension === 0) for (let i = 0; i < BITS; i++) v[i] = 2 ** (31 - i);
  else {
    const [s, a, m] = SOBOL_DIRECTIONS[dimension - 1]!;
    for (let i = 0; i < BITS; i++) {
      if (i < s) v[i] = m[i]! * 2 ** (31 - i);
      else {
        let x = v[i - s]! ^ (v[i - s]! >>> s);
        for (let k = 1; k < s; k++) if ((a >>> (s - 1 - k)) & 1) x ^= v[i - k]!;
        v[i] = x;
      }
    }
  }
  known[dimension] = v;
  return v;
}
