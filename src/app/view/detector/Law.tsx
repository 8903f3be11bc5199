import { useMemo } from 'preact/hooks';
import { drawCurve, type PlotMark, type Series } from '#draw';
import type { DetectorCurves } from '#jobs';
import { type Curves, Plot } from '../parts/Plot.tsx';

const TITLE = 'Current against voltage, and the swing of the station on it';

/** The law of the detector, and between which voltages the station swings it: the carrier about minus the output. */
export function Law({ curves, width }: { readonly curves: DetectorCurves; readonly width: number }) {
  const { plotted, svg } = useMemo(() => drawn(curves, width), [curves, width]);
  return <Plot svg={svg} name={TITLE} curves={plotted} />;
}

function drawn({ law, point }: DetectorCurves, width: number): { readonly plotted: Curves; readonly svg: string } {
  const points = Array.from(law.voltage, (x, i) => ({ x, y: law.current[i]! }));
  // the voltage across the law is that of the carrier less the output: it swings about where the output has pushed it
  const [from, to] = point ? [-point.output - point.amplitude, -point.output + point.amplitude] : [0, 0];
  const swept = points.filter((p) => p.x >= from && p.x <= to);
  const series: readonly Series[] = [
    { label: 'law', points },
    ...(swept.length > 1 ? [{ label: 'swept by the carrier', points: swept }] : []),
  ];
  const x = { label: 'voltage across it', unit: 'V' };
  const y = { label: 'current', unit: 'A' };
  const marks: readonly PlotMark[] = point
    ? [
        { kind: 'x', x: from, label: 'least' },
        { kind: 'x', x: -point.output, label: 'middle' },
        { kind: 'x', x: to, label: 'greatest' },
      ]
    : [];
  const svg = drawCurve(series, { title: TITLE, x, y, marks, width, height: 70, theme: 'host', id: 'law-plot' });
  return { plotted: { series, x, y }, svg };
}
