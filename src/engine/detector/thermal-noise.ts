import { BOLTZMANN } from '../constants.ts';

/**
 * Thermal noise voltage density of a resistance.
 *
 * e = sqrt(4 k T R)
 *
 * @param resistance - [ohm]
 * @param temperature - [K]
 * @returns [V rms/sqrt(Hz)]
 * Source: H. Nyquist, Phys. Rev. 32 (1928) 110.
 */
export function thermalNoiseVoltageDensity(resistance: number, temperature: number): number {
  return Math.sqrt(4 * BOLTZMANN * temperature * resistance);
}

/**
 * Noise power any resistance can hand over.
 *
 * P = k T B
 *
 * @param temperature - [K]
 * @param bandwidth - [Hz]
 * @returns [W]
 * Source: as above.
 */
export function availableThermalNoisePower(temperature: number, bandwidth: number): number {
  return BOLTZMANN * temperature * bandwidth;
}

/**
 * Noise-equivalent power of a square-law detector without bias: the radio power whose open-circuit output equals the thermal noise in 1 Hz.
 *
 * NEP = sqrt(4 k T R) / (beta R); for an exponential junction 4 sqrt(k T n Vt Is)
 *
 * @param currentSensitivity - beta, at zero bias [A/W]
 * @param resistance - R, at zero bias [ohm]
 * @param temperature - [K]
 * @returns [W/sqrt(Hz)], a lower bound: no amplifier, no loss in capacitance or match
 * Holds for: zero bias, where a passive body has thermal noise only.
 * Source: A. M. Cowley, H. O. Sorensen, IEEE Trans. MTT-14 (1966) 588, with Nyquist's noise.
 */
export function noiseEquivalentPower(currentSensitivity: number, resistance: number, temperature: number): number {
  return thermalNoiseVoltageDensity(resistance, temperature) / (Math.abs(currentSensitivity) * resistance);
}

/**
 * Tangential sensitivity: radio power at which the output stands a given ratio above its noise.
 *
 * P = NEP sqrt(B) 10^(s/20), as output voltage goes with radio power
 *
 * @param nep - noise-equivalent power [W/sqrt(Hz)]
 * @param bandwidth - of the output [Hz]
 * @param ratio - s [dB], 8 by custom
 * @returns [W]
 */
export function tangentialSensitivity(nep: number, bandwidth: number, ratio = 8): number {
  return nep * Math.sqrt(bandwidth) * 10 ** (ratio / 20);
}
