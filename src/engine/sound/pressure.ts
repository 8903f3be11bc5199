import { REFERENCE_SOUND_PRESSURE } from '../constants.ts';

/** Rms pressure [Pa] of a level [dB SPL]. */
export const pressureOf = (level: number): number => REFERENCE_SOUND_PRESSURE * 10 ** (level / 20);
