import { linear } from '../numeric/index.ts';
import type { Earpiece } from './description.ts';

type Coupler = Earpiece['coupler'];

const THIRD_OCTAVES = [
  125, 160, 200, 250, 315, 400, 500, 630, 750, 800, 1000, 1250, 1500, 1600, 2000, 2500, 3000, 3150, 4000, 5000, 6000, 6300, 8000,
];

/** Reference equivalent threshold sound pressure levels [dB SPL], with where each table is from. */
const TABLES: Readonly<
  Record<Coupler, { readonly frequency: readonly number[]; readonly level: readonly number[]; readonly source: string }>
> = {
  'IEC 60318-1': {
    frequency: THIRD_OCTAVES,
    level: [
      45.0, 38.5, 32.5, 27.0, 22.0, 17.0, 13.5, 10.5, 9.0, 8.5, 7.5, 7.5, 7.5, 8.0, 9.0, 10.5, 11.5, 11.5, 12.0, 11.0, 16.0, 21.0, 15.5,
    ],
    source: 'ANSI S3.6-2010, supra-aural earphones on the IEC 60318-1 ear simulator (same thresholds as ISO 389-1)',
  },
  'IEC 60318-4': {
    frequency: THIRD_OCTAVES,
    level: [
      28.0, 24.5, 21.5, 17.5, 15.5, 13.0, 9.5, 7.5, 6.0, 5.5, 5.5, 8.5, 9.5, 9.5, 11.5, 13.5, 13.0, 13.0, 15.0, 18.5, 16.0, 16.0, 15.5,
    ],
    source: 'ISO 389-2, insert earphones on the IEC 60318-4 occluded-ear simulator',
  },
  '6 cc': {
    frequency: [125, 250, 500, 750, 1000, 1500, 2000, 3000, 4000, 6000, 8000],
    level: [45.0, 25.5, 11.5, 8.0, 7.0, 6.5, 9.0, 10.0, 9.5, 15.5, 13.0],
    source: 'ISO 389-1:1998, supra-aural audiometric earphone on the IEC 60318-3 (6 cm3) coupler',
  },
};

const LOGS = new Map<Coupler, Float64Array>(
  (Object.keys(TABLES) as Coupler[]).map((c) => [c, Float64Array.from(TABLES[c].frequency, Math.log)]),
);

/**
 * Reference equivalent threshold of one normal ear, as the coupler reads it [dB SPL].
 *
 * Straight lines in dB against log f between the frequencies of the table; the end values are held outside 125 Hz to 8 kHz.
 * Holds for the kind of earphone the table was measured with: another on the same coupler differs by a few dB (ISO 389-8 exists for that reason).
 */
export function couplerThreshold(coupler: Coupler, frequency: number): number {
  return linear(LOGS.get(coupler)!, TABLES[coupler].level, Math.log(frequency));
}

/** Where the thresholds on a coupler are from. */
export const couplerThresholdSource = (coupler: Coupler): string => TABLES[coupler].source;
