import { GivenError } from '../given-error.ts';
import { C, type Complex, solveReal } from '../numeric/index.ts';

/** Sines found in a stretch of sound. */
export interface TonesFound {
  /** mean of the stretch beside the sines [V] */
  readonly mean: number;
  /** by tone: A e^(j p) of A cos(2 pi f t + p), t = 0 at the first sample; magnitude is the peak [V] */
  readonly tones: readonly Complex[];
  /** what is left of the sound when mean and sines are taken off [V] */
  readonly rest: Float64Array;
}

/**
 * Sines of known frequencies in a stretch of sound, by least squares: x(t) = m + sum of a cos(2 pi f t) + b sin(2 pi f t) + rest.
 *
 * Over whole periods of all tones this is the discrete Fourier transform at their frequencies; over other lengths it is still exact for the sines
 * themselves, where the transform would leak.
 *
 * @param x - samples [V], more than twice the tones
 * @param rate - [Hz]
 * @param frequencies - [Hz], different from each other, above 0 and below half the rate
 * @throws GivenError if the tones cannot be told apart in so short a stretch
 * Source: least squares by normal equations, textbook; IEEE Std 1057, sine fit of known frequency (from memory).
 */
export function findTones(x: Float64Array, rate: number, frequencies: readonly number[]): TonesFound {
  const n = 2 * frequencies.length + 1;
  const columns = Array.from({ length: n }, (_, k) => column(k, x.length, rate, frequencies));
  const matrix = new Float64Array(n * n);
  const answer = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    answer[i] = dot(columns[i]!, x);
    for (let j = 0; j <= i; j++) {
      const d = dot(columns[i]!, columns[j]!);
      matrix[i * n + j] = d;
      matrix[j * n + i] = d;
    }
  }
  if (!(x.length > n) || !solveReal(n, matrix, answer) || !answer.every(Number.isFinite))
    throw new GivenError(
      'measure.frequencies',
      frequencies.map((f) => `${f} Hz`).join(', '),
      `${x.length} samples at ${rate} Hz do not tell them apart`,
      'Take a longer stretch, and tones that differ, below half the rate.',
    );
  const rest = x.slice();
  for (let k = 0; k < n; k++) {
    const c = columns[k]!;
    for (let i = 0; i < rest.length; i++) rest[i] = rest[i]! - answer[k]! * c[i]!;
  }
  return {
    mean: answer[0]!,
    tones: frequencies.map((_, k) => ({ re: answer[2 * k + 1]!, im: -answer[2 * k + 2]! })),
    rest,
  };
}

/** Rms of a tone found [V]. */
export const rmsOf = (tone: Complex): number => C.abs(tone) * Math.SQRT1_2;

/** Constant, then cosine and sine of each frequency. */
function column(k: number, length: number, rate: number, frequencies: readonly number[]): Float64Array {
  if (k === 0) return new Float64Array(length).fill(1);
  const f = frequencies[(k - 1) >> 1]!;
  const part = k % 2 === 1 ? Math.cos : Math.sin;
  // whole turns are taken off first, so that the angle stays small and exact
  return Float64Array.from({ length }, (_, i) => part(2 * Math.PI * (((i * f) % rate) / rate)));
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
