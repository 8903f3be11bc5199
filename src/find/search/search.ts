import { type Aim, BEYOND, type Limits, USUAL_LIMITS, worth } from './aim.ts';
import { type Arm, armsOf, drawDesign } from './arms.ts';
import { canBeBuilt } from './build.ts';
import { chanceFrom, Draws } from './chance.ts';
import { type Design, keyOf } from './design.ts';
import { signatureOf } from './difference.ts';
import { smallSpace } from './every-design.ts';
import { type FrontPoint, frontPoint, withPoint } from './front.ts';
import { MOVES, neighboursOf } from './moves.ts';
import type { Space } from './space.ts';
import type { ArmState, Heat, Scored, SearchState, Slice } from './state.ts';
import { Trials } from './trial.ts';

export interface SearchOptions {
  readonly aim: Aim;
  readonly limits?: Limits;
  readonly seed: number;
  readonly slice?: Slice;
  /** spaces no larger are gone through from end to end; 0: never */
  readonly small?: number;
}

/** Spaces up to this size are gone through whole: some seconds. */
const SMALL = 1500;
/** Steps each structure is given in the first heat; doubled when the others fall out, and again for the next race. */
const FIRST_ALLOWANCE = 3;
const MOST_ALLOWANCE = 96;
/** Share of the structures that goes on to the next heat. */
const KEPT = 1 / 3;
/** Structures left in the last heat of a race. */
const LAST = 2;
/** Draws from which a climb begins: the best of them. */
const STARTS = 3;
/** Share of new climbs that begin beside the best design of the structure, not anywhere. */
const BESIDE = 0.6;
const KICKS = 3;
/** Share of designs drawn anywhere that take detector and phones from the best set of all: what comes after the tank asks little of what comes before. */
const BORROWED = 0.6;
/** Worth of a set that the engine refuses: a number, since a state is written as JSON. */
const REFUSED = -1e9;
/** Combinations of parts remembered. */
const MOST_KEPT = 400;

/** Beginning of a search; structures are dealt out in turn where several share it. */
export function beginSearch(
  space: Space,
  { aim, limits = USUAL_LIMITS, seed, slice = { index: 0, of: 1 }, small = SMALL }: SearchOptions,
): SearchState {
  const whole = slice.of === 1 && small > 0 ? smallSpace(space, small) : null;
  const arms = armsOf(space).map(
    (_, k): ArmState => ({
      chance: chanceFrom(seed, k),
      current: null,
      best: null,
      untried: [],
      steps: 0,
      empty: k % slice.of !== slice.index,
    }),
  );
  return {
    seed,
    aim,
    limits,
    slice,
    trials: 0,
    arms,
    heat: firstHeat(arms, 0),
    through: whole ? 0 : null,
    done: whole !== null && whole.length === 0,
    best: {},
    front: [],
  };
}

const firstHeat = (arms: readonly ArmState[], round: number): Heat => ({
  round,
  running: arms.flatMap((a, k) => (a.empty ? [] : [k])),
  allowance: Math.min(MOST_ALLOWANCE, FIRST_ALLOWANCE * 2 ** round),
  at: 0,
  taken: 0,
});

/**
 * A search at work. It holds what can be made again from the space; all that matters stands in `state`, after every step.
 *
 * Structures (kind of aerial, its joint, tuning capacitor) race: in each heat each is searched for some steps, the best third goes on with twice as
 * many. When two are left the next race begins with all of them, where each stood, so none is given up for good. Within a structure a
 * climb tries one way of changing the design at a time and takes the best it finds; where nothing helps, a new climb begins beside the best design or anywhere.
 * Small spaces are gone through whole, and the answer is then the best there is.
 *
 * Source: successive halving, K. Jamieson & A. Talwalkar, AISTATS 2016 (from memory); climbs begun anew beside the best, H. R. Lourenco, O. C. Martin & T. Stutzle,
 * Iterated Local Search, in Handbook of Metaheuristics (2003) 320.
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
    while (!this.state.done && this.state.trials < until)
      this.state = this.state.through === null ? this.#race(this.state) : this.#walk(this.state);
    return this.state;
  }

  #walk(s: SearchState): SearchState {
    this.#whole ??= [...smallSpace(this.space, Number.POSITIVE_INFINITY)!];
    const notes = new Notes(this, s);
    notes.note(this.#whole[s.through!]!);
    const through = s.through! + 1;
    return { ...notes.into(s), through, done: through >= this.#whole.length };
  }

  #race(s: SearchState): SearchState {
    const { heat } = s;
    if (heat.running.length === 0) return { ...s, done: true };
    const k = heat.running[heat.at]!;
    const notes = new Notes(this, s);
    const arm = this.#climb(this.#arms[k]!, s.arms[k]!, notes);
    const arms = s.arms.map((a, i) => (i === k ? arm : a));
    return { ...notes.into(s), arms, heat: afterStep(heat, arms, arm.empty) };
  }

  /** One step of a structure: a first design, a way of changing it, or a new climb. */
  #climb(arm: Arm, s: ArmState, notes: Notes): ArmState {
    const draws = new Draws(s.chance);
    const steps = s.steps + 1;
    if (s.current === null || s.untried.length === 0) {
      const current = this.#start(arm, s, draws, notes);
      if (!current) return { ...s, chance: draws.state, steps, empty: s.best === null };
      return { chance: draws.state, current, best: better(s.best, current), untried: MOVES.map((_, k) => k), steps, empty: false };
    }
    const move = draws.oneOf(s.untried);
    let current = s.current;
    for (const d of neighboursOf(this.space, arm, s.current.design, move, draws)) current = better(current, notes.note(d))!;
    const rose = current !== s.current;
    const untried = (rose ? MOVES.map((_, k) => k) : s.untried).filter((k) => k !== move);
    return { chance: draws.state, current, best: better(s.best, current), untried, steps, empty: false };
  }

  #start(arm: Arm, s: ArmState, draws: Draws, notes: Notes): Scored | null {
    if (s.best && draws.uniform() < BESIDE) {
      let d = s.best.design;
      for (let k = 0; k < KICKS; k++) {
        const near = neighboursOf(this.space, arm, d, draws.below(MOVES.length), draws);
        if (near.length > 0) d = draws.oneOf(near);
      }
      return notes.note(d);
    }
    let best: Scored | null = null;
    for (let k = 0; k < STARTS; k++) {
      const drawn = drawDesign(this.space, arm, draws);
      if (!drawn) continue;
      const lent = draws.uniform() < BORROWED ? this.#withRestOfBest(drawn) : drawn;
      best = better(best, notes.note(canBeBuilt(this.space, lent) ? lent : drawn));
    }
    return best;
  }

  /** With the detector and phones of the best set of any structure. */
  #withRestOfBest(d: Design): Design {
    const top = Object.values(this.state.best).reduce<Scored | null>(better, null);
    if (!top) return d;
    const { detector, earpiece, transformer, load, bypass } = top.design;
    return { ...d, detector, earpiece, transformer, load, bypass };
  }
}

