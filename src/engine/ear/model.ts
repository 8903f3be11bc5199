import type { Figure } from '../figure.ts';

/** Centre frequencies of the one-third-octave bands of ANSI S3.5 [Hz]: the bands in which everything after the phones is counted. */
export const BANDS: readonly number[] = [
  160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000,
];

/** What reaches the ear, band by band; arrays follow BANDS. Levels are those the coupler reads. */
export interface SoundAtEar {
  /** band level of the speech-shaped programme [dB SPL]; -Infinity never appears: use -200 for nothing */
  readonly programme: Float64Array;
  /** band level of unwanted sound made by the set itself: distortion, other stations, noise [dB SPL] */
  readonly disturbance: Float64Array;
  /** room noise taken off by the earpiece [dB], positive */
  readonly attenuation: Float64Array;
  /** reference threshold of a normal ear for pure tones on this coupler [dB SPL] */
  readonly threshold: Float64Array;
  readonly ears: 1 | 2;
}

/** What the ear makes of it. */
export interface Hearing {
  /** speech intelligibility index, 0 to 1 */
  readonly sii: number;
  /** best headroom of any band over hearing threshold [dB], and over what masks it (room noise, the set's own disturbance) */
  readonly overThreshold: number;
  readonly overNoise: number;
  /** per band: level over the larger of threshold and masking [dB] */
  readonly headroom: Float64Array;
  /** overall level of the programme [dB SPL] and A-weighted [dB(A)] */
  readonly level: number;
  readonly levelA: number;
  /** loudness level of a 1 kHz-equivalent [phon]: see the model's docstring; null below threshold */
  readonly loudnessLevel: number | null;
  /** room noise at the ear under the earpiece [dB SPL] per band */
  readonly roomNoise: Float64Array;
  figures(): readonly Figure[];
}
