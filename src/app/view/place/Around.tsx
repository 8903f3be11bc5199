import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { drawStations } from '#draw';
import { fieldLevel } from '#engine';
import type { StationField } from '#jobs';
import { type Curves, Plot } from '../parts/Plot.tsx';

interface Props {
  readonly stations: readonly StationField[];
  /** by index */
  readonly picked: number;
  readonly onPick: (index: number) => void;
  readonly width: number;
}

/** Stations by bearing and distance; a click on one picks it, as the table beside does by keyboard. */
export function Around({ stations, picked, onPick, width }: Props) {
  const svg = useMemo(
    () =>
      drawStations(
        stations.map(({ name, bearing, distance, field }) => ({ label: name, bearing, distance, field })),
        { title: 'Stations by bearing and distance', width, theme: 'host', id: 'around-plot' },
      ),
    [stations, width],
  );
  const curves = useMemo(() => curvesOf(stations), [stations]);
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    for (const mark of box.current?.querySelectorAll<SVGElement>('[data-station]') ?? [])
      mark.classList.toggle('picked', mark.dataset.station === String(picked));
  }, [svg, picked]);
  const click = (e: MouseEvent): void => {
    const index = (e.target as Element).closest<SVGElement>('[data-station]')?.dataset.station;
    if (index !== undefined && stations[Number(index)]) onPick(Number(index));
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: a short cut for the mouse; the buttons of the table are the way for everyone
    // biome-ignore lint/a11y/useKeyWithClickEvents: as above
    <div ref={box} class="around round" onClick={click}>
      <Plot svg={svg} name="Stations around" curves={curves} />
    </div>
  );
}

/** One point a station: to be read one after the other, and saved as a table. */
const curvesOf = (stations: readonly StationField[]): Curves => ({
  series: stations.map(({ name, bearing, field }) => ({
    label: name,
    points: [{ x: bearing, y: field > 0 ? fieldLevel(field) : null }],
  })),
  x: { label: 'bearing', unit: 'rad' },
  y: { label: 'field', unit: 'dBµV/m' },
});
