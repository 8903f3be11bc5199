import { useMemo } from 'preact/hooks';
import { drawCurve, type Series } from '#draw';
import type { PhonesCurves } from '#jobs';
import { Plot } from '../parts/Plot.tsx';

const TITLE = 'Sensitivity of the earpiece';

/** Level for one volt over frequency, at the earpiece and at the detector's output, over what a tone needs to be heard. */
export function Sensitivity({ curves, width }: { readonly curves: PhonesCurves; readonly width: number }) {
  const drawn = useMemo(() => {
    const { frequency, sensitivity, throughout, threshold, attenuation, coupler } = curves;
    const line = (label: string, values: Float64Array): Series => ({
      label,
      points: Array.from(frequency, (f, i) => ({ x: f, y: values[i]! })),
    });
    const same = sensitivity.every((level, i) => Math.abs(level - throughout[i]!) < 0.1);
    const series = [
      line('for 1 V on the earpiece', sensitivity),
      ...(same ? [] : [line('for 1 V from the detector', throughout)]),
      line('needed to hear a tone', threshold),
      line('room noise kept out [dB]', attenuation),
    ];
    const x = { label: 'frequency', unit: 'Hz', scale: 'log' } as const;
    const y = { label: 'level', unit: 'dB SPL' };
    const note = `Levels as a coupler of ${coupler} reads them.`;
    return { svg: drawCurve(series, { title: TITLE, x, y, note, width, theme: 'host', id: 'sensitivity-plot' }), curves: { series, x, y } };
  }, [curves, width]);
  return <Plot svg={drawn.svg} name={TITLE} curves={drawn.curves} />;
}
