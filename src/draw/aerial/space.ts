import type { SpacePoint } from '#engine';

export const minus = (a: SpacePoint, b: SpacePoint): SpacePoint => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
export const dot = (a: SpacePoint, b: SpacePoint): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const norm = (a: SpacePoint): number => Math.hypot(a.x, a.y, a.z);
export const half = (a: SpacePoint, b: SpacePoint): SpacePoint => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, z: (a.z + b.z) / 2 });
export const along = (a: SpacePoint, direction: SpacePoint, k: number): SpacePoint => ({
  x: a.x + k * direction.x,
  y: a.y + k * direction.y,
  z: a.z + k * direction.z,
});
export const cross = (a: SpacePoint, b: SpacePoint): SpacePoint => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});

/** Unit vector from a to b. */
export function unitStep(a: SpacePoint, b: SpacePoint): SpacePoint {
  const step = minus(b, a);
  const length = norm(step);
  return { x: step.x / length, y: step.y / length, z: step.z / length };
}
