import { useState } from 'preact/hooks';
import { writeStationsCsv } from '#set-file';
import type { Desk } from '../../model/desk.ts';
import { textOf } from '../../model/open-files.ts';
import { placeOf } from '../../model/own-place.ts';
import { PickFile } from '../parts/PickFile.tsx';
import { saveFile } from '../parts/save.ts';
import { type GivenTable, TableOffer } from './TableOffer.tsx';

/** The stations as a table for a spreadsheet, out and in. */
export function TableExchange({ desk }: { readonly desk: Desk }) {
  const [given, setGiven] = useState<GivenTable | null>(null);
  const save = (): void => {
    const stations = placeOf(desk)?.stations;
    saveFile('stations.csv', writeStationsCsv(Array.isArray(stations) ? stations : []), 'text/csv');
  };
  const open = async (file: File): Promise<void> => setGiven({ name: file.name, text: await textOf(file) });
  return (
    <section aria-labelledby="table-heading" class="exchange">
      <h3 id="table-heading">Stations as a table</h3>
      <p class="tools">
        <button type="button" onClick={save}>
          Save as CSV
        </button>
        <PickFile accept=".csv,.txt,text/csv" what="table of stations to take" onPick={([file]) => void open(file!)}>
          Take from CSV
        </PickFile>
      </p>
      <details class="others">
        <summary>how such a table is written</summary>
        <p class="about">
          The first row names the columns, in any order: name, frequency, power, polarisation, mast height, distance, bearing, stereo,
          programme. Each further row is a station, its values written as you would say them: 99.2 MHz, 8 kW, horizontal, 110 m, 2.6 km, ESE
          or 110°, yes or no, speech or music. A unit may stand in the head instead: frequency (MHz). Commas between the cells, or
          semicolons. Stations are known by their names: whatever else you have said of one stays. You are shown what would change before
          anything does.
        </p>
      </details>
      {given && <TableOffer desk={desk} given={given} onClose={() => setGiven(null)} />}
    </section>
  );
}
