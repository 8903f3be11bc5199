/** Levels that stand for "nothing" and "nothing beside it": finite, so that silence never becomes NaN. */
export const FLOOR = -200;
export const CEILING = 200;

/** Power ratio a/b in dB, held to +-200. */
export function powerRatio(a: number, b: number): number {
  if (!(a > 0)) return FLOOR;
  if (!(b > 0)) return CEILING;
  return Math.max(FLOOR, Math.min(CEILING, 10 * Math.log10(a / b)));
}

/** Amplitude ratio a/b in dB, held to +-200. */
export function amplitudeRatio(a: number, b: number): number {
  if (!(a > 0)) return FLOOR;
  if (!(b > 0)) return CEILING;
  return Math.max(FLOOR, Math.min(CEILING, 20 * Math.log10(a / b)));
}
