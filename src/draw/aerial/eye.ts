import type { SpacePoint } from '#engine';
import type { Vector } from '../plane/vector.ts';

/** A point as it is seen: on the paper, and how far behind the middle it lies, in the same measure. */
export interface Seen extends Vector {
  readonly depth: number;
}

export interface Eye {
  see(p: SpacePoint): Seen;
}

/**
 * Parallel projection along a bearing and downwards by an angle [rad].
 *
 * @param middle - the point in the middle of the paper
 * @param scale - of the paper over the world [mm/m]
 */
export function eyeAt(
  middle: SpacePoint,
  scale: number,
  { azimuth, elevation }: { readonly azimuth: number; readonly elevation: number },
): Eye {
  const [sa, ca] = [Math.sin(azimuth), Math.cos(azimuth)];
  const [se, ce] = [Math.sin(elevation), Math.cos(elevation)];
  return {
    see(p) {
      const [x, y, z] = [p.x - middle.x, p.y - middle.y, p.z - middle.z];
      const ahead = x * sa + y * ca;
      return { x: scale * (x * ca - y * sa), y: -scale * (ahead * se + z * ce), depth: scale * (ahead * ce - z * se) };
    },
  };
}
