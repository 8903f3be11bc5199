import { aWeighting } from '../ear/index.ts';
import { powerRatio } from '../numeric/index.ts';
import { coherentSplit, partOf } from './coherence.ts';
import { bandPower, type PowerSpectrum, powerSpectrum } from './power-spectrum.ts';
import { SPEECH_THIRDS } from './third-octaves.ts';
import { weighted } from './weighting.ts';

/** What comes through of other stations while the wanted one sends a bare carrier, over its own programme with no other on the air. */
export interface Leakage {
  /** all of it over the wanted programme, earpiece voltages in the bands of speech, unweighted [dB] */
  readonly unweighted: number;
  /** the same as sound pressure, A-weighted [dB] */
  readonly weighted: number;
  /** by neighbour: what follows its programme linearly, over the wanted programme, unweighted [dB] */
  readonly neighbours: readonly { readonly name: string; readonly level: number }[];
  /** what follows no neighbour's programme linearly: whistles, beats, what two make together, and what the slope distorts of each [dB] */
  readonly whistles: number;
}

const LOW = SPEECH_THIRDS[0]!.low;
const HIGH = SPEECH_THIRDS.at(-1)!.high;

/** Power in the bands of speech [V^2]. */
export const speechBandPower = (spectrum: PowerSpectrum): number => Math.max(0, bandPower(spectrum, LOW, HIGH));

/**
 * Leakage from the sound of one run.
 *
 * @param sound - earpiece voltage, the wanted carrier bare, the others modulated, no noise [V]
 * @param programmes - of each neighbour, in step with the sound; see `linearShape`
 * @param wanted - spectrum of the wanted programme's coherent part, the station alone [V^2]
 * @param sensitivity - of the earpiece [dB SPL for 1 V] by frequency
 * @param size - of a stretch, samples
 */
export function leakage(
  sound: Float64Array,
  rate: number,
  programmes: readonly { readonly name: string; readonly shape: Float64Array }[],
  wanted: PowerSpectrum,
  sensitivity: (frequency: number) => number,
  size: number,
): Leakage {
  const all = powerSpectrum(sound, rate, size);
  const own = speechBandPower(wanted);
  const heard = (s: PowerSpectrum): number => speechBandPower(weighted(s, (f) => sensitivity(f) + aWeighting(f)));
  const shares = programmes.map(({ name, shape }) => ({
    name,
    power: speechBandPower(partOf(coherentSplit(sound, shape, rate, size), 'coherent')),
  }));
  const followed = shares.reduce((s, p) => s + p.power, 0);
  return {
    unweighted: powerRatio(speechBandPower(all), own),
    weighted: powerRatio(heard(all), heard(wanted)),
    neighbours: shares.map(({ name, power }) => ({ name, level: powerRatio(power, own) })),
    whistles: powerRatio(Math.max(0, speechBandPower(all) - followed), own),
  };
}
