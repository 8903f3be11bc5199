import { thermalVoltage } from './thermal-voltage.ts';

/** What moves a junction's saturation current with temperature. */
export interface SaturationScaling {
  readonly saturationCurrent: number;
  readonly ideality: number;
  readonly energyGap?: number;
  readonly temperatureExponent?: number;
  readonly nominalTemperature: number;
}

/**
 * Saturation current at another temperature.
 *
 * Is(T) = Is(T0) (T/T0)^(X/n) exp((Eg/n) (q/(k T0) - q/(k T)))
 *
 * With X = 2 and Eg the barrier this is thermionic emission over a metal-semiconductor barrier; with X = 3 and Eg the band gap, diffusion
 * in a p-n junction. Both barrier and exponent stand over the ideality n, as data sheets that give all three mean them.
 *
 * @param temperature - [K]
 * @returns [A]; as given where no barrier is given
 * Holds for: some 200 to 400 K, one mechanism of conduction.
 * Source: S. M. Sze, Physics of Semiconductor Devices (2nd ed. 1981), ch. 2 and ch. 5 (from memory).
 */
export function saturationCurrentAt(junction: SaturationScaling, temperature: number): number {
  const { saturationCurrent, ideality, energyGap, temperatureExponent = 0, nominalTemperature } = junction;
  if (energyGap === undefined) return saturationCurrent;
  const power = (temperatureExponent / ideality) * Math.log(temperature / nominalTemperature);
  const barrier = (energyGap / ideality) * (1 / thermalVoltage(nominalTemperature) - 1 / thermalVoltage(temperature));
  return saturationCurrent * Math.exp(power + barrier);
}
