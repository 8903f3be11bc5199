import { useMemo } from 'preact/hooks';
import { drawBands } from '#draw';
import type { EarCurves } from '#jobs';
import { type Curves, Plot } from '../parts/Plot.tsx';

interface Props {
  readonly curves: EarCurves;
  readonly station: string;
  readonly width: number;
}

/** What stands for nothing is no point of a curve [dB SPL]. */
const SILENT = -150;

/** Programme by third octaves over hearing and the room's noise, each band with its headroom. */
export function AtTheEar({ curves, station, width }: Props) {
  const svg = useMemo(
    () => drawBands(curves, { title: `${station}, by third octaves`, width, theme: 'host', id: 'bands-plot' }),
    [curves, station, width],
  );
  const plotted = useMemo(() => curvesOf(curves), [curves]);
  return <Plot svg={svg} name="Sound at the ear" curves={plotted} />;
}

function curvesOf({ band, programme, disturbance, roomNoise, threshold, needed }: EarCurves): Curves {
  const series = (label: string, levels: ArrayLike<number>) => ({
    label,
    points: band.map((x, i) => ({ x, y: levels[i]! > SILENT ? levels[i]! : null })),
  });
  return {
    series: [
      series('programme', programme),
      series('needed to be heard', needed),
      series('hearing threshold', threshold),
      series('room noise', roomNoise),
      series('distortion, noise and other stations', disturbance),
    ],
    x: { label: 'frequency', unit: 'Hz', scale: 'log' },
    y: { label: 'level', unit: 'dB SPL' },
  };
}
