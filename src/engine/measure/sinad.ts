import { powerRatio } from '../numeric/index.ts';
import { bandPower, powerSpectrum } from './power-spectrum.ts';
import { findTones, rmsOf } from './tones.ts';

/** What stands beside a test tone. */
export interface Sinad {
  /** (signal + noise + distortion) over (noise + distortion) [dB], 0 or more */
  readonly ratio: number;
  /** the tone [V rms] */
  readonly signal: number;
  /** all that is not the tone, within the band [V rms] */
  readonly rest: number;
}

/** Samples in a stretch of the spectrum that sums what is left: bins of 5.9 Hz at 48 kHz. */
const SIZE = 8192;

/**
 * SINAD of a tone: the tone is fitted and taken off, and what is left is summed over the band.
 *
 * @param low, high - edges of the band [Hz]
 * Source: FED-STD-1037C, "SINAD", sense 2: recovered audio, tone and noise and distortion, over the residue once the tone is removed.
 */
export function sinad(x: Float64Array, rate: number, frequency: number, low: number, high: number): Sinad {
  const { tones, rest } = findTones(x, rate, [frequency]);
  const signal = rmsOf(tones[0]!);
  const unwanted = bandPower(powerSpectrum(rest, rate, SIZE), low, high);
  return { ratio: signal > 0 ? powerRatio(signal ** 2 + unwanted, unwanted) : 0, signal, rest: Math.sqrt(unwanted) };
}
