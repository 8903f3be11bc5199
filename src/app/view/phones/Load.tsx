import { useMemo } from 'preact/hooks';
import { drawCurve, type Series } from '#draw';
import type { PhonesCurves } from '#jobs';
import { Plot } from '../parts/Plot.tsx';

const TITLE = 'Load on the detector';

/** Magnitude of what the detector's output sees over audio. */
export function Load({ curves, width }: { readonly curves: PhonesCurves; readonly width: number }) {
  const drawn = useMemo(() => {
    const { frequency, load } = curves;
    const series: readonly Series[] = [{ label: 'load', points: Array.from(frequency, (f, i) => ({ x: f, y: load[i]! })) }];
    const x = { label: 'frequency', unit: 'Hz', scale: 'log' } as const;
    const y = { label: 'impedance', unit: 'ohm', scale: 'log' } as const;
    return { svg: drawCurve(series, { title: TITLE, x, y, width, theme: 'host', id: 'load-plot' }), curves: { series, x, y } };
  }, [curves, width]);
  return <Plot svg={drawn.svg} name={TITLE} curves={drawn.curves} />;
}
