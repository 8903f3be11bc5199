import type { Vector } from './vector.ts';

/** A rectangle turned by `angle` [rad], clockwise on the paper. */
export interface Box {
  readonly centre: Vector;
  readonly halfWidth: number;
  readonly halfHeight: number;
  readonly angle: number;
}

export function boxCorners(b: Box): readonly Vector[] {
  const [c, s] = [Math.cos(b.angle), Math.sin(b.angle)];
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([i, j]) => {
    const [u, v] = [i! * b.halfWidth, j! * b.halfHeight];
    return { x: b.centre.x + u * c - v * s, y: b.centre.y + u * s + v * c };
  });
}

export const grown = (b: Box, by: number): Box => ({ ...b, halfWidth: b.halfWidth + by, halfHeight: b.halfHeight + by });

/** Whether two boxes overlap: no line parallel to a side of either parts them. */
export function boxesOverlap(a: Box, b: Box): boolean {
  const [ca, cb] = [boxCorners(a), boxCorners(b)];
  for (const angle of [a.angle, a.angle + Math.PI / 2, b.angle, b.angle + Math.PI / 2]) {
    const [x, y] = [Math.cos(angle), Math.sin(angle)];
    const [pa, pb] = [ca, cb].map((points) => points.map((p) => p.x * x + p.y * y));
    if (Math.max(...pa!) <= Math.min(...pb!) || Math.max(...pb!) <= Math.min(...pa!)) return false;
  }
  return true;
}

/** Part of a straight piece that lies in an upright rectangle, as fractions along it; null where none does. Source: Liang and Barsky, ACM TOG 3 (1984) 1. */
export function clip(
  from: Vector,
  to: Vector,
  within: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number },
): readonly [number, number] | null {
  let [first, last] = [0, 1];
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  for (const [p, q] of [
    [-dx, from.x - within.left],
    [dx, within.right - from.x],
    [-dy, from.y - within.top],
    [dy, within.bottom - from.y],
  ] as const) {
    if (p === 0) {
      if (q < 0) return null;
    } else if (p < 0) first = Math.max(first, q / p);
    else last = Math.min(last, q / p);
  }
  return first <= last ? [first, last] : null;
}

/** Whether a straight piece runs through a box. */
export function lineMeetsBox(from: Vector, to: Vector, b: Box): boolean {
  const [c, s] = [Math.cos(b.angle), Math.sin(b.angle)];
  const local = (p: Vector): Vector => {
    const [x, y] = [p.x - b.centre.x, p.y - b.centre.y];
    return { x: x * c + y * s, y: -x * s + y * c };
  };
  return clip(local(from), local(to), { left: -b.halfWidth, right: b.halfWidth, top: -b.halfHeight, bottom: b.halfHeight }) !== null;
}
