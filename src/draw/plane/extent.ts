import type { Vector } from './vector.ts';

/** An upright rectangle on the paper [mm]. */
export interface Extent {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The least rectangle round some points; null where there are none. */
export function extentOf(points: readonly Vector[]): Extent | null {
  if (points.length === 0) return null;
  let [left, top, right, bottom] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const p of points) {
    left = Math.min(left, p.x);
    right = Math.max(right, p.x);
    top = Math.min(top, p.y);
    bottom = Math.max(bottom, p.y);
  }
  return { left, top, right, bottom };
}

export const corners = (e: Extent): readonly Vector[] => [
  { x: e.left, y: e.top },
  { x: e.right, y: e.top },
  { x: e.right, y: e.bottom },
  { x: e.left, y: e.bottom },
];
