import { PILOT_SHARE } from './multiplex.ts';

/** Peak deviation of the sine whose power is the limit, for a system of full deviation 75 kHz [Hz]. */
const REFERENCE_PEAK = 19_000;
const REFERENCE_SYSTEM = 75_000;

/**
 * Rms deviation of the whole multiplex at a multiplex power [Hz]: 0 dBr is the power of a sine of 19 kHz peak deviation, averaged over any 60 s.
 *
 * @param power - [dBr]
 * @param deviation - full deviation of the system [Hz]; the limit is scaled with it where it is not 75 kHz (an assumption: the text knows only 75 kHz)
 * Source: Rec. ITU-R BS.412-9, sec. 2.3, note.
 */
export const multiplexRmsDeviation = (power: number, deviation = REFERENCE_SYSTEM): number =>
  ((REFERENCE_PEAK * deviation) / REFERENCE_SYSTEM / Math.SQRT2) * 10 ** (power / 20);

/** Multiplex power of an rms deviation [dBr], the inverse of the above. */
export const multiplexPower = (rmsDeviation: number, deviation = REFERENCE_SYSTEM): number =>
  20 * Math.log10(rmsDeviation / multiplexRmsDeviation(0, deviation));

/**
 * Rms deviation left for programme when the multiplex is at the limit [Hz]: in stereo the pilot's power is taken off.
 *
 * sqrt(limit^2 - pilot^2/2), pilot 9 % of full deviation: 12.56 kHz of 13.44 kHz.
 */
export function programmeRmsAtLimit(deviation: number, stereo: boolean): number {
  const limit = multiplexRmsDeviation(0, deviation);
  const pilot = stereo ? PILOT_SHARE * deviation : 0;
  return Math.sqrt(limit * limit - (pilot * pilot) / 2);
}
