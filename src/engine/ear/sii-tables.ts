/**
 * ANSI S3.5-1997 (R2017) Table 3, one-third-octave band procedure, by BANDS.
 */

/** Band importance function I of average speech; adds to 1. */
export const SII_IMPORTANCE: readonly number[] = [
  0.0083, 0.0095, 0.015, 0.0289, 0.044, 0.0578, 0.0653, 0.0711, 0.0818, 0.0844, 0.0882, 0.0898, 0.0868, 0.0844, 0.0771, 0.0527, 0.0364,
  0.0185,
];

export type VocalEffort = 'normal' | 'raised' | 'loud' | 'shout';

/** Standard speech spectrum level U at 1 m [dB SPL/Hz]. */
export const SII_SPEECH: Readonly<Record<VocalEffort, readonly number[]>> = {
  normal: [32.41, 34.48, 34.75, 33.98, 34.59, 34.27, 32.06, 28.3, 25.01, 23.0, 20.15, 17.32, 13.18, 11.55, 9.33, 5.31, 2.59, 1.13],
  raised: [33.81, 33.92, 38.98, 38.57, 39.11, 40.15, 38.78, 36.37, 33.86, 31.89, 28.58, 25.32, 22.35, 20.15, 16.78, 11.47, 7.67, 5.07],
  loud: [35.29, 37.76, 41.55, 43.78, 43.3, 44.85, 45.55, 44.05, 42.16, 40.53, 37.7, 34.39, 30.98, 28.21, 25.41, 18.35, 13.87, 11.39],
  shout: [30.77, 36.65, 42.5, 46.51, 47.4, 49.24, 51.21, 51.44, 51.31, 49.63, 47.65, 44.32, 40.8, 38.13, 34.41, 28.24, 23.45, 20.72],
};

/** Reference internal noise spectrum level X [dB SPL/Hz]. */
export const SII_INTERNAL_NOISE: readonly number[] = [
  0.6, -1.7, -3.9, -6.1, -8.2, -9.7, -10.8, -11.9, -12.5, -13.5, -15.4, -17.7, -21.2, -24.2, -25.9, -23.6, -15.8, -7.1,
];

/** Band level over spectrum level, 10 log10 of the bandwidth in Hz [dB]. */
export const SII_BANDWIDTH: readonly number[] = [
  15.65, 16.65, 17.65, 18.65, 19.65, 20.65, 21.65, 22.65, 23.65, 24.65, 25.65, 26.65, 27.65, 28.65, 29.65, 30.65, 31.65, 32.65,
];
