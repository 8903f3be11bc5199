import { BANDS } from '../bands.ts';

/** One-third-octave bands in which noise at the ear is made [Hz], nominal: those of speech and what is heard on either side. */
export const SOUND_BANDS: readonly number[] = [50, 63, 80, 100, 125, ...BANDS, 10_000, 12_500, 16_000];

/** Half a band, as a ratio of frequencies. Source: IEC 61260-1:2014, base ten. */
export const HALF_BAND = 10 ** (1 / 20);

/** Exact middle of a band [Hz], 10^(n/10). Source: IEC 61260-1:2014, base ten. */
export const exactMiddle = (nominal: number): number => 10 ** (Math.round(10 * Math.log10(nominal)) / 10);

/** Level of a one-third-octave band over its spectrum level [dB]: 10 log10 of its width in Hz. */
export const bandwidthLevel = (nominal: number): number => 10 * Math.log10(exactMiddle(nominal) * (HALF_BAND - 1 / HALF_BAND));
