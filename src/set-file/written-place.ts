import { Positions } from './json/positions.ts';
import type { JsonObject } from './json/scan.ts';
import { CHAIN } from './migrate.ts';
import { besides, type Context } from './resolve/context.ts';
import { assembleFiles, isObject } from './resolve/files.ts';
import type { ReadOptions } from './set-file.ts';

/**
 * The place of a file as it is written, with the file it may be in put in its place: what a person edits where it is to become the document's own.
 *
 * @returns null where the file has none, or the other file cannot be had; what is wrong with its values is not looked at
 */
export function writtenPlace(text: string, { read }: ReadOptions = {}): JsonObject | null {
  const context: Context = { positions: new Positions(), problems: [], chain: CHAIN, read: read ?? null, files: [], unresolved: [] };
  const place = assembleFiles(context, text, null)?.sections.place;
  if (!isObject(place) || 'file' in place) return null;
  const from = context.positions.of(place)?.file ?? null;
  if (from === null || !Array.isArray(place.stations)) return place;
  // tables are looked for beside the file that names them, and that is another one now
  return { ...place, stations: place.stations.map((s) => (isObject(s) ? withTableOf(s, from) : s)) };
}

function withTableOf(station: JsonObject, from: string): JsonObject {
  const { terrain } = station;
  if (!isObject(terrain) || typeof terrain.csv !== 'string') return station;
  return { ...station, terrain: { ...terrain, csv: besides(from, terrain.csv) } };
}
