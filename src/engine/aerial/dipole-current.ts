import { feedRatio } from './induced-emf.ts';
import { sinc } from './sinusoidal-current.ts';

/**
 * Effective length of a centre-fed dipole of sinusoidal current, along its axis as seen across the line of sight.
 *
 * F = 2 [cos(k h cos p) - cos k h] / (k sin k h sin^2 p), with h half the length and p the angle between the axis and the wave; the vector
 * effective length is F times the axis projected across the line of sight. Written as a product of two sinc, so that p = 0 needs no care.
 *
 * @param length - tip to tip [m]
 * @param cosine - cos p
 * @returns [m]; broadside (2/k) tan(k l/4): l/2 when short, lambda/pi for a half wave
 * Source: Balanis, Antenna Theory, 3rd ed., eq. 4-62a, sec. 2.15.
 */
export function dipoleEffectiveLength(length: number, wavelength: number, cosine: number): number {
  const k = (2 * Math.PI) / wavelength;
  const h = length / 2;
  return ((k * h * h) / feedRatio(k * h)) * sinc((k * h * (1 + cosine)) / 2) * sinc((k * h * (1 - cosine)) / 2);
}

/**
 * Resistance of the metal of a centre-fed dipole, at its feed: R' (l/2) [1 - sinc(k l)] / sin^2(k l/2).
 *
 * @param perMetre - [ohm/m]
 * @returns [ohm]; a third of R' l when short, half of it for a half wave
 * Source: integral of the squared sinusoid; Balanis, Antenna Theory, 3rd ed., eq. 2-90b.
 */
export function dipoleMetalResistance(length: number, perMetre: number, wavelength: number): number {
  const x = (2 * Math.PI * length) / wavelength;
  // 1 - sinc x by its series when short, where the difference would lose its digits
  const share = x < 0.01 ? ((x * x) / 6) * (1 - (x * x) / 20) : 1 - sinc(x);
  return (perMetre * (length / 2) * share) / feedRatio(x / 2) ** 2;
}
