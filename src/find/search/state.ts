import type { Aim, Limits } from './aim.ts';
import type { Chance } from './chance.ts';
import type { Design } from './design.ts';
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
  /** steps taken */
  readonly steps: number;
  /** true where no design could be drawn: the structure cannot be built */
  readonly empty: boolean;
}

/** The race between structures: those still running in this heat, and how many steps each is given. */
export interface Heat {
  readonly round: number;
  readonly running: readonly number[];
  readonly allowance: number;
  /** place in `running`, and steps taken there in this heat */
  readonly at: number;
  readonly taken: number;
}

/** Which of several equal shares of the structures is searched here; one of one for all. */
export interface Slice {
  readonly index: number;
  readonly of: number;
}

/** All of a search in plain data: written down and taken up again it goes on as if it had not stopped. */
export interface SearchState {
  readonly seed: number;
  readonly aim: Aim;
  readonly limits: Limits;
  readonly slice: Slice;
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
