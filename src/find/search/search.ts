import { type Aim, type Limits, USUAL_LIMITS } from './aim.ts';
import { type Arm, armsOf } from './arms.ts';
import { chanceFrom } from './chance.ts';
import { climb } from './climb.ts';
import type { Design } from './design.ts';
import { smallSpace } from './every-design.ts';
import { firstHeat } from './heats.ts';
import { Notes } from './notes.ts';
import { openWork, withPortion } from './portions.ts';
import type { Space } from './space.ts';
import type { ArmState, Portion, SearchState, Work } from './state.ts';
import { Trials } from './trial.ts';

export interface SearchOptions {
  readonly aim: Aim;
  readonly limits?: Limits;
  readonly seed: number;
  /** spaces no larger are gone through from end to end; 0: never */
  readonly small?: number;
}

/** Spaces up to this size are gone through whole: some seconds. */
const SMALL = 1500;

/** Beginning of a search. */
export function beginSearch(space: Space, { aim, limits = USUAL_LIMITS, seed, small = SMALL }: SearchOptions): SearchState {
  const whole = small > 0 ? smallSpace(space, small) : null;
  const arms = armsOf(space).map(
    (_, k): ArmState => ({ chance: chanceFrom(seed, k), current: null, best: null, untried: [], taken: 0, empty: false }),
  );
  return {
    seed,
    aim,
    limits,
    trials: 0,
    arms,
    heat: firstHeat(arms, 0, null),
    through: whole ? 0 : null,
    done: whole ? whole.length === 0 : arms.length === 0,
    best: {},
    front: [],
  };
}

/**
 * A search at work. It holds what can be made again from the space; all that matters stands in `state`, after every step.
 *
 * Structures (kinds of aerial) race, heat after heat; within a structure a climb changes everything else. Small spaces are gone through whole, and the
 * answer is then the best there is.
 */
export class Search {
  state: SearchState;
  readonly space: Space;
  readonly trials: Trials;
  readonly #arms: readonly Arm[];
  #whole: readonly Design[] | null = null;

  /** @param trials - of the same space, to share what was tried before */
  constructor(space: Space, state: SearchState, trials = new Trials(space)) {
    this.space = space;
    this.state = state;
    this.trials = trials;
    this.#arms = armsOf(space);
  }

  /** Goes on for some trials, or a few more to end the step; the state then holds the best so far. */
  step(budget: number): SearchState {
    const until = this.state.trials + budget;
    while (!this.state.done && this.state.trials < until) {
      const [next] = openWork(this.state);
      this.state = withPortion(
        this.state,
        this.portion(next!, () => false),
      );
    }
    return this.state;
  }

  /**
   * Works on one thing that is open; the state stays as it is.
   *
   * @param more - asked after each step, given the trials so far; the portion ends where it says no, or with the heat
   */
  portion(what: Work, more: (trials: number) => boolean): Portion {
    const { aim, limits, heat, arms, through } = this.state;
    const notes = new Notes(this.space, this.trials, aim, limits);
    const had = (of: Portion['of']): Portion => ({ of, trials: notes.trials, best: notes.best, front: notes.front });
    if (what === 'through') {
      const whole = this.#all();
      let next = through!;
      do notes.note(whole[next++]!);
      while (next < whole.length && more(notes.trials));
      return had({ through: next, done: next >= whole.length });
    }
    let state = arms[what]!;
    do state = climb(this.space, this.#arms[what]!, state, heat.lent, (d) => notes.note(d));
    while (!state.empty && state.taken < heat.allowance && more(notes.trials));
    return had({ arm: what, state });
  }

  #all(): readonly Design[] {
    this.#whole ??= smallSpace(this.space, Number.POSITIVE_INFINITY)!;
    return this.#whole;
  }
}
