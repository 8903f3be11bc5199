import { findTones, rmsOf } from './tones.ts';

/** A tone with its harmonics. */
export interface ToneWithHarmonics {
  /** [Hz] */
  readonly frequency: number;
  /** rms by harmonic [V]; index 1 the fundamental, index 0 the mean */
  readonly rms: Float64Array;
  /** total harmonic distortion: rms of the harmonics over the fundamental [1] */
  readonly thd: number;
  /** the highest harmonic counted [Hz] */
  readonly top: number;
}

/**
 * Fundamental, harmonics and total harmonic distortion of a tone: sqrt(sum of V_n^2, n from 2)/V_1.
 *
 * @param x - samples [V], best over whole periods
 * @param top - harmonics up to this are counted [Hz]
 * Source: ATIS Telecom Glossary, "total harmonic distortion": harmonics over the fundamental, as IEC 61000-2-2 has it. IEC 60268-3 puts them over the whole output
 *   (from memory): d/sqrt(1 + d^2), which is 0.29 where this is 0.3.
 */
export function toneWithHarmonics(x: Float64Array, rate: number, frequency: number, top: number): ToneWithHarmonics {
  const count = Math.max(1, Math.floor(top / frequency));
  const orders = Array.from({ length: count }, (_, k) => k + 1);
  const { mean, tones } = findTones(
    x,
    rate,
    orders.map((n) => n * frequency),
  );
  const rms = Float64Array.from([mean, ...tones.map(rmsOf)]);
  let harmonics = 0;
  for (let n = 2; n <= count; n++) harmonics += rms[n]! ** 2;
  return { frequency, rms, thd: rms[1]! > 0 ? Math.sqrt(harmonics) / rms[1]! : 0, top: count * frequency };
}
