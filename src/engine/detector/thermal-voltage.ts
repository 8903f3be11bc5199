import { BOLTZMANN, ELEMENTARY_CHARGE } from '../constants.ts';

/**
 * Thermal voltage.
 *
 * Vt = k T / q
 *
 * @param temperature - [K]
 * @returns [V]; 25.852 mV at 300 K
 */
export function thermalVoltage(temperature: number): number {
  return (BOLTZMANN * temperature) / ELEMENTARY_CHARGE;
}