/** The better of two; of equals the one whose numbers come first, so that no order of trying matters. */
function better(a: Scored | null, b: Scored | null): Scored | null {
  if (!a || !b) return a ?? b;
  if (a.worth !== b.worth) return a.worth > b.worth ? a : b;
  return keyOf(a.design) <= keyOf(b.design) ? a : b;
}

function afterStep(heat: Heat, arms: readonly ArmState[], fell: boolean): Heat {
  const taken = heat.taken + 1;
  if (taken < heat.allowance && !fell) return { ...heat, taken };
  if (heat.at + 1 < heat.running.length) return { ...heat, at: heat.at + 1, taken: 0 };
  const left = heat.running.filter((k) => !arms[k]!.empty);
  if (left.length <= LAST) return firstHeat(arms, heat.round + 1);
  const worthOf = (k: number): number => arms[k]!.best?.worth ?? REFUSED;
  const running = [...left]
    .sort((a, b) => worthOf(b) - worthOf(a) || a - b)
    .slice(0, Math.max(LAST, Math.ceil(left.length * KEPT)))
    .sort((a, b) => a - b);
  return { ...heat, running, allowance: Math.min(2 * heat.allowance, 4 * MOST_ALLOWANCE), at: 0, taken: 0 };
}

/** What one step adds to a state: trials, the best of each combination of parts, the front. */
class Notes {
  readonly #search: Search;
  readonly #aim: Aim;
  readonly #limits: Limits;
  #trials = 0;
  #best: Record<string, Scored> | null = null;
  #known: Readonly<Record<string, Scored>>;
  #front: readonly FrontPoint[];

  constructor(search: Search, s: SearchState) {
    this.#search = search;
    this.#aim = s.aim;
    this.#limits = s.limits;
    this.#known = s.best;
    this.#front = s.front;
  }

  note(design: Design): Scored {
    this.#trials++;
    const { space, trials } = this.#search;
    const trial = trials.of(design);
    if (!trial) return { design, worth: REFUSED };
    const scored = { design, worth: worth(space, trial, this.#aim, this.#limits) };
    if (scored.worth <= -BEYOND) return scored;
    const signature = signatureOf(space, design);
    const known = (this.#best ?? this.#known)[signature] ?? null;
    if (better(known, scored) !== known) {
      this.#best ??= { ...this.#known };
      this.#best[signature] = scored;
    }
    const point = frontPoint(design, trial);
    if (point) this.#front = withPoint(this.#front, point);
    return scored;
  }

  into(s: SearchState): SearchState {
    return { ...s, trials: s.trials + this.#trials, best: this.#best ? kept(this.#best) : s.best, front: this.#front };
  }
}

function kept(best: Record<string, Scored>): Record<string, Scored> {
  const entries = Object.entries(best);
  if (entries.length <= MOST_KEPT) return best;
  return Object.fromEntries(entries.sort(([, a], [, b]) => (better(a, b) === a ? -1 : 1)).slice(0, MOST_KEPT));
}

/** States of all slices of one search as one: the best of each combination, and the front of all fronts; the same in whatever order they came. */
export function mergeSlices(states: readonly SearchState[]): SearchState {
  const ordered = [...states].sort((a, b) => a.slice.index - b.slice.index);
  const first = ordered[0]!;
  const best: Record<string, Scored> = {};
  for (const s of ordered) for (const [key, scored] of Object.entries(s.best)) best[key] = better(best[key] ?? null, scored)!;
  return {
    ...first,
    slice: { index: 0, of: 1 },
    trials: ordered.reduce((sum, s) => sum + s.trials, 0),
    arms: first.arms.map((_, k) => ordered.find((s) => k % s.slice.of === s.slice.index)?.arms[k] ?? first.arms[k]!),
    done: ordered.every((s) => s.done),
    best: kept(best),
    front: ordered.flatMap((s) => s.front).reduce(withPoint, [] as readonly FrontPoint[]),
  };
}
