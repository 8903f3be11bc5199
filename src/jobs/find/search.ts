import { armsOf, beginSearch, type Portion, Search, type SearchState, type Work } from '#find';
import type { Answer } from '../document.ts';
import { type FindGiven, onDrawer } from './laid-out.ts';

/** A search that has not begun, and how large it would be. */
export interface FindPlan {
  /** kinds of aerial that can be put together */
  readonly structures: number;
  /** so few sets that all of them are tried, by one thread */
  readonly whole: boolean;
  readonly state: SearchState;
}

export function findPlan(given: FindGiven): Promise<Answer<FindPlan>> {
  return onDrawer(given, ({ space }) => {
    const state = beginSearch(space, given.asked);
    return { structures: armsOf(space).length, whole: state.through !== null, state };
  });
}

export interface PortionGiven extends FindGiven {
  /** where the search stands */
  readonly state: SearchState;
  readonly what: Work;
  /** after which it hands over what it has [ms] */
  readonly milliseconds: number;
}

/** Works on one structure of a search for some time; what comes back goes into the state by `withPortion`. */
export function findPortion({ state, what, milliseconds, ...given }: PortionGiven): Promise<Answer<Portion>> {
  return onDrawer(given, ({ space, trials }) => {
    const until = Date.now() + milliseconds;
    return new Search(space, state, trials).portion(what, () => Date.now() < until);
  });
}
