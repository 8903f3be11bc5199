/** Mean radius of the earth [m], IUGG. */
export const EARTH_RADIUS = 6_371_000;
/** Radius that straightens rays bent by the median atmosphere (k about 4/3) [m]. Source: ITU-R P.526-15 section 3, median conditions. */
export const EFFECTIVE_EARTH_RADIUS = 8_500_000;

/** Distance at which two heights just see each other over a smooth earth [m]. Source: ITU-R P.526-15 eq. 21. */
export function horizonDistance(height1: number, height2: number, radius = EFFECTIVE_EARTH_RADIUS): number {
  return Math.sqrt(2 * radius * height1) + Math.sqrt(2 * radius * height2);
}
