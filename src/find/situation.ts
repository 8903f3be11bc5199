import type { Listener, Place, SetDescription } from '#engine';
import type { Shelf as PartsOnShelf } from '#set-file';

/** A set, where it stands and who listens: everything a change may touch. */
export interface Situation {
  readonly place: Place;
  readonly set: SetDescription;
  readonly listener: Listener;
}

/** One thing a builder can do next, and what becomes of the situation. */
export interface Change {
  /** stable name: `aerial.turn` */
  readonly key: string;
  /** what to do, as said at the bench: `turn the aerial broadside to the mast` */
  readonly words: string;
  readonly situation: Situation;
  /** true where the radio side stays as it is, so that the dial can be left where it stands */
  readonly keepsDial?: true;
}

/** Parts on the shelf that a change may swap in, by the name they are known by; wires are chosen by thickness, not by name. */
export type Shelf = Omit<PartsOnShelf, 'wires'>;
