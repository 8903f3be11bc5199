import { armsOf, beginSearch, Search, type SearchState, type Slice } from '#find';
import type { JobContext } from '#rpc';
import type { Answer } from '../document.ts';
import { type FindGiven, onDrawer } from './laid-out.ts';

/** How large a search would be. */
export interface FindPlan {
  /** kinds of aerial, ways to join it and capacitors that can be put together */
  readonly structures: number;
  /** so few sets that all of them are tried, by one thread */
  readonly whole: boolean;
}

export function findPlan(given: FindGiven): Promise<Answer<FindPlan>> {
  return onDrawer(given, ({ space }) => ({
    structures: armsOf(space).length,
    whole: beginSearch(space, given.asked).through !== null,
  }));
}

export interface SliceGiven extends FindGiven {
  readonly slice: Slice;
  /** where the search stands; null to begin */
  readonly state: SearchState | null;
  /** after which it hands over where it stands [ms] */
  readonly milliseconds: number;
}

/** Trials between two looks at the clock. */
const TRIALS = 5;

/** One share of a search, for some time. What comes back is all that is needed to go on, here or in another thread. */
export function findSlice(given: SliceGiven, context: JobContext): Promise<Answer<SearchState>> {
  return onDrawer(given, async ({ space, trials }) => {
    const until = Date.now() + given.milliseconds;
    const search = new Search(space, given.state ?? beginSearch(space, { ...given.asked, slice: given.slice }), trials);
    while (!search.state.done && Date.now() < until) {
      search.step(TRIALS);
      await context.step();
    }
    return search.state;
  });
}
