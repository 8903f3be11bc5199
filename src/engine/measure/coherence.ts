import { bandPower, binShare, eachStretch, HALF_OVERLAP, HANN_NOISE_BANDWIDTH, type PowerSpectrum } from './power-spectrum.ts';

/** A sound split by what it owes to a programme. */
export interface CoherentSplit {
  readonly binWidth: number;
  /** by bin [V^2]: all of the sound, the part that follows the programme linearly, and the rest */
  readonly whole: Float64Array;
  readonly coherent: Float64Array;
  readonly rest: Float64Array;
  /** independent stretches that the split rests on */
  readonly independent: number;
}

/**
 * Splits a sound into what follows a programme by any linear filter, and everything else: distortion, other programmes, beats, noise.
 *
 * At each bin the best filter is H = S_yx/S_xx over all stretches; the rest is what it leaves, S_yy - |S_yx|^2/S_xx. A filter fitted to n stretches takes
 * 1/n of the rest along, which is given back: rest = (S_yy - |S_yx|^2/S_xx) n/(n - 1), coherent = S_yy - rest. So a bin
 * of pure noise has a coherent part of zero on average, and it may come out below zero in a bin; sums over bands are what counts.
 *
 * Holds for: filters whose response is short beside a stretch and smooth over a bin.
 * Source: J. S. Bendat, A. G. Piersol, Random Data, ch. 6 (coherent output power; from memory); its use for intelligibility, J. M. Kates, K. H. Arehart,
 * J. Acoust. Soc. Am. 117 (2005) 2224.
 *
 * @param y - the sound [V]
 * @param x - the programme, as long as the sound and in step with it, best in the shape that is expected of it (`linearShape`)
 * @param size - of a stretch, samples
 */
export function coherentSplit(y: Float64Array, x: Float64Array, rate: number, size: number): CoherentSplit {
  const bins = (size >> 1) + 1;
  const [yy, xx, re, im] = [0, 0, 0, 0].map(() => new Float64Array(bins)) as [Float64Array, Float64Array, Float64Array, Float64Array];
  const stretches = eachStretch([y, x], size, (a, b) => {
    const [yr, xr] = a as [Float64Array, Float64Array];
    const [yi, xi] = b as [Float64Array, Float64Array];
    for (let k = 0; k < bins; k++) {
      yy[k] = yy[k]! + yr[k]! ** 2 + yi[k]! ** 2;
      xx[k] = xx[k]! + xr[k]! ** 2 + xi[k]! ** 2;
      re[k] = re[k]! + yr[k]! * xr[k]! + yi[k]! * xi[k]!;
      im[k] = im[k]! + yi[k]! * xr[k]! - yr[k]! * xi[k]!;
    }
  });
  const independent = Math.max(2, stretches * HALF_OVERLAP);
  const coherent = new Float64Array(bins);
  const rest = new Float64Array(bins);
  for (let k = 0; k < bins; k++) {
    const scale = binShare(k, size) / stretches;
    const followed = xx[k]! > 0 ? (re[k]! ** 2 + im[k]! ** 2) / xx[k]! : 0;
    yy[k] = yy[k]! * scale;
    rest[k] = (Math.max(0, yy[k]! - followed * scale) * independent) / (independent - 1);
    coherent[k] = yy[k]! - rest[k]!;
  }
  return { binWidth: rate / size, whole: yy, coherent, rest, independent };
}

/** Neighbouring bins under Hann's window share this much: sum of the squared correlations of their powers, 1 + 2 (4/9 + 1/36). Harris 1978. */
const SHARED = 1 + 2 * (4 / 9 + 1 / 36);

/**
 * Error of the coherent power between two edges [Hz], one standard deviation, that the chance of the rest makes [V^2].
 *
 * A filter fitted to n stretches of a bin takes rest/n along on average, and that with an exponential spread, whose deviation is its mean.
 */
export function coherentDoubt({ rest, binWidth, independent }: CoherentSplit, low: number, high: number): number {
  const squares = bandPower({ power: rest.map((r) => r * r), binWidth }, low, high);
  return Math.sqrt(SHARED * squares) / independent;
}

/** One part of a split as a spectrum that can be summed over bands. */
export const partOf = (split: CoherentSplit, part: 'whole' | 'coherent' | 'rest'): PowerSpectrum => ({
  binWidth: split.binWidth,
  power: split[part],
  noiseBandwidth: HANN_NOISE_BANDWIDTH,
  stretches: split.independent,
});
