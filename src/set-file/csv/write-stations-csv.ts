import { writeExact } from '#units';
import type { JsonObject } from '../json/scan.ts';
import { STATION_COLUMNS, type StationColumn } from './station-columns.ts';

/**
 * Stations as a table that `readStationsCsv` reads back: a head in plain words, one row a station, values as they stand in the file.
 *
 * A value that is left out is an empty cell. What has no column (a terrain profile, a measured field) stays in the file alone.
 *
 * @param stations - as a set file gives them
 */
export function writeStationsCsv(stations: readonly JsonObject[]): string {
  const head = STATION_COLUMNS.map((c) => c.heads[0]);
  const rows = stations.map((s) => STATION_COLUMNS.map((c) => cellText(s[c.key], c)));
  return [head, ...rows].map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('');
}

/** What stands in a cell for a value. */
export function cellText(value: unknown, { dimension }: StationColumn): string {
  if (value === undefined || value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number' && dimension !== null && Number.isFinite(value)) return writeExact(value, dimension);
  return typeof value === 'string' ? value : JSON.stringify(value);
}

/** In quotes where it would else be read as something other than one cell. */
const quoted = (text: string): string => (/[",;\t\r\n]|^[\s#]|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
