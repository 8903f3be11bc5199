/** Rms sound pressure of 0 dB SPL [Pa]. Source: IEC 61672-1:2013, 3.2; ISO 1683. */
export const REFERENCE_PRESSURE = 20e-6;

/** Rms pressure [Pa] of a level [dB SPL]. */
export const pressureOf = (level: number): number => REFERENCE_PRESSURE * 10 ** (level / 20);
