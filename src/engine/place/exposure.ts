/** From this share of the reference level on the caution is shown: a field ratio of 0.3 is a tenth of the power. */
export const CAUTION_FROM = 0.3;

/**
 * Reference level of the electric field for the general public.
 *
 * 0.1 to 30 MHz 300/f^0.7 (heating), and not above 83 V/m up to 10 MHz (nerves); 30 to 400 MHz 27.7; 400 to 2000 MHz 1.375 sqrt f. f in MHz.
 *
 * @returns [V/m rms], whole body
 * Source: ICNIRP, Health Physics 118 (2020) 483, table 5 (from memory); 83 V/m: ICNIRP, Health Physics 99 (2010) 818, table 4.
 */
export function publicReferenceLevel(frequency: number): number {
  const f = frequency / 1e6;
  if (f < 10) return Math.min(83, 300 / f ** 0.7);
  if (f < 30) return 300 / f ** 0.7;
  if (f <= 400) return 27.7;
  return 1.375 * Math.sqrt(f);
}

export const REFERENCE_LEVEL_SOURCE =
  'ICNIRP 2020 table 5, general public, whole body (from memory); below 10 MHz also ICNIRP 2010 table 4';
