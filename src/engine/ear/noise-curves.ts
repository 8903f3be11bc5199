/** Octave bands of the noise criterion curves [Hz]. */
export const NC_OCTAVES: readonly number[] = [63, 125, 250, 500, 1000, 2000, 4000, 8000];
/** Octave bands of the noise rating curves [Hz]. */
export const NR_OCTAVES: readonly number[] = [31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000];

/** NC-15 to NC-70 in steps of 5: octave-band levels [dB SPL]. Source: Beranek 1957; ANSI S12.2. */
const NC: readonly (readonly number[])[] = [
  [47, 36, 29, 22, 17, 14, 12, 11],
  [51, 40, 33, 26, 22, 19, 17, 16],
  [54, 44, 37, 31, 27, 24, 22, 21],
  [57, 48, 41, 35, 31, 29, 28, 27],
  [60, 52, 45, 40, 36, 34, 33, 32],
  [64, 56, 50, 45, 41, 39, 38, 37],
  [67, 60, 54, 49, 46, 44, 43, 42],
  [71, 64, 58, 54, 51, 49, 48, 47],
  [74, 67, 62, 58, 56, 54, 53, 52],
  [77, 71, 67, 63, 61, 59, 58, 57],
  [80, 75, 71, 68, 66, 64, 63, 62],
  [83, 79, 75, 72, 71, 70, 69, 68],
];
const NC_FIRST = 15;
const NC_STEP = 5;

/** L = a + b N. Source: ISO R 1996 (1971); AS 1469:1983. */
const NR_A = [55.4, 35.5, 22.0, 12.0, 4.8, 0.0, -3.5, -6.1, -8.0];
const NR_B = [0.681, 0.79, 0.87, 0.93, 0.974, 1.0, 1.015, 1.025, 1.03];

/**
 * Octave-band levels of a noise criterion curve [dB SPL], by NC_OCTAVES.
 *
 * Straight lines between the published curves NC-15 to NC-70; beyond them the nearest pair is carried on in a straight line.
 */
export function noiseCriterionLevels(rating: number): Float64Array {
  const at = (rating - NC_FIRST) / NC_STEP;
  const i = Math.min(Math.max(Math.floor(at), 0), NC.length - 2);
  return Float64Array.from(NC[i]!, (low, k) => low + (at - i) * (NC[i + 1]![k]! - low));
}

/** Octave-band levels of a noise rating curve [dB SPL], by NR_OCTAVES: L = a + b N. */
export const noiseRatingLevels = (rating: number): Float64Array => Float64Array.from(NR_A, (a, k) => a + NR_B[k]! * rating);

/**
 * Band level of a room criterion spectrum [dB SPL]: N at 1 kHz and 5 dB per octave downwards, "neutral" to the ear.
 *
 * Given for the octave bands 31.5 Hz to 4 kHz, carried on with the same slope above. Source: Blazier 1981; ANSI S12.2.
 */
export const roomCriterionLevel = (rating: number, frequency: number): number => rating - 5 * Math.log2(frequency / 1000);

/** Noise criterion rating of a spectrum: the highest curve that any octave touches. Levels [dB SPL] by NC_OCTAVES. */
export function noiseCriterionRating(levels: ArrayLike<number>): number {
  let rating = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < NC_OCTAVES.length; k++) {
    let i = 0;
    while (i < NC.length - 2 && NC[i + 1]![k]! <= levels[k]!) i++;
    const low = NC[i]![k]!;
    rating = Math.max(rating, NC_FIRST + NC_STEP * (i + (levels[k]! - low) / (NC[i + 1]![k]! - low)));
  }
  return rating;
}

/** Noise rating of a spectrum: the highest curve that any octave touches. Levels [dB SPL] by NR_OCTAVES. */
export function noiseRating(levels: ArrayLike<number>): number {
  return Math.max(...NR_A.map((a, k) => (levels[k]! - a) / NR_B[k]!));
}
