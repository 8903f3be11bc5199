import type { PowerSpectrum } from './power-spectrum.ts';

/** A spectrum with every bin raised by some dB that depend on its frequency [Hz]; what stands at 0 Hz is dropped. */
export function weighted(spectrum: PowerSpectrum, decibels: (frequency: number) => number): PowerSpectrum {
  const { power, binWidth } = spectrum;
  return { ...spectrum, power: power.map((p, k) => (k === 0 ? 0 : p * 10 ** (decibels(k * binWidth) / 10))) };
}
