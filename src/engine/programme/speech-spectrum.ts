/** One-third-octave bands of the long-term average speech spectrum [Hz]. */
export const SPEECH_BANDS: readonly number[] = [
  63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000, 10000, 12500, 16000,
];

/**
 * International long-term average speech spectrum, men and women of twelve languages, 70 dB overall [dB SPL], by SPEECH_BANDS.
 *
 * Source: D. Byrne et al., J. Acoust. Soc. Am. 96 (1994) 2108.
 */
export const SPEECH_LEVELS: readonly number[] = [
  38.6, 43.5, 54.4, 57.7, 56.8, 60.2, 60.3, 59.0, 62.1, 62.1, 60.5, 56.8, 53.7, 53.0, 52.0, 48.7, 48.1, 46.8, 45.6, 44.5, 44.3, 43.7, 43.4,
  41.3, 40.7,
];

/** Peak over rms of speech that has not been compressed [dB]: common practice, no source; SII counts on 15 dB for its short-term peaks. */
export const SPEECH_CREST = 12;
