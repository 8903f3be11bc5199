import { type Outcome, type PutStations, putStations, readStationsCsv, type StationTable, writtenPlace } from '#set-file';
import type { Desk } from './desk.ts';
import { type Path, withValue } from './edit.ts';
import { filesAtHand } from './files-at-hand.ts';

/** A place as a file gives it. */
export type PlaceText = ReturnType<typeof writtenPlace>;

/** The place of the document as it is written, whether it stands in it or in a file it refers to; null where there is none. */
export const placeOf = (desk: Desk): PlaceText => writtenPlace(desk.text.value, { read: filesAtHand(desk) });

/** The file the document has its place from; null where the place is its own. */
export function placeFileOf(document: unknown): string | null {
  const place = typeof document === 'object' && document !== null && 'place' in document ? document.place : null;
  return typeof place === 'object' && place !== null && 'file' in place ? String(place.file) : null;
}

/** Edits the place where it stands; one from another file becomes the document's own with that. */
export function editPlace(desk: Desk, path: Path, value: unknown, drag?: string): void {
  const whole = withValue({ place: placeOf(desk) ?? undefined }, path, value) as { readonly place?: unknown };
  desk.edit(['place'], whole.place, drag);
}

/** A table of stations and what it would do to the place, before anything is done. */
export type Offer = Outcome<{ readonly table: StationTable; readonly put: PutStations }>;

export function offerStations(desk: Desk, name: string, text: string, others: 'keep' | 'take out'): Offer {
  const read = readStationsCsv(text, name);
  if (!read.ok) return read;
  const put = putStations(placeOf(desk) ?? {}, read.value, others, { read: filesAtHand(desk) });
  return put.ok ? { ok: true, table: read.value, put: put.value } : put;
}

/** Takes the stations over as one step that can be undone; the one that was picked stays so where it is still there. */
export function takeStations(desk: Desk, { stations }: PutStations): void {
  const { bench } = desk;
  const before = placeOf(desk)?.stations;
  const picked = Array.isArray(before) ? nameOf(before[bench.station.value]) : null;
  const at = stations.findIndex((s) => nameOf(s) === picked);
  editPlace(desk, ['place', 'stations'], stations);
  bench.station.value = Math.max(0, at);
}

const nameOf = (station: unknown): unknown => (typeof station === 'object' && station !== null && 'name' in station ? station.name : null);
