import { type ArmState, better, type Heat, type Scored } from './state.ts';

/** Steps each structure is given in the first heat; doubled when the others fall out, and for each further race. */
const FIRST_ALLOWANCE = 4;
const MOST_ALLOWANCE = 64;
/** Share of the structures that goes on to the next heat. */
const KEPT = 1 / 3;
/** Structures left in the last heat of a race: as many as there are threads to work on them. */
const LAST = 4;

/** The heat with which a race begins: all structures that can be built. */
export const firstHeat = (arms: readonly ArmState[], round: number, lent: Scored | null): Heat => ({
  round,
  running: arms.flatMap((a, k) => (a.empty ? [] : [k])),
  allowance: Math.min(MOST_ALLOWANCE, FIRST_ALLOWANCE * 2 ** round),
  lent,
});

/** Structures that have steps left in a heat, those with most left first. */
export const unfinished = ({ running, allowance }: Heat, arms: readonly ArmState[]): readonly number[] =>
  running.filter((k) => !arms[k]!.empty && arms[k]!.taken < allowance).sort((a, b) => arms[a]!.taken - arms[b]!.taken || a - b);

/**
 * The heat after one that is over: the best third goes on with twice as many steps. When few are left the next race begins with all of them, where each
 * stood, so none is given up for good.
 *
 * Source: successive halving, K. Jamieson & A. Talwalkar, AISTATS 2016 (from memory).
 */
export function nextHeat(heat: Heat, arms: readonly ArmState[]): Heat {
  const lent = arms.map((a) => a.best).reduce(better, null);
  const left = heat.running.filter((k) => !arms[k]!.empty);
  if (left.length <= LAST) return firstHeat(arms, heat.round + 1, lent);
  const worthOf = (k: number): number => arms[k]!.best?.worth ?? -Number.MAX_VALUE;
  const running = [...left]
    .sort((a, b) => worthOf(b) - worthOf(a) || a - b)
    .slice(0, Math.max(LAST, Math.ceil(left.length * KEPT)))
    .sort((a, b) => a - b);
  return { ...heat, running, allowance: Math.min(2 * heat.allowance, MOST_ALLOWANCE), lent };
}
