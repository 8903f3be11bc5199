import { useMemo } from 'preact/hooks';
import { drawCurve, type PlotMark, type Series } from '#draw';
import type { TankCurves } from '#jobs';
import { type Curves, Plot } from '../parts/Plot.tsx';

const DEGREE = Math.PI / 180;
const TITLE = 'Frequency per degree of the dial';

/** How far the tank's frequency runs for one degree of the dial, all round it: where that is little, a station is easily set. */
export function PerDegree({ curves, width }: { readonly curves: TankCurves; readonly width: number }) {
  const { plotted, svg } = useMemo(() => drawn(curves, width), [curves, width]);
  return <Plot svg={svg} name={TITLE} curves={plotted} />;
}

function drawn({ dial, angle }: TankCurves, width: number): { readonly plotted: Curves; readonly svg: string } {
  const series: readonly Series[] = [
    {
      label: 'tank alone',
      points: dial.map((p) => ({ x: p.angle / DEGREE, y: p.slope === null ? null : (Math.abs(p.slope) * DEGREE) / 1e3 })),
    },
  ];
  const x = { label: 'dial', unit: '°' };
  const y = { label: 'for one degree', unit: 'kHz/°', from: 0 };
  const marks: readonly PlotMark[] = [{ kind: 'x', x: angle / DEGREE, label: 'dial now' }];
  const svg = drawCurve(series, { title: TITLE, x, y, marks, width, height: 55, theme: 'host', id: 'per-degree-plot' });
  return { plotted: { series, x, y }, svg };
}
