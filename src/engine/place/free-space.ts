import { ETA0 } from '../constants.ts';

/** Directivity of a thin half-wave dipole: what effective radiated power is measured against. Source: Balanis, Antenna Theory, eq. 4-91. */
export const DIPOLE_DIRECTIVITY = 1.640_922_376_984_585;
/** Directivity of a short vertical monopole on perfect ground: what e.m.r.p. is measured against. */
export const MONOPOLE_DIRECTIVITY = 3;
/** Up to here the power of a station is e.m.r.p., from here on e.r.p. [Hz] */
export const MONOPOLE_POWER_BELOW = 30e6;

/**
 * Field of a source of given directivity in free space, in its main beam.
 *
 * E = sqrt(eta0 D P / 4 pi) / d (the handbooks' sqrt(30 D P)/d, with the exact wave impedance).
 *
 * @param power - radiated power [W]
 * @param directivity - over an isotropic source
 * @param distance - along the ray [m]
 * @returns [V/m rms]
 * Source: ITU-R P.525-4 eq. 1.
 */
export function freeSpaceField(power: number, directivity: number, distance: number): number {
  return Math.sqrt((ETA0 * directivity * power) / (4 * Math.PI)) / distance;
}

/** Directivity that a station's power is reckoned against at this frequency. */
export function referenceDirectivity(frequency: number): number {
  return frequency < MONOPOLE_POWER_BELOW ? MONOPOLE_DIRECTIVITY : DIPOLE_DIRECTIVITY;
}

/** Field strength level [dB re 1 uV/m] of a field [V/m rms]. */
export function fieldLevel(field: number): number {
  return 20 * Math.log10(field * 1e6);
}

/** Field [V/m rms] of a field strength level [dB re 1 uV/m]. */
export function fieldOfLevel(level: number): number {
  return 1e-6 * 10 ** (level / 20);
}
