import type { TerrainProfile } from './description.ts';
import { EFFECTIVE_EARTH_RADIUS } from './earth.ts';

/**
 * A profile as the wave meets it: straight rays over an earth of effective radius, its bulge put onto the heights.
 *
 * h + d (D - d)/(2 a_e)
 *
 * Source: ITU-R P.526, sec. 4.5 (heights over the chord).
 */
export function overBulge({ distance, height }: TerrainProfile): TerrainProfile {
  const whole = distance.at(-1) ?? 0;
  return { distance, height: height.map((h, i) => h + (distance[i]! * (whole - distance[i]!)) / (2 * EFFECTIVE_EARTH_RADIUS)) };
}
