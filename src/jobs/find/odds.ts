import { beginSearch, type Design, found, runOfFound, Search, type Tolerance } from '#find';
import type { JobContext } from '#rpc';
import { oddsSentence } from '#tell';
import type { Answer } from '../document.ts';
import { type FindGiven, onDrawer } from './laid-out.ts';

/** How a set does as it comes from the hand, at the station it is heard best at. */
export interface FoundOdds extends Pick<Tolerance, 'heard' | 'understood' | 'covers' | 'samples'> {
  readonly sentence: string;
}

export interface OddsGiven extends FindGiven {
  readonly design: Design;
  /** sets built on paper */
  readonly samples: number;
}

/** Sets built between two looks whether they are still wanted. */
const PORTION = 8;

export function findOdds(given: OddsGiven, context: JobContext): Promise<Answer<FoundOdds>> {
  return onDrawer(given, async ({ space, trials }) => {
    const search = new Search(space, beginSearch(space, { ...given.asked, small: 0 }), trials);
    const f = found(search, given.design);
    const run = runOfFound(space, f);
    while (run.built.length < given.samples) {
      run.step(Math.min(PORTION, given.samples - run.built.length));
      await context.step(run.built.length / given.samples);
    }
    const { heard, understood, covers, samples } = run.result();
    return {
      heard,
      understood,
      covers,
      samples,
      sentence: oddsSentence(space.place.stations[run.bench.meant.station]!.name, { heard, understood, covers, samples }),
    };
  });
}
