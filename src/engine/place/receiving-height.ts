import type { Site } from './description.ts';
import { knifeEdgeApproximation } from './knife-edge.ts';

/** Height of what stands around [m]. Source: ITU-R P.1546-6 Annex 5 section 9 (rural and suburban 10, urban 20, dense urban 30). */
export const CLUTTER_HEIGHT: Readonly<Record<Site['surroundings'], number>> = { open: 10, suburban: 10, urban: 20, 'dense-urban': 30 };
/** Lowest aerial the law is carried down to [m]: below it the field of a grazing wave stops falling. An estimate. */
export const LOWEST_AERIAL = 0.3;

/** Height gain of an aerial above the clutter [dB per decade of height]: K_h2 = 3.2 + 6.2 log10 f, f in MHz. */
export const heightGainFactor = (frequency: number): number => 3.2 + 6.2 * Math.log10(frequency / 1e6);

/**
 * Height of the clutter as seen by a ray that comes down from a high mast.
 *
 * R' = (1000 d R - 15 h1)/(1000 d - 15) where h1 >= 6.5 d + R, else R; not below 1 m. d in km.
 */
export function seenClutter(clutter: number, distance: number, height1: number): number {
  if (height1 < 6.5e-3 * distance + clutter) return clutter;
  return Math.max(1, (distance * clutter - 15 * height1) / (distance - 15));
}

/**
 * Correction of the curves for the height of the receiving aerial.
 *
 * Open country: K_h2 log10(h2/10). Among buildings: 6.03 - J(nu) below the clutter, nu = 0.0108 sqrt(f h_dif theta), h_dif = R' - h2,
 * theta = arctan(h_dif/27) in degrees, f in MHz; K_h2 log10(h2/R') above; less K_h2 log10(10/R') where R' is below 10 m.
 *
 * @param height - of the receiving aerial above ground [m]
 * @param clutter - R' [m]
 * @returns [dB]
 * Holds for: aerials 1 m high and more; below, the law is carried down to 0.3 m and held.
 * Source: ITU-R P.1546-6 Annex 5 section 9.
 */
export function receivingHeightCorrection(height: number, surroundings: Site['surroundings'], clutter: number, frequency: number): number {
  const gain = heightGainFactor(frequency);
  const h2 = Math.max(height, LOWEST_AERIAL);
  if (surroundings === 'open') return gain * Math.log10(h2 / clutter);
  const low = clutter < 10 ? gain * Math.log10(10 / clutter) : 0;
  if (h2 >= clutter) return gain * Math.log10(h2 / clutter) - low;
  const below = clutter - h2;
  const theta = (Math.atan(below / 27) * 180) / Math.PI;
  return 6.03 - knifeEdgeApproximation(0.0108 * Math.sqrt((frequency / 1e6) * below * theta)) - low;
}

/**
 * Loss of a short path over evenly built-up ground.
 *
 * -3.3 log10 f (1 - 0.85 log10 d)(1 - 0.46 log10(1 + h_a - R)), d in km, f in MHz
 *
 * @param height - of the transmitting aerial above the ground at the mast [m]
 * @returns [dB], 0 in open country, from 15 km on, and for masts that stand 150 m over the roofs
 * Source: ITU-R P.1546-6 Annex 5 section 10.
 */
export function shortUrbanPath(distance: number, height: number, surroundings: Site['surroundings'], frequency: number): number {
  if (surroundings === 'open' || distance >= 15e3) return 0;
  const over = Math.max(0, height - CLUTTER_HEIGHT[surroundings]);
  const byHeight = Math.max(0, 1 - 0.46 * Math.log10(1 + over));
  return -3.3 * Math.log10(frequency / 1e6) * Math.max(0, 1 - 0.85 * Math.log10(distance / 1e3)) * byHeight;
}
