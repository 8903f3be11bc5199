import { fourierTransform } from './fft.ts';

/**
 * Impulse response of the filter with a given magnitude that answers soonest.
 *
 * The logarithm of its response is analytic, so its cepstrum has no part before zero: c = F^-1 ln |H|, folded onto the side after zero,
 * h = F^-1 exp(F c).
 *
 * @param logMagnitude - ln |H| at k/N of the rate, k = 0 to N/2, N a power of two; finite
 * @returns N samples; what of the cepstrum is longer than N/2 folds over, so N must be well beyond what counts of h
 * Source: A. V. Oppenheim, R. W. Schafer, Discrete-Time Signal Processing, 3rd ed. (2010), secs. 13.3, 13.5.
 */
export function minimumPhase(logMagnitude: Float64Array): Float64Array {
  const half = logMagnitude.length - 1;
  const size = 2 * half;
  const transform = fourierTransform(size);
  const re = new Float64Array(size);
  const im = new Float64Array(size);
  re.set(logMagnitude);
  for (let k = 1; k < half; k++) re[size - k] = re[k]!;
  transform.inverse(re, im);
  for (let n = 1; n < half; n++) re[n] = 2 * re[n]!;
  re.fill(0, half + 1);
  im.fill(0);
  transform.forward(re, im);
  for (let k = 0; k < size; k++) {
    const magnitude = Math.exp(re[k]!);
    const phase = im[k]!;
    re[k] = magnitude * Math.cos(phase);
    im[k] = magnitude * Math.sin(phase);
  }
  transform.inverse(re, im);
  return re;
}
