import { BOLTZMANN, NOISE_REFERENCE_TEMPERATURE } from '../constants.ts';
import { BANDS } from '../ear/index.ts';
import { C } from '../numeric/index.ts';
import type { AudioHalf } from './audio-half.ts';
import type { RestPoint } from './levels.ts';

/** Width of a one-third-octave band over its centre frequency. */
const THIRD_OCTAVE = 2 ** (1 / 6) - 2 ** (-1 / 6);

/** What makes noise at the detector. */
export interface NoiseSources {
  /** resistance of the detector's port, the law taken off [ohm] */
  readonly portResistance: number;
  /** resistance of the aerial that receives noise from outside [ohm] */
  readonly radiationResistance: number;
  /** external noise figure [dB above k T0 b] */
  readonly noiseFigure: number;
  /** voltage at the detector's port for one volt of e.m.f. */
  readonly gain: number;
  /** change of detector current for a change of its drive [S] */
  readonly byDrive: number;
  /** of everything in the set [K] */
  readonly temperature: number;
}

/**
 * Noise at the earpiece in each band of speech [V rms].
 *
 * Audio: thermal noise of the detector's output conductance and of the load's, taken as standing side by side at the output. Radio: the port of
 * the detector has the noise of its resistance, tank and aerial together (Nyquist), and what the radiation resistance receives is at the
 * temperature of the sky and not of the set: 4 k [T R_port + (T0 10^(Fa/10) - T) R_r |G|^2]. The part in phase with the carrier
 * moves the detector's drive; its baseband density is twice the radio one. The part in quadrature, which only shakes the phase, is left out.
 *
 * Source: H. Nyquist, Phys. Rev. 32 (1928) 110; Rec. ITU-R P.372 for Fa; W. R. Bennett, Electrical Noise (1960) for noise beside a carrier (from memory).
 */
export function bandNoise(audio: AudioHalf, rest: RestPoint, s: NoiseSources): Float64Array {
  const sky = NOISE_REFERENCE_TEMPERATURE * 10 ** (s.noiseFigure / 10);
  const port = Math.max(0, s.temperature * s.portResistance + (sky - s.temperature) * s.radiationResistance * s.gain ** 2);
  const radio = s.byDrive ** 2 * 2 * 4 * BOLTZMANN * port;
  return Float64Array.from(audio.bands, (point, b) => {
    const g = rest.outputConductance;
    const thermal = 4 * BOLTZMANN * s.temperature * (g + Math.max(0, C.inv(point.load).re));
    const divider = C.add({ re: 1, im: 0 }, C.scale(point.load, g));
    return Math.sqrt((thermal + radio) * BANDS[b]! * THIRD_OCTAVE) * (C.abs(point.transfer) / C.abs(divider));
  });
}
