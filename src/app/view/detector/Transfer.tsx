import { useMemo } from 'preact/hooks';
import { drawCurve, type PlotMark, type Series } from '#draw';
import type { DetectorCurves } from '#jobs';
import { type Curves, Plot } from '../parts/Plot.tsx';

const TITLE = 'Output against input';

/** Steady output against the radio amplitude, between square law and peak, with the station where it works the detector. */
export function Transfer({ curves, width }: { readonly curves: DetectorCurves; readonly width: number }) {
  const { plotted, svg } = useMemo(() => drawn(curves, width), [curves, width]);
  return <Plot svg={svg} name={TITLE} curves={plotted} />;
}

function drawn({ transfer, point }: DetectorCurves, width: number): { readonly plotted: Curves; readonly svg: string } {
  const { amplitude, output, squareLaw, peak } = transfer;
  const [least, most] = [Math.min(...Array.from(output, Math.abs).filter((v) => v > 0)), Math.max(...Array.from(output, Math.abs))];
  const of = (label: string, values: Float64Array): Series => ({
    label,
    points: Array.from(values, (v, i) => {
      const size = Math.abs(v);
      // a logarithm has no place for nothing, and the square law leaves the picture
      return { x: amplitude[i]!, y: size >= least && size <= 3 * most ? size : null };
    }),
  });
  const series = [of('output', output), of('square law', squareLaw), of('peak', peak)];
  const x = { label: 'radio amplitude across it', unit: 'V peak', scale: 'log' } as const;
  const y = { label: 'output', unit: 'V', scale: 'log' } as const;
  const marks: readonly PlotMark[] =
    point && point.amplitude > 0 && point.output !== 0
      ? [{ kind: 'point', x: point.amplitude, y: Math.abs(point.output), label: 'this station' }]
      : [];
  const svg = drawCurve(series, { title: TITLE, x, y, marks, width, height: 80, theme: 'host', id: 'transfer-plot' });
  return { plotted: { series, x, y }, svg };
}
