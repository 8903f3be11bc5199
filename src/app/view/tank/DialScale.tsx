import { useMemo } from 'preact/hooks';
import { drawDial, drawDialStrip } from '#draw';
import type { TankBuild } from '#jobs';
import { Plot } from '../parts/Plot.tsx';

/** A half circle with names around it needs so much [mm]. */
const ROUND = 150;

/** The dial to print and put in front of the set; laid out straight where there is no room for a round one. */
export function DialScale({ dial, width }: { readonly dial: TankBuild['dial']; readonly width: number }) {
  const svg = useMemo(() => {
    const options = { title: 'Dial', theme: 'host', id: 'dial-drawing' } as const;
    const round = width >= ROUND ? drawDial(dial, options) : null;
    return round ?? drawDialStrip(dial, { ...options, width });
  }, [dial, width]);
  return <Plot svg={svg} name="dial scale" />;
}
