import { fourierTransform, REFERENCE_SOUND_PRESSURE } from '#engine';

const RATE = 48_000;
const SIZE = 1 << 17;

/** Levels of one-third octaves of a sound [dB SPL], ideal bands of base ten; Hann-windowed spectra, halves overlapping, their mean. */
export function thirdOctaves(sound: Float64Array, bands: readonly number[]): number[] {
  const transform = fourierTransform(SIZE);
  const window = Float64Array.from({ length: SIZE }, (_, n) => Math.sqrt(2 / 3) * (1 - Math.cos((2 * Math.PI * n) / SIZE)));
  const power = new Float64Array(SIZE / 2);
  let count = 0;
  for (let from = 0; from + SIZE <= sound.length; from += SIZE / 2, count++) {
    const re = Float64Array.from(window, (w, n) => w * sound[from + n]!);
    const im = new Float64Array(SIZE);
    transform.forward(re, im);
    for (let k = 0; k < SIZE / 2; k++) power[k] = power[k]! + (2 * (re[k]! ** 2 + im[k]! ** 2)) / SIZE ** 2;
  }
  return bands.map((nominal) => {
    const tenths = Math.round(10 * Math.log10(nominal));
    const edge = (half: number): number => (10 ** (tenths / 10 + half / 20) / RATE) * SIZE;
    let sum = 0;
    for (let k = Math.ceil(edge(-1)); k < edge(1); k++) sum += power[k]!;
    return 10 * Math.log10(sum / count / REFERENCE_SOUND_PRESSURE ** 2);
  });
}
