import { readIvCsv } from '../csv/iv-csv.ts';
import type { CsvTable } from '../csv/table.ts';
import { readTerrainCsv } from '../csv/terrain-csv.ts';
import type { Path } from '../json/positions.ts';
import type { JsonObject } from '../json/scan.ts';
import { type Problem, showPath } from '../problem.ts';
import { type Context, readOther } from './context.ts';
import { isObject } from './files.ts';

/** Puts the contents of CSV files in place of their names: terrain profiles of stations, and the measured law of the detector. */
export function resolveTables(context: Context, sections: JsonObject): void {
  const { place, detector } = sections;
  if (isObject(place) && Array.isArray(place.stations))
    place.stations.forEach((station: unknown, i) => {
      if (!isObject(station) || !isObject(station.terrain)) return;
      const { terrain } = station;
      fill(context, sections, terrain, ['place', 'stations', i, 'terrain'], (text, file) => {
        const read = readTerrainCsv(text, file);
        return read.ok ? { lists: { distance: read.value.distance, height: read.value.height }, table: read.table } : read;
      });
    });
  if (isObject(detector))
    fill(context, sections, detector, ['detector'], (text, file) => {
      const read = readIvCsv(text, file);
      return read.ok ? { lists: { voltage: read.value.voltage, current: read.value.current }, table: read.table } : read;
    });
}

type Filled =
  | { readonly lists: Readonly<Record<string, readonly number[]>>; readonly table: CsvTable }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Replaces `csv` in an object by the lists that the file holds, each number with its line in that file. */
function fill(context: Context, sections: JsonObject, owner: JsonObject, path: Path, read: (text: string, file: string) => Filled): void {
  const { csv } = owner;
  if (typeof csv !== 'string') return;
  const got = readOther(context, sections, [...path, 'csv'], csv);
  const filled = got && read(got.text, got.file);
  if (!filled || !('lists' in filled)) {
    for (const problem of filled?.problems ?? []) context.problems.push({ ...problem, path: showPath([...path, 'csv']) });
    context.unresolved.push(path);
    return;
  }
  delete owner.csv;
  for (const [key, values] of Object.entries(filled.lists)) {
    const list = [...values];
    const mark = { file: got.file, line: 1, column: 1 };
    context.positions.begin(list, mark);
    list.forEach((_, i) => {
      const at = { file: got.file, line: filled.table.rows[i]!.line, column: 1 };
      context.positions.entry(list, i, at, at);
    });
    owner[key] = list;
    context.positions.entry(owner, key, mark, mark);
  }
}
