/**
 * Bicubic Hermite polynomials on the unit square: through value, both slopes and cross slope at each corner, so that neighbours join with
 * a continuous first derivative. Error h^4/384 of the fourth derivative in each direction.
 *
 * Source: C. de Boor, A Practical Guide to Splines (1978), ch. IV and XVII.
 */

/** Cubic through two values and two slopes on [0, 1]: four coefficients, lowest power first, `stride` apart. */
export function cubicThrough(p0: number, p1: number, d0: number, d1: number, out: Float64Array, o: number, stride: number): void {
  out[o] = p0;
  out[o + stride] = d0;
  out[o + 2 * stride] = 3 * (p1 - p0) - 2 * d0 - d1;
  out[o + 3 * stride] = 2 * (p0 - p1) + d0 + d1;
}

const LINES = new Float64Array(16);

/** Bicubic through four corners (first index along s); coefficient of s^j t^k at o + 4 j + k. `f`: where value, slopes and cross slope start in a node. */
export function bicubicThrough(
  n00: Float64Array,
  n01: Float64Array,
  n10: Float64Array,
  n11: Float64Array,
  f: number,
  out: Float64Array,
  o: number,
): void {
  // along t on both edges, value and slope by s; then along s for each power of t
  cubicThrough(n00[f]!, n01[f]!, n00[f + 2]!, n01[f + 2]!, LINES, 0, 1);
  cubicThrough(n10[f]!, n11[f]!, n10[f + 2]!, n11[f + 2]!, LINES, 4, 1);
  cubicThrough(n00[f + 1]!, n01[f + 1]!, n00[f + 3]!, n01[f + 3]!, LINES, 8, 1);
  cubicThrough(n10[f + 1]!, n11[f + 1]!, n10[f + 3]!, n11[f + 3]!, LINES, 12, 1);
  for (let k = 0; k < 4; k++) cubicThrough(LINES[k]!, LINES[4 + k]!, LINES[8 + k]!, LINES[12 + k]!, out, o + k, 4);
}

/** Value and slopes by s and t of a bicubic on the unit square. */
export function bicubic(c: Float64Array, o: number, s: number, t: number, out: Float64Array): void {
  const r0 = ((c[o + 3]! * t + c[o + 2]!) * t + c[o + 1]!) * t + c[o]!;
  const r1 = ((c[o + 7]! * t + c[o + 6]!) * t + c[o + 5]!) * t + c[o + 4]!;
  const r2 = ((c[o + 11]! * t + c[o + 10]!) * t + c[o + 9]!) * t + c[o + 8]!;
  const r3 = ((c[o + 15]! * t + c[o + 14]!) * t + c[o + 13]!) * t + c[o + 12]!;
  const d0 = (3 * c[o + 3]! * t + 2 * c[o + 2]!) * t + c[o + 1]!;
  const d1 = (3 * c[o + 7]! * t + 2 * c[o + 6]!) * t + c[o + 5]!;
  const d2 = (3 * c[o + 11]! * t + 2 * c[o + 10]!) * t + c[o + 9]!;
  const d3 = (3 * c[o + 15]! * t + 2 * c[o + 14]!) * t + c[o + 13]!;
  out[0] = ((r3 * s + r2) * s + r1) * s + r0;
  out[1] = (3 * r3 * s + 2 * r2) * s + r1;
  out[2] = ((d3 * s + d2) * s + d1) * s + d0;
}
