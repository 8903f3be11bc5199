import { normalQuantile } from '../numeric/index.ts';
import type { Site } from './description.ts';

type Building = NonNullable<Site['building']>;

/** r, s, t, u, v, w, x, y, z. Source: ITU-R P.2109-2 Annex 1 table 1. */
const COEFFICIENTS: Readonly<Record<Building['kind'], readonly [number, number, number, number, number, number, number, number, number]>> =
  {
    traditional: [12.64, 3.72, 0.96, 9.6, 2.0, 9.1, -3.0, 4.5, -2.0],
    'thermally-efficient': [28.19, -3.0, 8.48, 13.5, 3.8, 27.8, -2.9, 9.4, -2.1],
  };
/** Lowest frequency of the Recommendation [Hz]. */
export const ENTRY_LOSS_FROM = 80e6;

/**
 * Loss into a building, not exceeded in a given share of rooms.
 *
 * L = 10 log10(10^0.1A + 10^0.1B + 10^0.1C), A = z_P sigma1 + mu1, B = z_P sigma2 + mu2, C = -3,
 * mu1 = r + s lg f + t lg^2 f + 0.212 |theta|, mu2 = w + x lg f, sigma1 = u + v lg f, sigma2 = y + z lg f, f in GHz, theta in degrees.
 *
 * @param deviate - standard normal deviate z_P of the share of rooms
 * @param elevation - of the arriving wave [rad]
 * @returns [dB]
 * Holds for: 80 MHz to 100 GHz; below, the value at 80 MHz is used, an estimate. Surveys below 200 MHz are few.
 * Source: ITU-R P.2109-2 Annex 1 section 3.
 */
export function entryLossAt(kind: Building['kind'], deviate: number, frequency: number, elevation: number): number {
  const [r, s, t, u, v, w, x, y, z] = COEFFICIENTS[kind];
  const lg = Math.log10(Math.max(frequency, ENTRY_LOSS_FROM) / 1e9);
  const a = deviate * (u + v * lg) + r + s * lg + t * lg * lg + (0.212 * Math.abs(elevation) * 180) / Math.PI;
  const b = deviate * (y + z * lg) + w + x * lg;
  return 10 * Math.log10(10 ** (a / 10) + 10 ** (b / 10) + 10 ** -0.3);
}

export interface EntryLoss {
  /** at the given share of rooms [dB] */
  readonly loss: number;
  /** half the span between the 15.9 and 84.1 % rooms [dB]: the standard deviation of a normal law with the same span */
  readonly spread: number;
  /** standard normal deviate of the share */
  readonly deviate: number;
}

/** Loss into the site's building, and how much it varies from room to room. */
export function buildingEntryLoss(building: Building, frequency: number, elevation: number): EntryLoss {
  const deviate = building.probability === 0.5 ? 0 : normalQuantile(building.probability);
  const high = entryLossAt(building.kind, 1, frequency, elevation);
  const low = entryLossAt(building.kind, -1, frequency, elevation);
  return { loss: entryLossAt(building.kind, deviate, frequency, elevation), spread: (high - low) / 2, deviate };
}
