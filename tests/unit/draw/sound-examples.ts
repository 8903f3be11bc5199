import type { SpectrumPicture } from '#draw';
import type { EnvelopeSpectrum } from '#engine';

const BANDS = [160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000];
const octaves = (f: number) => Math.log2(f / 1000);

/** A made-up sound: falls by 6 dB an octave, silent at both ends; a whistle of 3 kHz among its lines. */
export const AT_EAR: SpectrumPicture = {
  bands: BANDS,
  sounds: [
    { label: 'programme', levels: BANDS.map((f) => (f < 200 || f > 6000 ? -200 : 40 - 6 * octaves(f))) },
    { label: 'disturbance', levels: BANDS.map((f) => 12 - 3 * Math.abs(octaves(f))) },
  ],
  lines: [
    {
      label: 'lines of 20 Hz',
      points: Array.from({ length: 300 }, (_, k) => {
        const frequency = 200 + 20 * k;
        return { frequency, level: frequency === 3000 ? 25 : 12 - 8 * octaves(frequency) };
      }),
    },
  ],
  threshold: BANDS.map((f) => 8 + 4 * octaves(f) ** 2),
  room: BANDS.map((f) => 10 - 5 * octaves(f)),
};

const carriers = [
  { name: 'Harbour', frequency: 98e6, power: 1e-6, width: 40e3 },
  { name: 'Hill, the long name of a programme', frequency: 98.4e6, power: 1e-9, width: 60e3 },
];
const frequency = Float64Array.from({ length: 1001 }, (_, n) => 97.5e6 + 1e3 * n);

/** Two made-up stations of Gaussian spectrum under a tank of 150 kHz half bandwidth at 98.15 MHz. */
export const ABOUT_DIAL: EnvelopeSpectrum = {
  frequency,
  binWidth: 1e3,
  aerial: frequency.map((f) =>
    carriers.reduce((sum, c) => sum + ((c.power * 1e3) / c.width) * Math.exp(-(((f - c.frequency) / c.width) ** 2)), 0),
  ),
  response: frequency.map((f) => 20 - 10 * Math.log10(1 + ((f - 98.15e6) / 150e3) ** 2)),
  stations: carriers,
};
