import type { Aim, Limits } from './aim.ts';
import type { Chance } from './chance.ts';
import { type Design, keyOf } from './design.ts';
import type { FrontPoint } from './front.ts';

/** A design and its worth by the aim, in points. */
export interface Scored {
  readonly design: Design;
  readonly worth: number;
}

/** How far the search of one structure has come. */
export interface ArmState {
  readonly chance: Chance;
  /** where the climb stands, null before the first design was met */
  readonly current: Scored | null;
  readonly best: Scored | null;
  /** moves not yet tried since `current` last rose */
  readonly untried: readonly number[];
  /** steps taken in this heat */
  readonly taken: number;
  /** true where no design could be drawn: the structure cannot be built */
  readonly empty: boolean;
}

/** The race between structures: those still running in this heat, and how many steps each is given. */
export interface Heat {
  readonly round: number;
  readonly running: readonly number[];
  readonly allowance: number;
  /** best set of any structure when the heat began, from which others may borrow */
  readonly lent: Scored | null;
}

/** All of a search in plain data: written down and taken up again it goes on as if it had not stopped. */
export interface SearchState {
  readonly seed: number;
  readonly aim: Aim;
  readonly limits: Limits;
  /** trials asked for */
  readonly trials: number;
  readonly arms: readonly ArmState[];
  readonly heat: Heat;
  /** where a small space is gone through from end to end: the next design; null for a race */
  readonly through: number | null;
  readonly done: boolean;
  /** the best of each combination of parts, by its signature */
  readonly best: Readonly<Record<string, Scored>>;
  readonly front: readonly FrontPoint[];
}

/** What one thread can work on: a structure, by its number, or the way through a small space. */
export type Work = number | 'through';

/** What one thread has done for a search: some steps of one structure, or of the way through a small space. */
export interface Portion {
  /** what was worked on, and how it stands after: a structure, or the next design of a small space */
  readonly of: { readonly arm: number; readonly state: ArmState } | { readonly through: number; readonly done: boolean };
  readonly trials: number;
  /** the best of each combination of parts met */
  readonly best: Readonly<Record<string, Scored>>;
  readonly front: readonly FrontPoint[];
}

/** The better of two; of equals the one whose numbers come first, so that no order of trying matters. */
export function better(a: Scored | null, b: Scored | null): Scored | null {
  if (!a || !b) return a ?? b;
  if (a.worth !== b.worth) return a.worth > b.worth ? a : b;
  return keyOf(a.design) <= keyOf(b.design) ? a : b;
}
