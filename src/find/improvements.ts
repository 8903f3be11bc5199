import {
  assemble,
  bestDial,
  evaluate,
  GivenError,
  type Hearing,
  listeningPoint,
  type Outcome,
  outcomeOf,
  type Reception,
  standAt,
} from '#engine';
import { aerialChanges } from './aerial-changes.ts';
import { earthWireChanges } from './earth-wire-changes.ts';
import { firstAerialChanges } from './first-aerial-changes.ts';
import { partChanges } from './part-changes.ts';
import { reachChanges } from './reach-changes.ts';
import type { Change, Shelf, Situation } from './situation.ts';
import { tankChanges } from './tank-changes.ts';

/** What one change does to one station. */
export interface Improvement {
  readonly change: Change;
  /** rise of the best band's headroom over hearing and masking [dB]; null where the station was out of reach before */
  readonly gain: number | null;
  readonly sii: number;
  readonly outcome: Outcome;
}

/** Intelligibility that may be lost to rounding; a change that costs more is no help, be it louder. */
const NOTICED = 0.005;

/** How a station stands in a situation: headroom of the best band [dB], null where the dial does not reach. */
interface Standing {
  /** [rad] */
  readonly angle: number | null;
  /** capacitance by which the dial misses [F], null where it reaches */
  readonly missing: number | null;
  readonly headroom: number | null;
  readonly sii: number;
  readonly outcome: Outcome;
}

/**
 * Every change a builder can make, tried by evaluating the changed set anew, the dial set afresh; best first.
 *
 * Only what helps is returned, of each change the better way to do it. The gain is that of the band heard best, over threshold and masking alike, so that a quieter
 * room and a stronger signal are weighed on one scale.
 *
 * @param index - station of the place
 */
export function improvements(now: Situation, index: number, shelf: Shelf): readonly Improvement[] {
  const steps = improvementSteps(now, index, shelf);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same change by change, so that others may work in between or give it up; yields the share of changes tried, 0 to 1. */
export function* improvementSteps(now: Situation, index: number, shelf: Shelf): Generator<number, readonly Improvement[]> {
  const reception = standAt(now.place, assemble(now.set, now.listener));
  const before = standing(reception, index, null);
  const signal = reception.signals[index]!;
  const changes = [
    ...aerialChanges(now, signal),
    ...firstAerialChanges(now, signal),
    ...earthWireChanges(now, signal),
    ...tankChanges(now, shelf),
    ...reachChanges(now, before.missing),
    ...partChanges(now, shelf),
  ];
  const out = new Map<string, Improvement>();
  for (const [tries, change] of changes.entries()) {
    yield tries / changes.length;
    const after = tried(change, index, before.angle);
    if (after === null || after.headroom === null) continue;
    const gain = before.headroom === null ? null : after.headroom - before.headroom;
    if (gain !== null && (gain < 0.1 || after.sii < before.sii - NOTICED)) continue;
    const found: Improvement = { change, gain, sii: after.sii, outcome: after.outcome };
    const other = out.get(change.key);
    if (!other || worth(found) > worth(other)) out.set(change.key, found);
  }
  return [...out.values()].sort((a, b) => worth(b) - worth(a));
}

const worth = (i: Improvement): number => i.gain ?? i.sii;

/** Null where the change makes something that cannot be built: it is then no advice. */
function tried({ situation: s, keepsDial }: Change, index: number, angle: number | null): Standing | null {
  try {
    return standing(standAt(s.place, assemble(s.set, s.listener)), index, keepsDial ? angle : null);
  } catch (e) {
    if (e instanceof GivenError) return null;
    throw e;
  }
}

/** @param kept - angle at which the dial is left [rad]; null to set it afresh */
function standing(reception: Reception, index: number, kept: number | null): Standing {
  if (kept !== null) return heard(kept, evaluate(reception, index, kept).hearing);
  const dial = bestDial(reception, index);
  if ('missing' in dial) return { angle: null, missing: dial.missing, headroom: null, sii: 0, outcome: 'out-of-reach' };
  const { at, evaluation } = listeningPoint(reception, index, dial);
  return heard(at.angle, evaluation.hearing);
}

const heard = (angle: number, hearing: Hearing): Standing => ({
  angle,
  missing: null,
  headroom: Math.max(...hearing.headroom),
  sii: hearing.sii,
  outcome: outcomeOf(hearing),
});

/** The best change of each stage, best first: five earpieces in a row would hide what the aerial could do. */
export function bestByStage(all: readonly Improvement[]): readonly Improvement[] {
  const seen = new Set<string>();
  return all.filter(({ change }) => {
    const stage = change.key.split('.')[0]!;
    return seen.has(stage) ? false : seen.add(stage);
  });
}
