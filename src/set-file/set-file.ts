import type {
  AerialDescription,
  DetectorDescription,
  EarDescription,
  PhonesDescription,
  Place,
  ProgrammeDescription,
  TankDescription,
} from '#engine';
import type { DrawerForm } from './forms/drawer-form.ts';
import type { Mark } from './json/positions.ts';
import type { Problem } from './problem.ts';

/** A person's own parts, as their file gives them; rods and formers in SI units. */
export type Drawer = DrawerForm;

/** Everything a set file says, in SI units, with what it leaves out filled in. */
export interface SetFile {
  readonly name: string;
  readonly notes: string;
  readonly place?: Place;
  readonly aerial: AerialDescription;
  readonly tank: TankDescription;
  readonly detector: DetectorDescription;
  readonly phones: PhonesDescription;
  readonly ear: EarDescription;
  readonly programme: ProgrammeDescription;
  readonly drawer: Drawer;
}

/** What a search through the drawer needs of a file: where, who, and the parts; the file need not hold a set. */
export interface DrawerFile {
  readonly name: string;
  readonly place: Place;
  readonly ear: EarDescription;
  readonly programme: ProgrammeDescription;
  readonly drawer: Drawer;
}

/** Likely range of one value of a part, in SI units. */
export interface Band {
  readonly key: string;
  readonly low: number;
  readonly high: number;
  /** unit of the two numbers */
  readonly unit: string;
}

/** A part that a file names: what it is, where its values are from, how far they may be out. */
export interface UsedPart {
  /** where it is named: `phones.earpiece` */
  readonly path: string;
  readonly name: string;
  readonly title: string;
  readonly source: string;
  readonly estimate: boolean;
  readonly band: readonly Band[];
}

/** Where things stood, for complaints that come later. */
export interface Source {
  /** other files that were read */
  readonly files: readonly string[];
  /** the place of a path of the description, such as a stage of the engine names it, or of the innermost thing around it */
  locate(path: string): Mark;
}

export interface ReadOptions {
  /** text of another file named in this one, by the name that stands there (beside this file); throws where there is none */
  readonly read?: (path: string) => string;
}

export type Outcome<T> = ({ readonly ok: true } & T) | { readonly ok: false; readonly problems: readonly Problem[] };
