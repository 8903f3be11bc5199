import { useMemo } from 'preact/hooks';
import { drawCurve, type PlotMark, type Series } from '#draw';
import type { AerialCurves } from '#jobs';
import { formatFigure } from '#units';
import { Plot } from '../parts/Plot.tsx';

const TITLE = 'Impedance at the terminals';

/** Resistance and reactance over the band, with the stations and where the aerial is in tune by itself. */
export function Impedance({ curves, width }: { readonly curves: AerialCurves; readonly width: number }) {
  const drawn = useMemo(() => {
    const { band, range, stations, method } = curves;
    const series: readonly Series[] = [
      { label: 'resistance', points: band.points.map(({ frequency, impedance }) => ({ x: frequency, y: impedance.re })) },
      { label: 'reactance', points: band.points.map(({ frequency, impedance }) => ({ x: frequency, y: impedance.im })) },
    ];
    const x = { label: 'frequency', unit: 'Hz', ...range };
    const y = { label: 'impedance', unit: 'ohm' };
    const marks: readonly PlotMark[] = [
      ...stations.map((s) => ({ kind: 'x' as const, x: s.frequency, label: s.name })),
      ...band.resonances.map((r) => ({
        kind: 'point' as const,
        x: r.frequency,
        y: 0,
        label: `in tune at ${formatFigure(r.frequency, 'Hz')}`,
      })),
    ];
    const svg = drawCurve(series, {
      title: TITLE,
      x,
      y,
      marks,
      note: `Computed by: ${method}.`,
      width,
      theme: 'host',
      id: 'impedance-plot',
    });
    return { svg, curves: { series, x, y } };
  }, [curves, width]);
  return <Plot svg={drawn.svg} name={TITLE} curves={drawn.curves} />;
}
