/** Centre frequencies of the one-third-octave bands of ANSI S3.5-1997 [Hz], nominal: the bands in which speech is counted from programme to ear. */
export const BANDS: readonly number[] = [
  160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000,
];

/** One-third-octave bands in which noise at the ear is made [Hz], nominal: those of speech and what is heard on either side. */
export const SOUND_BANDS: readonly number[] = [50, 63, 80, 100, 125, ...BANDS, 10_000, 12_500, 16_000];

/** A one-third-octave band, exact to its edges. */
export interface ThirdOctave {
  /** as it is called [Hz] */
  readonly nominal: number;
  /** exact [Hz] */
  readonly middle: number;
  readonly low: number;
  readonly high: number;
}

/**
 * The band of a nominal frequency: middle 10^(n/10), edges a twentieth of a decade either side.
 *
 * Source: IEC 61260-1:2014, 5.2 to 5.5: octave ratio G = 10^(3/10), mid-band 1000 G^(x/3), edges by G^(1/6).
 */
export function thirdOctave(nominal: number): ThirdOctave {
  const n = Math.round(10 * Math.log10(nominal));
  return { nominal, middle: 10 ** (n / 10), low: 10 ** ((n - 0.5) / 10), high: 10 ** ((n + 0.5) / 10) };
}

/** Level of a one-third-octave band over its spectrum level [dB]: 10 log10 of its width in Hz. */
export function bandwidthLevel(nominal: number): number {
  const { low, high } = thirdOctave(nominal);
  return 10 * Math.log10(high - low);
}
