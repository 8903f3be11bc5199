import type { FindAnswer, FrontSet } from '#jobs';

/** A set in the picture of what can be had. */
export interface FrontDot extends FrontSet {
  /** its place in the list of the best; null where it is not in it */
  readonly rank: number | null;
}

/** The sets of the front and those of the list, from the quietest to the loudest; those that have no place in a picture left out. */
export function frontDots({ front, sets }: FindAnswer): readonly FrontDot[] {
  const rankOf = new Map(sets.map((s, k) => [s.key, k + 1]));
  const beside = sets.filter((s) => !front.some((p) => p.key === s.key));
  return [...front, ...beside]
    .filter((p) => Number.isFinite(p.headroom) && Number.isFinite(p.distortion) && p.hertzPerDegree > 0)
    .map(({ key, design, station, headroom, distortion, hertzPerDegree }) => ({
      key,
      design,
      station,
      headroom,
      distortion,
      hertzPerDegree,
      rank: rankOf.get(key) ?? null,
    }))
    .sort((a, b) => a.headroom - b.headroom);
}
