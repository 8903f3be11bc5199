import { type DialPoint, dialTable, type Place } from '#engine';
import { type Improvement, improvements, type Trim, trims } from '#find';
import { LIBRARY, mergeParts, type Parts } from '#parts';
import { type SetFile, shelfOf, type UsedPart } from '#set-file';
import { type Received, receivedBy } from './received.ts';
import { type Substitute, substitutes } from './substitutes.ts';

/** All that is worked out for a sheet. */
export interface Findings extends Received {
  readonly file: SetFile;
  readonly place: Place;
  readonly parts: readonly UsedPart[];
  /** the tank alone, with nothing joined to it, at both ends and in the middle of the dial */
  readonly alone: readonly DialPoint[];
  readonly advice: readonly Improvement[];
  readonly trims: readonly Trim[];
  readonly substitutes: readonly Substitute[];
}

/** @param station - index; the one heard best where left out */
export function findingsOf(file: SetFile & { readonly place: Place }, used: readonly UsedPart[], station: number | undefined): Findings {
  const received = receivedBy(file, station);
  const { meant, reception } = received;
  const parts: Parts = mergeParts(file.drawer, LIBRARY);
  const shelf = shelfOf(parts);
  return {
    ...received,
    file,
    place: file.place,
    parts: used,
    alone: dialTable(reception.receiver.tank, 3),
    advice: improvements(meant, meant.station, shelf),
    trims: trims(meant),
    substitutes: substitutes(meant, meant.station, shelf, parts, used),
  };
}
