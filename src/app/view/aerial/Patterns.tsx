import { useMemo } from 'preact/hooks';
import { type Component, drawPattern, type PatternCut, strongComponents } from '#draw';
import type { AerialCurves } from '#jobs';
import { formatFigure } from '#units';
import { type Curves, Plot } from '../parts/Plot.tsx';

interface Props {
  readonly curves: AerialCurves;
  readonly station: number;
  readonly width: number;
}

const NOTE = 'The aerial alone: set, hands and house are left out.';
const NAMES: Readonly<Record<Component, string>> = { total: 'both polarisations', horizontal: 'horizontal', vertical: 'vertical' };

/** Gain round the compass and upright, at the frequency of the picked station. */
export function Patterns({ curves, station, width }: Props) {
  const drawn = useMemo(() => patterns(curves, station, width), [curves, station, width]);
  return (
    <>
      <div class="round">
        <Plot svg={drawn.level.svg} name="Pattern round the compass" curves={drawn.level.curves} />
      </div>
      <Plot svg={drawn.upright.svg} name="Pattern upright" curves={drawn.upright.curves} />
    </>
  );
}

function patterns({ pattern, stations }: AerialCurves, picked: number, width: number) {
  const at = stations[picked] ?? stations[0]!;
  const frequency = formatFigure(at.frequency, 'Hz');
  const level: PatternCut = { kind: 'azimuth', elevation: pattern.elevation, points: pattern.level };
  const upright: PatternCut = { kind: 'elevation', azimuth: pattern.azimuth, points: pattern.upright };
  return {
    level: {
      svg: drawPattern(level, {
        title: `Round the compass, ${frequency}`,
        components: strongComponents(level.points),
        stations: stations.map((s) => ({ label: s.name, bearing: s.bearing })),
        note: NOTE,
        width,
        theme: 'host',
        id: 'compass-plot',
      }),
      curves: curvesOf(level, 'bearing'),
    },
    upright: {
      svg: drawPattern(upright, {
        title: `Upright, ${frequency}`,
        components: strongComponents(upright.points),
        note: NOTE,
        width,
        theme: 'host',
        id: 'upright-plot',
      }),
      curves: curvesOf(upright, 'elevation'),
    },
  };
}

const curvesOf = ({ points }: PatternCut, label: string): Curves => ({
  series: strongComponents(points).map((c) => ({ label: NAMES[c], points: points.map((p) => ({ x: p.angle, y: p.gain[c] })) })),
  x: { label, unit: 'rad' },
  y: { label: 'gain', unit: 'dBi' },
});
