import { type Arm, drawDesign, jointsOf, stepped } from './arms.ts';
import { canBeBuilt } from './build.ts';
import { Draws } from './chance.ts';
import { type Design, TAP } from './design.ts';
import { MOVES, neighboursOf } from './moves.ts';
import type { Space } from './space.ts';
import { type ArmState, better, type Scored } from './state.ts';

/** Draws from which a climb begins: the best of them. */
const STARTS = 3;
/** Share of new climbs that begin beside the best design of the structure, not anywhere. */
const BESIDE = 0.6;
const KICKS = 3;
/** Share of designs drawn anywhere that borrow from the best set of all. */
const BORROWED = 0.6;

const ALL_MOVES = MOVES.map((_, k) => k);

/**
 * One step of a structure: a first design, a way of changing it, or a new climb.
 *
 * A climb tries one way of changing the design at a time and takes the best it finds; where nothing helps, a new one begins beside the best design or anywhere.
 *
 * @param lent - best set of any structure, from which a new climb may borrow
 * @param note - tries a design
 * Source: climbs begun anew beside the best, H. R. Lourenco, O. C. Martin & T. Stutzle, Iterated Local Search, in Handbook of Metaheuristics (2003) 320.
 */
export function climb(space: Space, arm: Arm, s: ArmState, lent: Scored | null, note: (d: Design) => Scored): ArmState {
  const draws = new Draws(s.chance);
  const taken = s.taken + 1;
  if (s.current === null || s.untried.length === 0) {
    const current = start(space, arm, s, lent, draws, note);
    if (!current) return { ...s, chance: draws.state, taken, empty: s.best === null };
    return { chance: draws.state, current, best: better(s.best, current), untried: ALL_MOVES, taken, empty: false };
  }
  const move = draws.oneOf(s.untried);
  let current = s.current;
  for (const d of neighboursOf(space, arm, s.current.design, move, draws)) current = better(current, note(d))!;
  const untried = (current === s.current ? s.untried : ALL_MOVES).filter((k) => k !== move);
  return { chance: draws.state, current, best: better(s.best, current), untried, taken, empty: false };
}

function start(space: Space, arm: Arm, s: ArmState, lent: Scored | null, draws: Draws, note: (d: Design) => Scored): Scored | null {
  if (s.best && draws.uniform() < BESIDE) {
    let d = s.best.design;
    for (let k = 0; k < KICKS; k++) {
      const near = neighboursOf(space, arm, d, draws.below(MOVES.length), draws);
      if (near.length > 0) d = draws.oneOf(near);
    }
    return note(d);
  }
  let best: Scored | null = null;
  for (let k = 0; k < STARTS; k++) {
    const drawn = drawDesign(space, arm, draws);
    if (!drawn) continue;
    const lends = draws.uniform() < BORROWED;
    const made = lent && lends ? (s.best ? withListening(drawn, lent.design) : withAerial(space, arm, lent.design, drawn)) : drawn;
    best = better(best, note(canBeBuilt(space, made) ? made : drawn));
  }
  return best;
}

/** A design with detector and phones of another: what comes after the tank asks little of what comes before. */
function withListening(d: Design, { detector, earpiece, transformer, load, bypass }: Design): Design {
  return { ...d, detector, earpiece, transformer, load, bypass };
}

/** A design with the aerial of another, joined as that one is where it cannot be joined as before. */
function withAerial(space: Space, arm: Arm, d: Design, { aerial, joint, at }: Design): Design {
  return {
    ...d,
    aerial,
    ...(!jointsOf(space, arm).includes(d.joint) && { joint, at: joint === TAP ? stepped(space, d.wire, at, d.halves) : at }),
  };
}
