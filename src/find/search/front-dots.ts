import { keyOf } from './design.ts';
import type { FrontPoint } from './front.ts';

/** A set in the picture of what can be had. */
export interface FrontDot extends FrontPoint {
  /** the same for the same set */
  readonly key: string;
  /** its place in the list of the best, 1 for the first; null where it is not in it */
  readonly rank: number | null;
}

/**
 * The sets of a front and those of a list, from the quietest to the loudest; those that have no place in a picture left out.
 *
 * @param listed - the best first
 */
export function frontDots(front: readonly FrontPoint[], listed: readonly FrontPoint[]): readonly FrontDot[] {
  const rankOf = new Map(listed.map((p, k) => [keyOf(p.design), k + 1]));
  const own = new Set(front.map((p) => keyOf(p.design)));
  return [...front, ...listed.filter((p) => !own.has(keyOf(p.design)))]
    .filter((p) => Number.isFinite(p.headroom) && Number.isFinite(p.distortion) && p.hertzPerDegree > 0)
    .map(({ design, station, headroom, distortion, hertzPerDegree }) => {
      const key = keyOf(design);
      return { key, design, station, headroom, distortion, hertzPerDegree, rank: rankOf.get(key) ?? null };
    })
    .sort((a, b) => a.headroom - b.headroom);
}
