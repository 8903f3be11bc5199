import type { EnvelopeSpectrum } from '#engine';
import { type CurveOptions, drawCurve } from '../plot/draw-curve.ts';

export type EnvelopeSpectrumDrawing = Pick<CurveOptions, 'title' | 'note' | 'width' | 'height' | 'theme' | 'id'>;

/** What lies this far below the highest bin is not worth paper [dB]. */
const DEPTH = 100;
/** Nothing at all [V^2]. */
const NOTHING = 1e-30;

/**
 * Stations about the dial as the aerial gives them, as they stand across the detector, and the response of the set between the two, as SVG text.
 *
 * Power in each bin, dB re 1 uV rms. The response has a scale of its own: its top is put where the highest bin at the detector stands.
 *
 * @throws GivenError for values that are no numbers, or sizes that cannot be
 */
export function drawEnvelopeSpectrum(spectrum: EnvelopeSpectrum, options: EnvelopeSpectrumDrawing): string {
  const { frequency, aerial, response, binWidth, stations } = spectrum;
  const atAerial = aerial.map((p) => 10 * Math.log10(Math.max(p, NOTHING)) + 120);
  const atDetector = atAerial.map((l, n) => l + response[n]!);
  const most = (x: Float64Array): number => x.reduce((m, v) => Math.max(m, v), Number.NEGATIVE_INFINITY);
  const top = most(atDetector);
  const highest = Math.max(top, most(atAerial));
  const shift = top - most(response);
  const curve = (label: string, levels: ArrayLike<number>) => ({
    label,
    points: Array.from(frequency, (x, n) => ({ x, y: levels[n]! })),
  });
  const to = 10 * Math.ceil(highest / 10);
  return drawCurve(
    [
      curve('at the aerial, e.m.f.', atAerial),
      curve('across the detector', atDetector),
      curve(
        'response of the set, its top at that of the stations',
        response.map((g) => g + shift),
      ),
    ],
    {
      ...options,
      x: { label: 'frequency', unit: 'Hz', from: frequency[0]!, to: frequency.at(-1)! },
      y: { label: 'level', unit: `dB re 1 µV in ${binWidth >= 1000 ? `${binWidth / 1000} kHz` : `${binWidth} Hz`}`, from: to - DEPTH, to },
      marks: stations.map((s) => ({ kind: 'x', x: s.frequency, label: s.name })),
    },
  );
}
