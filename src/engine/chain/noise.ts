import { BOLTZMANN, NOISE_REFERENCE_TEMPERATURE } from '../constants.ts';
import { BANDS } from '../ear/index.ts';
import { C } from '../numeric/index.ts';
import type { AudioHalf } from './audio-half.ts';
import type { RestPoint } from './levels.ts';

/** Width of a one-third-octave band over its centre frequency. */
const THIRD_OCTAVE = 2 ** (1 / 6) - 2 ** (-1 / 6);

/** What makes noise at the detector. */
export interface NoiseSources {
  /** resistance of the aerial that receives noise from outside, and that which only has its own temperature [ohm] */
  readonly radiationResistance: number;
  readonly lossResistance: number;
  /** external noise figure [dB above k T0 b] */
  readonly noiseFigure: number;
  /** voltage at the detector's port for one volt of e.m.f. */
  readonly gain: number;
  /** change of detector current for a change of its drive [S] */
  readonly byDrive: number;
  /** [K] */
  readonly temperature: number;
}

/**
 * Noise at the earpiece in each band of speech [V rms].
 *
 * Audio: thermal noise of the detector's output conductance and of the load's, taken as standing side by side at the output. Radio: noise in
 * phase with the carrier moves the detector's drive; its baseband density is twice the radio one. The part in quadrature,
 * which only shakes the phase, is left out.
 */
export function bandNoise(audio: AudioHalf, rest: RestPoint, s: NoiseSources): Float64Array {
  const emf2 =
    4 * BOLTZMANN * (NOISE_REFERENCE_TEMPERATURE * 10 ** (s.noiseFigure / 10) * s.radiationResistance + s.temperature * s.lossResistance);
  const radio = s.byDrive ** 2 * 2 * emf2 * s.gain ** 2;
  return Float64Array.from(audio.bands, (point, b) => {
    const g = rest.outputConductance;
    const thermal = 4 * BOLTZMANN * s.temperature * (g + Math.max(0, C.inv(point.load).re));
    const divider = C.add({ re: 1, im: 0 }, C.scale(point.load, g));
    return Math.sqrt((thermal + radio) * BANDS[b]! * THIRD_OCTAVE) * (C.abs(point.transfer) / C.abs(divider));
  });
}
