import { useMemo } from 'preact/hooks';
import { drawCoil, windingSteps } from '#draw';
import type { TankBuild } from '#jobs';
import { Plot } from '../parts/Plot.tsx';

const LEAST = 80;

/** The coil to scale, with its taps and how to wind it. */
export function Coil({ tank, width }: { readonly tank: TankBuild['tank']; readonly width: number }) {
  const svg = useMemo(
    () => drawCoil(tank, { width: Math.max(LEAST, width), steps: false, theme: 'host', id: 'coil-drawing' }),
    [tank, width],
  );
  if (svg === null)
    return (
      <p>
        The coil is given by what was measured of it, so that nothing is known of its shape. Give its turns and sizes to see how to wind it.
      </p>
    );
  return (
    <>
      <Plot svg={svg} name="coil" />
      <ol aria-label="how to wind it">
        {windingSteps(tank)?.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
    </>
  );
}
