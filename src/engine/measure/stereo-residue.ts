import { amplitudeRatio, C } from '../numeric/index.ts';
import type { PhonesModel } from '../phones/index.ts';
import { PILOT_FREQUENCY, PILOT_SHARE, STEREO_AUDIO_SHARE, SUBCARRIER_FREQUENCY } from '../programme/index.ts';
import { findTones, rmsOf } from './tones.ts';

/** What a set that knows nothing of stereo makes of a stereo station, over the test tone at rated swing [dB], as earpiece voltages. */
export interface StereoResidue {
  /** the pilot, 19 kHz */
  readonly pilot: number;
  /** a tone at full swing with opposite sides, about 38 kHz: beyond the sound's 24 kHz, so by the audio network from the pilot */
  readonly subcarrier: number;
  /** what the same tone leaves below 15 kHz, where mono should have nothing */
  readonly difference: number;
}

/** Pilot in the sound of a bare carrier [V rms]. */
export const pilotVoltage = (x: Float64Array, rate: number): number => rmsOf(findTones(x, rate, [PILOT_FREQUENCY]).tones[0]!);

/**
 * Sidebands of the difference signal over the pilot, both at the earpiece [dB]: ratio of their rms swings, and of what the audio network passes.
 *
 * The difference at full swing is 0.9 D S sin(2 w t), rms 0.45 D for a sine; the pilot 0.09 D/sqrt 2. Z T/(1 + g Z): earpiece volts per ampere at the
 * detector's output conductance g. Left out: that the tank answers 38 kHz a little less than 19 kHz.
 */
export function subcarrierOverPilot({ load, transfer }: Pick<PhonesModel, 'load' | 'transfer'>, conductance: number): number {
  const gain = (f: number): number => {
    const z = load(f);
    return C.abs(C.mul(z, transfer(f))) / C.abs(C.add(C.ONE, C.scale(z, conductance)));
  };
  const swings = STEREO_AUDIO_SHARE / 2 / (PILOT_SHARE * Math.SQRT1_2);
  return amplitudeRatio(swings * gain(SUBCARRIER_FREQUENCY), gain(PILOT_FREQUENCY));
}
