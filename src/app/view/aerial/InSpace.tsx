import { useMemo, useState } from 'preact/hooks';
import { aerialTitle, drawTurned, type TurnedAerial } from '#draw';
import type { AerialCurves } from '#jobs';
import { Plot } from '../parts/Plot.tsx';
import { type Gaze, keyed, LEAST_MOVE, START, turned, VIEWS, words } from './gaze.ts';

interface Props {
  readonly curves: AerialCurves;
  /** the picked one, by index */
  readonly station: number;
  readonly width: number;
}

/** The aerial in space, turned by dragging it, by the arrow keys, or to one of a few ways to look. */
export function InSpace({ curves, station, width }: Props) {
  const [gaze, setGaze] = useState<Gaze>(START);
  const [held, setHeld] = useState<{ readonly x: number; readonly y: number; readonly from: Gaze } | null>(null);
  const aerial = useMemo(() => aerialOf(curves, station), [curves, station]);
  const title = curves.wires ? aerialTitle(curves.wires.description.shape) : 'Aerial';
  const svg = useMemo(
    () => aerial && drawTurned(aerial, { title, azimuth: gaze.azimuth, elevation: gaze.elevation, width, theme: 'host', id: 'space-plot' }),
    [aerial, title, gaze, width],
  );
  if (!svg) return <p class="about">This aerial is given by what it does, so nothing is known of its wires.</p>;
  const move = (e: PointerEvent): void => {
    if (!held) return;
    const [dx, dy] = [e.clientX - held.x, e.clientY - held.y];
    if (Math.hypot(dx, dy) >= LEAST_MOVE) setGaze(turned(held.from, dx, dy));
  };
  return (
    <>
      <div
        class="turnable"
        role="application"
        aria-roledescription="drawing that can be turned"
        aria-label="aerial in space: arrow keys turn it"
        aria-describedby="space-gaze"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing is turned by keyboard
        tabIndex={0}
        onKeyDown={(e) => {
          const next = keyed(gaze, e.key);
          if (!next) return;
          e.preventDefault();
          setGaze(next);
        }}
        onPointerDown={(e) => {
          if ((e.target as Element).closest('button')) return;
          e.currentTarget.setPointerCapture(e.pointerId);
          setHeld({ x: e.clientX, y: e.clientY, from: gaze });
        }}
        onPointerMove={move}
        onPointerUp={() => setHeld(null)}
        onPointerCancel={() => setHeld(null)}
      >
        <Plot svg={svg} name="Aerial in space" />
      </div>
      <fieldset class="tools" aria-label="look">
        {VIEWS.map((v) => (
          <button key={v.name} type="button" onClick={() => setGaze(v.gaze)}>
            {v.name}
          </button>
        ))}
      </fieldset>
      <p class="about" id="space-gaze" aria-live="polite">
        {words(gaze)}
      </p>
    </>
  );
}

function aerialOf({ wires, shape, stations }: AerialCurves, picked: number): TurnedAerial | null {
  const around = stations.map(({ name, bearing, index }) => ({ label: name, bearing, picked: index === picked }));
  if (wires) return { wires: wires.geometry, feed: wires.feed, currents: wires.currents, stations: around };
  return shape && { ...shape, stations: around };
}
