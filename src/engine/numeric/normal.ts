import { erfc } from './faddeeva.ts';

/** Probability that a standard normal variable is at most x: erfc(-x / sqrt 2) / 2. */
export function normalCumulative(x: number): number {
  return erfc(-x / Math.SQRT2) / 2;
}

/**
 * The value a standard normal variable stays below with probability p.
 *
 * Start from Abramowitz & Stegun 26.2.23 (within 4.5e-4), then two of Halley's steps on the cumulative function.
 *
 * @param p - between 0 and 1, both excluded
 */
export function normalQuantile(p: number): number {
  if (p > 0.5) return -normalQuantile(1 - p);
  const t = Math.sqrt(-2 * Math.log(p));
  let x = -(t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))));
  for (let step = 0; step < 2; step++) {
    const error = (normalCumulative(x) - p) * Math.sqrt(2 * Math.PI) * Math.exp((x * x) / 2);
    x -= error / (1 + (x * error) / 2);
  }
  return x;
}
