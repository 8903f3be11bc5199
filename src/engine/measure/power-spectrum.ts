import { GivenError } from '../given-error.ts';
import { fourierTransform } from '../numeric/index.ts';

/** Power by bins of equal width. */
export interface PowerSpectrum {
  /** middle of bin k is k times this [Hz] */
  readonly binWidth: number;
  /** mean square by bin [V^2], one-sided: their sum is the mean square of the sound */
  readonly power: Float64Array;
  /** equivalent noise bandwidth of the window [bins]: a tone's power is spread over bins, its highest shows 1/this of it */
  readonly noiseBandwidth: number;
  /** stretches averaged */
  readonly stretches: number;
}

/** Equivalent noise bandwidth of Hann's window [bins]. Source: F. J. Harris, Proc. IEEE 66 (1978) 51, table 1. */
export const HANN_NOISE_BANDWIDTH = 1.5;
/**
 * How many independent stretches a stretch counts for where each overlaps the next by half, under Hann's window: 1/(1 + 2 r^2), r = 1/6 the
 * correlation of windows half a stretch apart. Source: P. D. Welch, IEEE Trans. Audio Electroacoust. 15 (1967) 70.
 */
export const HALF_OVERLAP = 1 / (1 + 2 / 36);

/**
 * Power spectrum by averaging stretches under Hann's window that overlap by half, the mean of the whole taken off first.
 *
 * @param size - of a stretch, samples; its bins are rate/size wide
 * @throws GivenError if the sound is shorter than a stretch
 * Source: P. D. Welch, IEEE Trans. Audio Electroacoust. 15 (1967) 70.
 */
export function powerSpectrum(x: Float64Array, rate: number, size: number): PowerSpectrum {
  const power = new Float64Array((size >> 1) + 1);
  const stretches = eachStretch([x], size, (re, im) => {
    for (let k = 0; k < power.length; k++) power[k] = power[k]! + (re[0]![k]! ** 2 + im[0]![k]! ** 2) * binShare(k, size);
  });
  for (let k = 0; k < power.length; k++) power[k] = power[k]! / stretches;
  return { binWidth: rate / size, power, noiseBandwidth: HANN_NOISE_BANDWIDTH, stretches };
}

/** What makes |X_k|^2 of a windowed stretch the mean square in the bin: both halves of the spectrum, the power of Hann's window 3/8. */
export const binShare = (k: number, size: number): number => (k === 0 || 2 * k === size ? 1 : 2) / (size * size * (3 / 8));

/**
 * Transforms of all stretches of sounds of equal length, their means taken off, under Hann's window, overlapping by half.
 *
 * @param visit - is given real and imaginary parts by sound
 * @returns number of stretches
 */
export function eachStretch(
  sounds: readonly Float64Array[],
  size: number,
  visit: (re: readonly Float64Array[], im: readonly Float64Array[]) => void,
): number {
  const { length } = sounds[0]!;
  if (length < size)
    throw new GivenError(
      'measure.samples',
      `${length} samples`,
      `one stretch of the spectrum has ${size}`,
      'Measure longer, or with wider bins.',
    );
  const transform = fourierTransform(size);
  const window = Float64Array.from({ length: size }, (_, n) => 0.5 - 0.5 * Math.cos((2 * Math.PI * n) / size));
  const means = sounds.map((x) => x.reduce((s, v) => s + v, 0) / length);
  const re = sounds.map(() => new Float64Array(size));
  const im = sounds.map(() => new Float64Array(size));
  const step = size >> 1;
  let stretches = 0;
  for (let start = 0; start + size <= length; start += step, stretches++) {
    sounds.forEach((x, s) => {
      for (let n = 0; n < size; n++) re[s]![n] = window[n]! * (x[start + n]! - means[s]!);
      im[s]!.fill(0);
      transform.forward(re[s]!, im[s]!);
    });
    visit(re, im);
  }
  return stretches;
}

/** Share of bin k (of width 1, about k) that lies between two edges, in bins. */
export function shareOfBin(k: number, low: number, high: number): number {
  return Math.max(0, Math.min(k + 0.5, high) - Math.max(k - 0.5, low));
}

/** Mean square between two edges [Hz]: bins are counted by the share of them that lies within [V^2]. */
export function bandPower({ power, binWidth }: Pick<PowerSpectrum, 'power' | 'binWidth'>, low: number, high: number): number {
  const from = Math.max(0, Math.floor(low / binWidth));
  const to = Math.min(power.length - 1, Math.ceil(high / binWidth));
  let sum = 0;
  for (let k = from; k <= to; k++) sum += power[k]! * shareOfBin(k, low / binWidth, high / binWidth);
  return sum;
}
