/** Pole frequencies [Hz] and normalisation at 1 kHz [dB] of IEC 61672-1:2013 Annex E, E.4. */
const F1 = 20.598997;
const F2 = 107.65265;
const F3 = 737.86223;
const F4 = 12194.217;
const NORMAL = 2.0;

/**
 * A-weighting [dB], 0 at 1 kHz.
 *
 * A(f) = 20 log10[f4^2 f^4/((f^2+f1^2) sqrt((f^2+f2^2)(f^2+f3^2)) (f^2+f4^2))] + 2.000
 *
 * @param frequency - [Hz], above zero
 * Source: IEC 61672-1:2013, Annex E, equation (E.6).
 */
export function aWeighting(frequency: number): number {
  const f2 = frequency * frequency;
  const r = (F4 * F4 * f2 * f2) / ((f2 + F1 * F1) * Math.sqrt((f2 + F2 * F2) * (f2 + F3 * F3)) * (f2 + F4 * F4));
  return 20 * Math.log10(r) + NORMAL;
}

/** A-weighted level of a spectrum of bands [dB(A)]: 10 log10 sum 10^((L + A)/10), weighting taken at the band centres. */
export function aWeightedLevel(frequency: ArrayLike<number>, level: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < frequency.length; i++) sum += 10 ** ((level[i]! + aWeighting(frequency[i]!)) / 10);
  return 10 * Math.log10(sum);
}
