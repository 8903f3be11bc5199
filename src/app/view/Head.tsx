import { formatFigure } from '#units';
import type { Desk } from '../model/desk.ts';
import { Files } from './Files.tsx';

/** Name of the set, the station listened for, and what can be done with the file. */
export function Head({ desk }: { readonly desk: Desk }) {
  const { bench } = desk;
  const stations = bench.outline.value?.stations ?? [];
  return (
    <header class="head">
      <h1>Earshot</h1>
      <div class="where">
        <strong>{desk.name.value || 'a set without a name'}</strong>
        <span>{bench.shown.value ? `listening for ${bench.shown.value.name}` : 'nothing is heard yet'}</span>
      </div>
      <label>
        station{' '}
        <select
          value={bench.station.value}
          onChange={(e) => {
            bench.hand.value = null;
            bench.station.value = Number(e.currentTarget.value);
          }}
        >
          {stations.map((s) => (
            <option key={s.index} value={s.index}>
              {s.name}, {formatFigure(s.frequency, 'Hz', 4)}
            </option>
          ))}
        </select>
      </label>
      <Files desk={desk} />
    </header>
  );
}
