import { ETA0, SPEED_OF_LIGHT } from '../constants.ts';

/**
 * Radiation resistance of a coil small against the wave.
 *
 * R_r = eta0 k^4 A^2 / (6 pi),  k = 2 pi f / c,  A = sum over turns of area
 *
 * @param area - A [m^2]
 * @param frequency - [Hz]
 * @returns [ohm], in series with the coil
 * Holds for: wire of the coil below about a tenth of a wavelength.
 * Source: Balanis, Antenna Theory, eq. 5-24; Kraus, Antennas, ch. 6.
 */
export function smallLoopRadiationResistance(area: number, frequency: number): number {
  const k = (2 * Math.PI * frequency) / SPEED_OF_LIGHT;
  return (ETA0 * (k * k * area) ** 2) / (6 * Math.PI);
}
