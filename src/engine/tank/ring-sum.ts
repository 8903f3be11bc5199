import { coaxialRingMutual } from './coaxial-rings.ts';
import { type CurrentInWire, ringInductance } from './ring-inductance.ts';

/**
 * The winding as a row of equal rings: one function of a number of turns from which every inductance of the winding follows.
 *
 * `of(x)` is the inductance of x neighbouring turns of it [H]:
 * L(x) = x L_0 + 2 sum_{n < x} (x - n) M_n, at whole x the sum over all pairs of rings, straight in between.
 */
export interface RingSum {
  readonly turns: number;
  of(x: number): number;
}

/**
 * Sums the mutual inductances of the rings of a winding; equal spacing leaves only one number for each distance.
 *
 * @param radius - to the middle of the wire [m]
 * @param wireRadius - [m]
 * @param pitch - between neighbouring turns [m]
 * @param turns - effective turns, any number above zero
 * Source: Kirchhoff's sum with Maxwell's mutual inductance (Grover, Inductance Calculations, 1946, ch. 16; NBS Circular 74).
 */
export function ringSum(radius: number, wireRadius: number, pitch: number, turns: number, current: CurrentInWire): RingSum {
  const self = ringInductance(radius, wireRadius, current);
  const count = Math.ceil(turns);
  // sums over n of M_n and of n M_n, so that L(x) costs the same at any x
  const sum = new Float64Array(count);
  const moment = new Float64Array(count);
  for (let n = 1; n < count; n++) {
    const mutual = coaxialRingMutual(radius, radius, n * pitch);
    sum[n] = sum[n - 1]! + mutual;
    moment[n] = moment[n - 1]! + n * mutual;
  }
  const of = (x: number): number => {
    const last = Math.min(count - 1, Math.max(0, Math.ceil(x) - 1));
    return x * self + 2 * (x * sum[last]! - moment[last]!);
  };
  return { turns, of };
}

/**
 * Mutual inductance of two stretches of one winding, each from one place along it to another [effective turns].
 *
 * M(a..b, c..d) = [L(d - a) + L(c - b) - L(d - b) - L(c - a)] / 2 for a < b <= c < d
 *
 * Taken with L(b - a) for the stretches alone, the entries of any division add up to the inductance of the whole exactly, and form a positive
 * definite matrix, since they are the energy of rings with positive definite inductance.
 */
export function stretchMutual(rings: RingSum, a: number, b: number, c: number, d: number): number {
  return (rings.of(d - a) + rings.of(c - b) - rings.of(d - b) - rings.of(c - a)) / 2;
}
