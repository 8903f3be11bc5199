import { assemble, bestDial, evaluate, GivenError, type Outcome, outcomeOf, type Reception, standAt } from '#engine';
import { aerialChanges } from './aerial-changes.ts';
import { partChanges } from './part-changes.ts';
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

/** How a station stands in a situation: headroom of the best band [dB], null where the dial does not reach. */
interface Standing {
  /** [rad] */
  readonly angle: number | null;
  readonly headroom: number | null;
  readonly sii: number;
  readonly outcome: Outcome;
}

/**
 * Every change a builder can make, tried by evaluating the changed set anew, the dial set afresh; best first.
 *
 * Only what helps is returned. The gain is that of the band heard best, over threshold and masking alike, so that a quieter
 * room and a stronger signal are weighed on one scale.
 *
 * @param index - station of the place
 */
export function improvements(now: Situation, index: number, shelf: Shelf): readonly Improvement[] {
  const reception = standAt(now.place, assemble(now.set, now.listener));
  const before = standing(reception, index, null);
  const changes = [...aerialChanges(now, reception.signals[index]!), ...tankChanges(now), ...partChanges(now, shelf)];
  const out: Improvement[] = [];
  for (const change of changes) {
    const after = tried(change, index, before.angle);
    if (after === null || after.headroom === null) continue;
    const gain = before.headroom === null ? null : after.headroom - before.headroom;
    if (gain !== null && gain < 0.1) continue;
    out.push({ change, gain, sii: after.sii, outcome: after.outcome });
  }
  return out.sort((a, b) => (b.gain ?? b.sii) - (a.gain ?? a.sii));
}

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
  let angle = kept;
  if (angle === null) {
    const dial = bestDial(reception, index);
    if ('missing' in dial) return { angle: null, headroom: null, sii: 0, outcome: 'out-of-reach' };
    angle = dial.points[0]!.angle;
  }
  const { hearing } = evaluate(reception, index, angle);
  return { angle, headroom: Math.max(...hearing.headroom), sii: hearing.sii, outcome: outcomeOf(hearing) };
}

/** The best change of each stage, best first: five earpieces in a row would hide what the aerial could do. */
export function bestByStage(all: readonly Improvement[]): readonly Improvement[] {
  const seen = new Set<string>();
  return all.filter(({ change }) => {
    const stage = change.key.split('.')[0]!;
    return seen.has(stage) ? false : seen.add(stage);
  });
}
