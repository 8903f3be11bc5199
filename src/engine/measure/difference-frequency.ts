import { findTones, rmsOf } from './tones.ts';

/** Difference-frequency distortion of two tones, the lower f1, the upper f2. */
export interface DifferenceFrequency {
  /** [Hz] */
  readonly lower: number;
  readonly upper: number;
  /** f2 - f1, 2 f1 - f2 and 2 f2 - f1 [V rms] */
  readonly products: readonly [number, number, number];
  /** twice f2 [V rms] */
  readonly reference: number;
  /** of second and third order [1] */
  readonly second: number;
  readonly third: number;
}

/**
 * Difference-frequency distortion: d2 = V(f2 - f1)/V_ref, d3 = (V(2 f1 - f2) + V(2 f2 - f1))/V_ref, V_ref = 2 V(f2).
 *
 * Through a weak polynomial y = x + a x^2 + b x^3 and two tones of peak A each, d2 = a A/2 and d3 = 3 b A^2/4.
 *
 * @param lower, upper - f1 < f2 < 2 f1 [Hz], sent equally strong
 * Source: IEC 60268-3, difference-frequency distortion; its reference of twice f2 is also told in makers' manuals of audio test sets, the sum of both
 *   products of third order from memory.
 */
export function differenceFrequency(x: Float64Array, rate: number, lower: number, upper: number): DifferenceFrequency {
  const { tones } = findTones(x, rate, [lower, upper, upper - lower, 2 * lower - upper, 2 * upper - lower]);
  const rms = tones.map(rmsOf);
  const products = [rms[2]!, rms[3]!, rms[4]!] as const;
  const reference = 2 * rms[1]!;
  const over = (v: number): number => (reference > 0 ? v / reference : 0);
  return { lower, upper, products, reference, second: over(products[0]), third: over(products[1] + products[2]) };
}
