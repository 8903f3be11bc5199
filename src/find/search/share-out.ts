import { openWork, withPortion } from './portions.ts';
import type { Portion, SearchState, Work } from './state.ts';

/** A thread: works on something that is open in a state for a while; null where it cannot go on. */
export type Hand = (state: SearchState, what: Work) => Promise<Portion | null>;

/**
 * One search, worked on by several hands: each that is free takes what it worked on last, or else what has most steps left.
 *
 * @param wanted - asked before each portion; where it says no, portions under way are still taken in
 * @param note - called with the state after every portion
 * @returns the state when all hands rest
 */
export async function shareOut(
  begun: SearchState,
  hands: readonly Hand[],
  wanted: (state: SearchState) => boolean,
  note: (state: SearchState) => void = () => {},
): Promise<SearchState> {
  let state = begun;
  const taken = new Set<Work>();
  let waiting: (() => void)[] = [];
  const wake = (): void => {
    const woken = waiting;
    waiting = [];
    for (const go of woken) go();
  };
  const work = async (hand: Hand): Promise<void> => {
    let last: Work | null = null;
    while (wanted(state)) {
      const open = openWork(state).filter((w) => !taken.has(w));
      if (open.length === 0) {
        if (taken.size === 0) return;
        await new Promise<void>((go) => waiting.push(go));
        continue;
      }
      const what: Work = last !== null && open.includes(last) ? last : open[0]!;
      taken.add(what);
      const portion = await hand(state, what);
      // given free only with its portion in the state, lest another hand begin where this one did
      if (portion) state = withPortion(state, portion);
      taken.delete(what);
      wake();
      if (!portion) return;
      note(state);
      last = what;
    }
  };
  await Promise.all(hands.map(work));
  return state;
}
