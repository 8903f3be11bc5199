/** A mean and how far it may be from the true one by the luck of the sample, one standard deviation. */
export interface Estimate {
  readonly value: number;
  /** null while there is too little to tell */
  readonly error: number | null;
}

/**
 * Mean of values that were drawn in several independent rounds side by side, each as even as a digital shift leaves it; the rounds' means tell the error.
 *
 * @param values - value k belongs to round k mod `rounds`
 */
export function estimate(values: readonly number[], rounds: number): Estimate {
  const whole = Math.floor(values.length / rounds) * rounds;
  if (whole === 0) return { value: mean(values), error: null };
  const means = Array.from({ length: rounds }, (_, r) => mean(values.slice(0, whole).filter((__, k) => k % rounds === r)));
  const all = mean(means);
  const square = means.reduce((sum, m) => sum + (m - all) ** 2, 0) / (rounds - 1);
  return { value: mean(values), error: Math.sqrt(square / rounds) };
}

export const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);

/** Standard deviation; 0 for fewer than two. */
export function deviation(values: readonly number[]): number {
  if (values.length < 2) return 0;
  const m = mean(values);
  return Math.sqrt(values.reduce((sum, v) => sum + (v - m) ** 2, 0) / (values.length - 1));
}

/** The value that a share of all stay below; null of none. */
export function quantile(values: readonly number[], share: number): number | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const at = share * (sorted.length - 1);
  const k = Math.floor(at);
  return sorted[k]! + (at - k) * ((sorted[k + 1] ?? sorted[k]!) - sorted[k]!);
}
