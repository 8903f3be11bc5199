import { withPoint } from './front.ts';
import { nextHeat, unfinished } from './heats.ts';
import { better, type Portion, type Scored, type SearchState, type Work } from './state.ts';

/** Combinations of parts remembered. */
const MOST_KEPT = 400;

/** What of a search can be worked on now, each by another thread: structures with steps left in this heat; of a small space only the one way through. */
export function openWork(s: SearchState): readonly Work[] {
  if (s.done) return [];
  return s.through === null ? unfinished(s.heat, s.arms) : ['through'];
}

/** Whether a heat has just begun, or all is done: places at which a search stands alike by however many threads it came there. */
export const betweenHeats = (s: SearchState): boolean => s.done || s.through !== null || s.arms.every((a) => a.taken === 0);

/** A state without what a portion is worked out without, to be sent to another thread. */
export const toWorkFrom = (s: SearchState): SearchState => ({ ...s, best: {}, front: [] });

/**
 * The state with a portion in it that was worked on from it, here or in another thread. When the last structure has had its steps the next heat begins.
 *
 * Structures of one heat know nothing of each other, so that the state after it is the same in whatever order and by however many threads they were worked on.
 */
export function withPortion(s: SearchState, { of, trials, best, front }: Portion): SearchState {
  const noted = {
    ...s,
    trials: s.trials + trials,
    best: Object.keys(best).length > 0 ? bestOf(s.best, best) : s.best,
    front: front.reduce(withPoint, s.front),
  };
  if ('through' in of) return { ...noted, through: of.through, done: of.done };
  const arms = s.arms.map((a, k) => (k === of.arm ? of.state : a));
  if (unfinished(s.heat, arms).length > 0) return { ...noted, arms };
  const heat = nextHeat(s.heat, arms);
  return { ...noted, arms: arms.map((a) => ({ ...a, taken: 0 })), heat, done: heat.running.length === 0 };
}

/** The best of each combination out of two lists of them. */
function bestOf(a: Readonly<Record<string, Scored>>, b: Readonly<Record<string, Scored>>): Readonly<Record<string, Scored>> {
  const out = { ...a };
  for (const [key, scored] of Object.entries(b)) out[key] = better(out[key] ?? null, scored)!;
  const entries = Object.entries(out);
  if (entries.length <= MOST_KEPT) return out;
  return Object.fromEntries(entries.sort(([, x], [, y]) => (better(x, y) === x ? -1 : 1)).slice(0, MOST_KEPT));
}
