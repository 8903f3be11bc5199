/** Pilot of the stereo multiplex, nominal share of full deviation; 8 to 10 % are allowed. Source: Rec. ITU-R BS.450-3, sec. 2.2. */
export const PILOT_SHARE = 0.09;
export const PILOT_SHARE_RANGE = { low: 0.08, high: 0.1 } as const;
/** Greatest share of full deviation that sum and difference signal take together in stereo. Source: as above. */
export const STEREO_AUDIO_SHARE = 0.9;
/** Pilot [Hz], suppressed subcarrier [Hz] and highest audio frequency [Hz]. Source: as above. */
export const PILOT_FREQUENCY = 19_000;
export const SUBCARRIER_FREQUENCY = 38_000;
export const AUDIO_LIMIT = 15_000;

/** Peak deviations of the parts of a stereo multiplex [Hz]. */
export interface MultiplexDeviations {
  readonly pilot: number;
  /** the same signal left and right: all of it in the sum */
  readonly sum: number;
  /** one side only: half in the sum, half on the subcarrier */
  readonly oneSideSum: number;
  readonly oneSideDifference: number;
}

/**
 * Peak deviations in a fully modulated stereo multiplex: D [0.9 M + p sin w t + 0.9 S sin 2 w t], M = (A + B)/2, S = (A - B)/2.
 *
 * @param deviation - D, full peak deviation [Hz]
 * @param pilotShare - p, 0.08 to 0.1
 * Source: Rec. ITU-R BS.450-3, sec. 2; 47 CFR 73.322.
 */
export function multiplexDeviations(deviation: number, pilotShare: number = PILOT_SHARE): MultiplexDeviations {
  const sum = STEREO_AUDIO_SHARE * deviation;
  return { pilot: pilotShare * deviation, sum, oneSideSum: sum / 2, oneSideDifference: sum / 2 };
}

/**
 * Bandwidth that holds nearly all of an FM signal [Hz]: 2 (D + fm).
 *
 * @param deviation - peak [Hz]
 * @param top - highest modulating frequency [Hz]: 15 kHz in mono, 53 kHz in stereo
 * Source: J. R. Carson, Proc. IRE 10 (1922) 57.
 */
export const carsonBandwidth = (deviation: number, top: number): number => 2 * (deviation + top);
