import { useMemo } from 'preact/hooks';
import { drawCurve, type PlotMark, type Series } from '#draw';
import type { SlopeCurves } from '#jobs';
import { type Curves, Plot } from '../parts/Plot.tsx';

const DEGREE = Math.PI / 180;
/** Shown below the loudest [dB]. */
const RANGE = 50;
/** More harmonic than fundamental is no longer the sound that was sent [%]. */
const MOST_PERCENT = 100;
const LEVEL = 'Sound on both sides of the station';
const HARMONICS = 'Distortion on both sides of the station';

/** How loud the station is as the dial turns past it, and how clean. */
export function Around({
  curves,
  width,
  what,
}: {
  readonly curves: SlopeCurves;
  readonly width: number;
  readonly what: 'level' | 'harmonics';
}) {
  const { plotted, svg } = useMemo(() => drawn(curves, width, what), [curves, width, what]);
  return <Plot svg={svg} name={what === 'level' ? LEVEL : HARMONICS} curves={plotted} />;
}

function drawn(
  { around, angle }: SlopeCurves,
  width: number,
  what: 'level' | 'harmonics',
): { readonly plotted: Curves; readonly svg: string } {
  const series = (label: string, of: (p: SlopeCurves['around'][number]) => number | null): Series => ({
    label,
    points: around.map((p) => ({ x: p.angle / DEGREE, y: of(p) })),
  });
  const share = (v: number): number | null => (100 * v <= MOST_PERCENT ? 100 * v : null);
  const loudest = Math.max(...around.map((p) => p.level));
  const levels = what === 'level';
  const all = levels
    ? [series('sound', (p) => (p.level >= loudest - RANGE ? p.level : null))]
    : [series('second', (p) => share(p.secondHarmonic)), series('third', (p) => share(p.thirdHarmonic))];
  const x = { label: 'dial', unit: '°' };
  const y = levels ? { label: 'level at the ear', unit: 'dB SPL' } : { label: 'harmonic', unit: '%', from: 0 };
  const marks: readonly PlotMark[] = [{ kind: 'x', x: angle / DEGREE, label: 'dial now' }];
  const svg = drawCurve(all, { title: levels ? LEVEL : HARMONICS, x, y, marks, width, height: 60, theme: 'host', id: `around-${what}` });
  return { plotted: { series: all, x, y }, svg };
}
