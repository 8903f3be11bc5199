import type { JsonObject } from '../json/scan.ts';
import { CHAIN } from '../migrate.ts';
import type { Problem } from '../problem.ts';
import { readPlaceFile } from '../read-set-file.ts';
import type { Outcome, ReadOptions } from '../set-file.ts';
import type { StationRow, StationTable } from './read-stations-csv.ts';
import { STATION_COLUMNS, type StationColumn } from './station-columns.ts';
import { cellText } from './write-stations-csv.ts';

/** What a table would do to one station. */
export interface StationChange {
  readonly name: string;
  readonly kind: 'new' | 'changed' | 'taken out' | 'as it was';
  /** cells that differ, as texts; empty where there is or was nothing */
  readonly cells: readonly { readonly head: string; readonly before: string; readonly after: string }[];
}

export interface PutStations {
  readonly stations: readonly JsonObject[];
  readonly changes: readonly StationChange[];
}

/**
 * Puts a table of stations into a place: stations are known by their names and keep what has no column in the table; columns that the table does not
 * have change nothing. Nothing is put in unless the place can be read with them: complaints stand at the line and column of the table.
 *
 * @param place - as a file gives it, other files put in
 * @param others - what becomes of stations that the table does not name
 */
export function putStations(
  place: JsonObject,
  table: StationTable,
  others: 'keep' | 'take out',
  options: ReadOptions = {},
): Outcome<{ readonly value: PutStations }> {
  const before = Array.isArray(place.stations) ? (place.stations as readonly JsonObject[]) : [];
  const merged = table.rows.map((row) => mergedStation(before.find((s) => s.name === row.values.name) ?? {}, row, table));
  const rest = before.filter((s) => !merged.some((m) => m.name === s.name));
  const stations = others === 'keep' ? [...merged, ...rest] : merged;
  const text = JSON.stringify({ version: CHAIN.current, place: { ...place, stations } });
  const read = readPlaceFile(text, options);
  if (!read.ok) return { ok: false, problems: read.problems.map((p) => inTable(p, table)) };
  const changes = [...merged, ...rest].map((s) => {
    const old = before.find((b) => b.name === s.name);
    return changeOf(old, stations.includes(s) ? s : undefined);
  });
  return { ok: true, value: { stations, changes } };
}

function mergedStation(old: JsonObject, { values }: StationRow, { columns }: StationTable): JsonObject {
  const station: JsonObject = { ...old };
  for (const column of STATION_COLUMNS.filter((c) => columns.includes(c.key))) {
    const { key } = column;
    const value = values[key];
    if (value === undefined) delete station[key];
    // what says the same stays as the person wrote it
    else if (cellText(old[key], column) !== cellText(value, column)) station[key] = value;
  }
  if (values.distance !== undefined || values.bearing !== undefined) delete station.coordinates;
  return station;
}

function changeOf(old: JsonObject | undefined, now: JsonObject | undefined): StationChange {
  const name = String((now ?? old)!.name);
  const text = (s: JsonObject | undefined, c: StationColumn): string => cellText(s?.[c.key], c);
  const cells = STATION_COLUMNS.filter((c) => text(old, c) !== text(now, c)).map((c) => ({
    head: c.heads[0],
    before: text(old, c),
    after: text(now, c),
  }));
  if (!old) return { name, kind: 'new', cells };
  if (!now) return { name, kind: 'taken out', cells };
  return { name, kind: cells.length > 0 ? 'changed' : 'as it was', cells };
}

/** A complaint of the place at its cell in the table, at the beginning of the row where the table has no such column. */
function inTable(problem: Problem, { file, rows }: StationTable): Problem {
  const [, index, key] = /^place\.stations\[(\d+)\](?:\.(\w+))?/.exec(problem.path) ?? [];
  const row = index === undefined ? undefined : rows[Number(index)];
  if (!row || problem.file !== null) return problem;
  const column = STATION_COLUMNS.find((c) => c.key === key);
  const cell = column && row.at[column.key];
  return {
    ...problem,
    file,
    line: cell?.line ?? row.line,
    column: cell?.column ?? 1,
    path: column?.heads[0] ?? key ?? '',
  };
}
