import { linear } from '../numeric/index.ts';

/** ISO 389-7:2019 Table 1, free field, frontal, both ears [Hz, dB SPL]. */
const FREE_FREQUENCY = [
  20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 750, 800, 1000, 1250, 1500, 1600, 2000, 2500, 3000, 3150, 4000,
  5000, 6000, 6300, 8000, 9000, 10000, 11200, 12500, 14000, 16000, 18000,
];
const FREE_LEVEL = [
  78.1, 68.7, 59.5, 51.1, 44.0, 37.5, 31.5, 26.5, 22.1, 17.9, 14.4, 11.4, 8.6, 6.2, 4.4, 3.0, 2.4, 2.2, 2.4, 3.5, 2.4, 1.7, -1.3, -4.2,
  -5.8, -6.0, -5.4, -1.5, 4.3, 6.0, 12.6, 13.9, 13.9, 13.0, 12.3, 18.4, 40.2, 70.4,
];
/** The same table, diffuse field, at the frequencies of audiometry. */
const DIFFUSE_FREQUENCY = [125, 250, 500, 750, 1000, 1500, 2000, 3000, 4000, 6000, 8000];
const DIFFUSE_LEVEL = [22.1, 11.4, 3.8, 1.2, 0.8, 1.0, -1.5, -4.0, -3.8, 1.4, 6.8];

const FREE_LOG = FREE_FREQUENCY.map(Math.log);
const DIFFUSE_LOG = DIFFUSE_FREQUENCY.map(Math.log);

/**
 * Reference threshold of hearing for pure tones, both ears, frontal free field [dB SPL].
 *
 * Straight lines in dB against log f between the frequencies of the table; ends held outside 20 Hz to 18 kHz.
 * Source: ISO 389-7:2019 Table 1.
 */
export const freeFieldThreshold = (frequency: number): number => linear(FREE_LOG, FREE_LEVEL, Math.log(frequency));

/**
 * Reference threshold of hearing, both ears, diffuse field [dB SPL]: sound from all sides, as a room's noise is.
 *
 * Source: ISO 389-7 Table 1 at the frequencies of audiometry; ends held outside 125 Hz to 8 kHz.
 */
export const diffuseFieldThreshold = (frequency: number): number => linear(DIFFUSE_LOG, DIFFUSE_LEVEL, Math.log(frequency));
