import type { Listener, Place, SetDescription } from '#engine';
import { BadFile } from './bad-file.ts';
import type { Loaded } from './load.ts';

/** A place, a set and a listener: what the whole path needs. */
export interface Whole {
  readonly place: Place;
  readonly set: SetDescription;
  readonly listener: Listener;
}

/** @throws BadFile if the file has no place */
export function whole(loaded: Loaded): Whole {
  const { place, aerial, tank, detector, phones, ear, programme } = loaded;
  if (place) return { place, set: { aerial, tank, detector, phones }, listener: { ear, programme } };
  throw new BadFile(
    `${loaded.file}: there is no "place"\n  from mast to ear a place with its stations is needed\n  Add one, or refer to a file that has it: "place": {"file": "town.json"}.`,
  );
}
