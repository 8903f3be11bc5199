/** A place or a step in space [m]: x east, y north, z up. */
export interface Point {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export const plus = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z });
export const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
export const times = (a: Point, k: number): Point => ({ x: k * a.x, y: k * a.y, z: k * a.z });
export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const norm = (a: Point): number => Math.hypot(a.x, a.y, a.z);
export const separation = (a: Point, b: Point): number => norm(minus(a, b));
/** The point a fraction of the way from a to b. */
export const between = (a: Point, b: Point, fraction: number): Point => plus(times(a, 1 - fraction), times(b, fraction));

/** Fraction of the way from a to b nearest to p, not beyond either end. */
export function foot(p: Point, a: Point, b: Point): number {
  const along = minus(b, a);
  return Math.min(1, Math.max(0, dot(minus(p, a), along) / dot(along, along)));
}

/**
 * Closest approach of two straight pieces a-b and c-d: the fractions along each, and the distance [m].
 *
 * Source: C. Ericson, Real-Time Collision Detection (2005), sec. 5.1.9.
 */
export function closest(
  a: Point,
  b: Point,
  c: Point,
  d: Point,
): { readonly first: number; readonly second: number; readonly distance: number } {
  const u = minus(b, a);
  const v = minus(d, c);
  const w = minus(a, c);
  const uu = dot(u, u);
  const vv = dot(v, v);
  const uv = dot(u, v);
  const determinant = uu * vv - uv * uv;
  const clamp = (x: number) => Math.min(1, Math.max(0, x));
  let first = determinant > 1e-12 * uu * vv ? clamp((uv * dot(v, w) - vv * dot(u, w)) / determinant) : 0;
  const second = clamp((uv * first + dot(v, w)) / vv);
  first = clamp((uv * second - dot(u, w)) / uu);
  return { first, second, distance: separation(between(a, b, first), between(c, d, second)) };
}
