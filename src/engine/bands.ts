/** Centre frequencies of the one-third-octave bands of ANSI S3.5-1997 [Hz], nominal: the bands in which speech is counted from programme to ear. */
export const BANDS: readonly number[] = [
  160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000,
];
