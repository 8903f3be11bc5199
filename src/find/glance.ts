import {
  dialSlope,
  type Evaluation,
  evaluate,
  type Outcome,
  outcomeOf,
  type Reception,
  type Resonance,
  resonance,
  type StationReport,
  Tuned,
} from '#engine';
import type { BandEnd } from './search/covering.ts';

/** One station through a set, the dial set quickly. */
export interface Glance {
  /** index of the station */
  readonly station: number;
  /** capacitance by which the dial misses [F], null where it reaches; the rest then says nothing was heard */
  readonly missing: number | null;
  /** where the dial stands for resonance, as a share of its rotation, 0 to 1 */
  readonly place: number;
  /** how fast the dial runs there [Hz per degree] */
  readonly hertzPerDegree: number;
  /** level of the best band over what the ear needs there [dB] */
  readonly headroom: number;
  readonly sii: number;
  /** distortion of programme, relative to it [dB] */
  readonly distortion: number;
  readonly outcome: Outcome;
  /** both ends of a band that is wanted, on the dial of the same set */
  readonly band?: readonly BandEnd[];
}

/** Headroom of a set that hears nothing [dB]. */
export const NOTHING = -200;
const DEGREE = Math.PI / 180;
/** Detunings in half bandwidths at rest from which the climb to the loudest begins, and the ratio of its steps; bounds as the full search has them. */
const FIRST = 0.7;
const RATIO = 1.5;
const NEAREST = 0.1;
const FARTHEST = 500;

/**
 * What the full search of the dial finds, in a fifth of its time: one flank is climbed in steps, the top read off a parabola, and the other flank taken as its mirror image.
 *
 * Holds for: headroom within 0.2 dB of `bestDial` with `listeningPoint`, where the two flanks mirror each other (the tests say how near).
 */
export function glance(reception: Reception, index: number): Glance {
  const { receiver, signals } = reception;
  const signal = signals[index]!;
  const r = resonance(receiver, signal);
  if ('missing' in r) return outOfReach(index, r.missing);
  const { tank } = receiver;
  const neighbours = signals.length > 1;
  const heard = angles(reception, index, r).map((angle) => evaluate(reception, index, angle, neighbours));
  const best = heard.reduce((a, b) => (better(b, a) ? b : a));
  return {
    station: index,
    missing: null,
    place: r.angle / tank.rotation,
    hertzPerDegree: Math.abs(dialSlope(tank, r.angle, signal.received.station.frequency)) * DEGREE,
    headroom: headroomOf(best),
    sii: best.hearing.sii,
    distortion: best.distortion,
    outcome: outcomeOf(best.hearing),
  };
}

/** The same figures out of the full search of the dial. */
export function look(reception: Reception, index: number, report: StationReport): Glance {
  const { dial, heard, verdict } = report;
  if ('missing' in dial || !heard) return outOfReach(index, 'missing' in dial ? dial.missing : 0);
  const { tank } = reception.receiver;
  const { angle } = dial.resonance;
  const { evaluation } = heard;
  return {
    station: index,
    missing: null,
    place: angle / tank.rotation,
    hertzPerDegree: Math.abs(dialSlope(tank, angle, report.signal.received.station.frequency)) * DEGREE,
    headroom: headroomOf(evaluation),
    sii: evaluation.hearing.sii,
    distortion: evaluation.distortion,
    outcome: verdict.outcome,
  };
}

const outOfReach = (station: number, missing: number): Glance => ({
  station,
  missing,
  place: 0,
  hertzPerDegree: 0,
  headroom: NOTHING,
  sii: 0,
  distortion: 0,
  outcome: 'out-of-reach',
});

const headroomOf = (e: Evaluation): number => Math.max(...e.hearing.headroom);

/** As `listeningPoint` chooses between the sides. */
function better(a: Evaluation, b: Evaluation): boolean {
  const gain = a.hearing.sii - b.hearing.sii;
  return gain > 0.01 || (gain > -0.01 && headroomOf(a) > headroomOf(b));
}

/** Where to leave the dial: on either flank for FM, on top for AM. */
function angles(reception: Reception, index: number, r: Resonance): number[] {
  const { tank } = reception.receiver;
  const end = tank.rotation;
  const direction = tank.capacitance(end) > tank.capacitance(0) ? 1 : -1;
  const angleAt = (x: number): number => r.angle - direction * x * r.halfWidth;
  const inside = (x: number): boolean => angleAt(x) >= 0 && angleAt(x) <= end;
  const audioAt = (x: number): number => {
    if (!inside(x)) return 0;
    const tuned = new Tuned(reception, index, angleAt(x));
    return tuned.tone(tuned.ratedSwing).earpiece[1]!;
  };
  if (reception.signals[index]!.received.station.modulation.kind === 'am') {
    const top = vertex(-0.6, 0, 0.6, audioAt(-0.6), audioAt(0), audioAt(0.6));
    return [Math.min(Math.max(angleAt(top), 0), end)];
  }
  const side = inside(FIRST) ? 1 : -1;
  const log = (x: number): number => audioAt(side * x);
  let x = FIRST;
  let here = log(x);
  let below = log(x / RATIO);
  let above = log(x * RATIO);
  while (below > here && x > NEAREST) {
    x /= RATIO;
    above = here;
    here = below;
    below = log(x / RATIO);
  }
  while (above > here && x < FARTHEST) {
    x *= RATIO;
    below = here;
    here = above;
    above = log(x * RATIO);
  }
  const step = Math.log(RATIO);
  const best =
    here > 0 && below > 0 && above > 0 ? x * Math.exp(vertex(-step, 0, step, Math.log(below), Math.log(here), Math.log(above))) : x;
  const both = [side * best, -side * best].filter(inside).map(angleAt);
  return both.length > 0 ? both : [r.angle];
}

/** Where the parabola through three points is highest, held between the outer ones. */
function vertex(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const bend = fa - 2 * fb + fc;
  if (!(bend < 0)) return b;
  return Math.min(c, Math.max(a, b + ((c - b) * (fa - fc)) / (2 * bend)));
}
