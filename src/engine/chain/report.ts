import type { Place } from '../place/index.ts';
import { type BestDial, bestDial, type FlankPoint, flankPointAt } from './best-dial.ts';
import type { Listener, SetDescription } from './description.ts';
import { type Evaluation, evaluate } from './evaluate.ts';
import { ladder, type Rung } from './ladder.ts';
import { type ListeningPoint, listeningPoint } from './listening-point.ts';
import { type PowerBudget, powerBudget } from './power-budget.ts';
import { assemble, type Receiver, type Reception, standAt } from './receiver.ts';
import { type Sharpness, sharpness } from './sharpness.ts';
import type { Signal } from './signal.ts';
import type { OutOfReach } from './tuning.ts';
import { type Verdict, verdict } from './verdict.ts';

/** One station through the set, at the best place on the dial. */
export interface StationReport {
  readonly station: string;
  readonly signal: Signal;
  /** where to leave the dial, or by how much the dial misses */
  readonly dial: BestDial | OutOfReach;
  /** null where the dial does not reach */
  readonly heard: Heard | null;
  readonly verdict: Verdict;
  /** where a model is at the edge of what it holds for, or the set does something a builder should know */
  readonly remarks: readonly string[];
}

export interface Heard {
  readonly at: FlankPoint;
  readonly evaluation: Evaluation;
  readonly budget: PowerBudget;
  readonly sharpness: Sharpness | null;
  readonly ladder: readonly Rung[];
}

/** How far the field is lowered to see how steeply the sound follows it [dB]. */
const WEAKER = 6;

/** Every station of a place through a set: from mast to ear. */
export function report(place: Place, set: SetDescription, listener: Listener): readonly StationReport[] {
  const reception = standAt(place, assemble(set, listener));
  return reception.signals.map((_, k) => reportStation(reception, k));
}

export function reportStation(reception: Reception, index: number): StationReport {
  const dial = bestDial(reception, index);
  if ('missing' in dial) return outOfReach(reception, index, dial);
  return reportPoint(reception, index, dial, listeningPoint(reception, index, dial));
}

/**
 * One station with the dial left at an angle.
 *
 * @param dial - where the station is best, which does not depend on the angle: found once for many
 * @param angle - [rad]
 */
export function reportAt(reception: Reception, index: number, dial: BestDial | OutOfReach, angle: number): StationReport {
  if ('missing' in dial) return outOfReach(reception, index, dial);
  const evaluation = evaluate(reception, index, angle);
  return reportPoint(reception, index, dial, { at: flankPointAt(reception, dial, evaluation), evaluation });
}

function outOfReach(reception: Reception, index: number, dial: OutOfReach): StationReport {
  const signal = reception.signals[index]!;
  const remarks = standingRemarks(reception.receiver, signal);
  return { station: signal.received.station.name, signal, dial, heard: null, verdict: OUT_OF_REACH, remarks };
}

function reportPoint(reception: Reception, index: number, dial: BestDial, { at, evaluation }: ListeningPoint): StationReport {
  const { receiver, signals } = reception;
  const signal = signals[index]!;
  const budget = powerBudget(receiver, signal, at.angle, evaluation.rest);
  const rungs = ladder(receiver, signal, evaluation, budget);
  const weaker = evaluate(weaken(reception, index, WEAKER), index, at.angle);
  return {
    station: signal.received.station.name,
    signal,
    dial,
    heard: { at, evaluation, budget, sharpness: sharpness(receiver, signal, at.angle, evaluation.rest), ladder: rungs },
    verdict: verdict(
      receiver.listener.ear,
      evaluation.sound,
      evaluation,
      { hearing: weaker.hearing, step: WEAKER },
      signal.received.spread,
      receiver.set.phones.earpiece.sensitivitySpread,
      rungs,
    ),
    remarks: [...standingRemarks(receiver, signal), ...swingRemarks(receiver, evaluation)],
  };
}

/** What the stages say of themselves at this carrier, whatever the level. */
function standingRemarks({ aerial, tank, detector, phones }: Receiver, { received }: Signal): readonly string[] {
  return [
    ...received.remarks,
    ...(aerial?.remarks(received.station.frequency) ?? []),
    ...tank.remarks,
    ...detector.remarks,
    ...phones.remarks,
  ];
}

/** What the detector's swing at this level leads to: out of a measured table, or into breakdown. */
function swingRemarks({ detector }: Receiver, { rest }: Evaluation): readonly string[] {
  const remark = detector.remarkAt(rest.amplitude, rest.output);
  return remark === null ? [] : [remark];
}

/** The same reception with one station's field lowered by some dB. */
export function weaken(reception: Reception, index: number, decibels: number): Reception {
  const k = 10 ** (-decibels / 20);
  return { ...reception, signals: reception.signals.map((s, i) => (i === index ? { ...s, emf: s.emf * k } : s)) };
}

const OUT_OF_REACH: Verdict = {
  outcome: 'out-of-reach',
  limit: 'will-not-tune',
  costliest: null,
  odds: 0,
  level: null,
  loudnessLevel: null,
  sii: 0,
  loud: false,
};
