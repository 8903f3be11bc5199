/** Uniform noise, -1/2 to 1/2, the same as in tests/reference/measure/make.py. Source: S. K. Park, K. W. Miller, CACM 31 (1988) 1192, with 48271. */
export function noise(seed: number, count: number): Float64Array {
  let x = seed;
  return Float64Array.from({ length: count }, () => {
    x = (48271 * x) % 2147483647;
    return x / 2147483647 - 0.5;
  });
}

export const RATE = 48_000;
/** A sound as a function of time [s]. */
export const sampled = (seconds: number, f: (t: number) => number): Float64Array =>
  Float64Array.from({ length: Math.round(seconds * RATE) }, (_, n) => f(n / RATE));
export const decibels = (a: number, b: number): number => 20 * Math.log10(a / b);
