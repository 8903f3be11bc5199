import { amplitudeRatio, C } from '../numeric/index.ts';
import { findTones } from './tones.ts';

/** Frequency response at one tone. */
export interface ResponsePoint {
  /** the tone that was sent [Hz], and the third octave it stands for */
  readonly frequency: number;
  readonly nominal: number;
  /** earpiece voltage by the transmitter's audio, pre-emphasis included, over the same at 1 kHz [dB] */
  readonly voltage: number;
  /** sound pressure on the coupler, likewise [dB] */
  readonly sound: number;
}

/** A tone as it was sent and found. */
export interface ResponseTone {
  readonly frequency: number;
  readonly nominal: number;
  /** of the audio ahead of pre-emphasis [1] */
  readonly amplitude: number;
}

/**
 * Response from the audio of a transmitter to the earpiece, each tone over the one that stands for 1 kHz.
 *
 * @param x - whole seconds of sound [V], so that every tone is a line of its own
 * @param sensitivity - of the earpiece [dB SPL for 1 V] by frequency
 */
export function responseOf(
  x: Float64Array,
  rate: number,
  tones: readonly ResponseTone[],
  sensitivity: (frequency: number) => number,
): readonly ResponsePoint[] {
  const found = findTones(
    x,
    rate,
    tones.map((t) => t.frequency),
  ).tones;
  const level = tones.map((t, k) => amplitudeRatio(C.abs(found[k]!), t.amplitude));
  const middle = tones.findIndex((t) => t.nominal === 1000);
  const at = sensitivity(tones[middle]!.frequency);
  return tones.map(({ frequency, nominal }, k) => ({
    frequency,
    nominal,
    voltage: level[k]! - level[middle]!,
    sound: level[k]! - level[middle]! + sensitivity(frequency) - at,
  }));
}

/**
 * Lowest and highest frequency between which a response stays above a limit, going out from 1 kHz, straight lines against log f between the tones [Hz].
 *
 * An end of the tones sent is an end of the range.
 */
export function rangeAbove(
  points: readonly { readonly frequency: number; readonly nominal: number; readonly sound: number }[],
  limit: number,
): { readonly low: number; readonly high: number } {
  const middle = points.findIndex((p) => p.nominal === 1000);
  const edge = (step: 1 | -1): number => {
    let k = middle;
    while (points[k + step] && points[k + step]!.sound >= limit) k += step;
    const [inside, beyond] = [points[k]!, points[k + step]];
    if (!beyond) return inside.frequency;
    const t = (inside.sound - limit) / (inside.sound - beyond.sound);
    return inside.frequency * (beyond.frequency / inside.frequency) ** t;
  };
  return { low: edge(-1), high: edge(1) };
}
