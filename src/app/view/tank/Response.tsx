import { useMemo } from 'preact/hooks';
import { drawCurve, type PlotMark, type Series } from '#draw';
import type { TankCurves } from '#jobs';
import { formatFigure } from '#units';
import { type Curves, Plot } from '../parts/Plot.tsx';

const TITLE = 'Signal at the detector';

interface Props {
  readonly curves: TankCurves;
  /** the picked one, by name */
  readonly station: string;
  readonly width: number;
}

/** What the tank lets through over frequency, and what it leaves of each station near. */
export function Response({ curves, station, width }: Props) {
  const { plotted, svg } = useMemo(() => drawn(curves, station, width), [curves, station, width]);
  const { sharpness, stations } = curves;
  const others = stations.filter((s) => s.name !== station);
  const own = stations.find((s) => s.name === station);
  return (
    <>
      <Plot svg={svg} name={TITLE} curves={plotted} />
      <p class="about">
        {sharpness
          ? `With aerial and detector joined the tank rings with a Q of ${formatFigure(sharpness.loadedQ, '1', 3)}: from half power to half power it is ${formatFigure(sharpness.bandwidth, 'Hz', 3)} wide. `
          : 'The dial does not reach this station: shown is the middle of its travel. '}
        {own && others.length > 0 && others.map((o) => `${o.name} is ${besideWords(o.response - own.response)}.`).join(' ')}
      </p>
    </>
  );
}

const besideWords = (decibels: number): string =>
  `${Math.abs(decibels).toFixed(1)} dB ${decibels > 0 ? 'less held back' : 'further held back'} than the one you listen to`;

function drawn(curves: TankCurves, station: string, width: number): { readonly plotted: Curves; readonly svg: string } {
  const response = [...curves.response];
  const series: readonly Series[] = [{ label: 'tank', points: response.map((y, i) => ({ x: curves.frequency[i]!, y })) }];
  const x = { label: 'frequency', unit: 'Hz' };
  const y = { label: 'under its greatest', unit: 'dB' };
  const marks: readonly PlotMark[] = curves.stations.map((s) => ({
    kind: 'point',
    x: s.frequency,
    y: s.response,
    label: s.name === station ? `${s.name}, picked` : s.name,
  }));
  const svg = drawCurve(series, { title: TITLE, x, y, marks, width, height: 70, theme: 'host', id: 'response-plot' });
  return { plotted: { series, x, y }, svg };
}
