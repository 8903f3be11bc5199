import { MU0 } from '../constants.ts';

/** How the current fills the wire: evenly (low frequency), or in its surface, evenly around (no flux inside the metal). */
export type CurrentInWire = 'uniform' | 'surface';

/**
 * Inductance of one circular turn of round wire.
 *
 * uniform: L = mu0 R [(1 + a^2 / 8 R^2) ln(8 R / a) + a^2 / 24 R^2 - 7/4];  surface: L = mu0 R [ln(8 R / a) - 2]
 *
 * @param radius - R, to the middle of the wire [m]
 * @param wireRadius - a [m]
 * @returns [H]
 * Holds for: a well below R. The surface form leaves out terms in (a/R)^2 (1.7 % at a/R = 1/8): see current-crowding.ts for those.
 * Source: Rayleigh & Niven, Proc. R. Soc. 32 (1881) 104; Grover, Inductance Calculations (1946) ch. 16.
 */
export function ringInductance(radius: number, wireRadius: number, current: CurrentInWire): number {
  const log = Math.log((8 * radius) / wireRadius);
  if (current === 'surface') return MU0 * radius * (log - 2);
  const ratio = (wireRadius / radius) ** 2;
  return MU0 * radius * ((1 + ratio / 8) * log + ratio / 24 - 7 / 4);
}
