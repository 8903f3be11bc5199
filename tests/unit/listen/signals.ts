import type { EnvelopeSource } from '#engine';

/** Test signals and their reading, made apart from the engine's programme. */

/** Frequency-modulated by one tone: exp(j (deviation/tone) sin(2 pi tone t)). */
export function fmTone(rate: number, tone: number, deviation: number, phase = 0): EnvelopeSource {
  let n = 0;
  return {
    rate,
    next(re, im) {
      for (let k = 0; k < re.length; k++, n++) {
        const p = (deviation / tone) * Math.sin(2 * Math.PI * ((n * tone) / rate - Math.floor((n * tone) / rate)) + phase);
        re[k] = Math.cos(p);
        im[k] = Math.sin(p);
      }
    },
  };
}

/** Amplitude-modulated by one tone. */
export function amTone(rate: number, tone: number, depth: number): EnvelopeSource {
  let n = 0;
  return {
    rate,
    next(re, im) {
      for (let k = 0; k < re.length; k++, n++)
        re[k] = 1 + depth * Math.cos(2 * Math.PI * ((n * tone) / rate - Math.floor((n * tone) / rate)));
      im.fill(0);
    },
  };
}

/** A bare carrier. */
export const carrier = (rate: number): EnvelopeSource => ({
  rate,
  next(re, im) {
    re.fill(1);
    im.fill(0);
  },
});

/**
 * Mean and amplitudes [peak] of a tone and its harmonics in a stretch of sound, by least squares: exact whether or not whole periods fit in.
 *
 * @param others - more frequencies that are present [Hz]
 */
export function harmonics(x: Float64Array, rate: number, tone: number, count: number, others: readonly number[] = []): number[] {
  const frequencies = [...Array.from({ length: count }, (_, k) => (k + 1) * tone), ...others];
  const size = 1 + 2 * frequencies.length;
  const normal = new Float64Array(size * size);
  const right = new Float64Array(size);
  const basis = new Float64Array(size);
  for (let n = 0; n < x.length; n++) {
    basis[0] = 1;
    frequencies.forEach((f, k) => {
      const turns = (n * f) / rate;
      const angle = 2 * Math.PI * (turns - Math.floor(turns));
      basis[1 + 2 * k] = Math.cos(angle);
      basis[2 + 2 * k] = Math.sin(angle);
    });
    for (let i = 0; i < size; i++) {
      right[i] = right[i]! + basis[i]! * x[n]!;
      for (let k = 0; k <= i; k++) normal[i * size + k] = normal[i * size + k]! + basis[i]! * basis[k]!;
    }
  }
  // Cholesky
  for (let i = 0; i < size; i++)
    for (let k = 0; k <= i; k++) {
      let s = normal[i * size + k]!;
      for (let m = 0; m < k; m++) s -= normal[i * size + m]! * normal[k * size + m]!;
      normal[i * size + k] = i === k ? Math.sqrt(s) : s / normal[k * size + k]!;
    }
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) right[i] = right[i]! - normal[i * size + k]! * right[k]!;
    right[i] = right[i]! / normal[i * size + i]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) right[i] = right[i]! - normal[k * size + i]! * right[k]!;
    right[i] = right[i]! / normal[i * size + i]!;
  }
  return [right[0]!, ...frequencies.map((_, k) => Math.hypot(right[1 + 2 * k]!, right[2 + 2 * k]!))];
}

export const decibels = (a: number, b: number): number => 20 * Math.log10(a / b);
