import {
  type BestDial,
  bestDial,
  type DialTurn,
  dialAt,
  dialRange,
  type Evaluation,
  evaluate,
  listeningPoint,
  type OutOfReach,
  type Reception,
  reportStation,
} from '#engine';
import { formatFigure, readQuantity } from '#units';
import { pickStations } from '../pick.ts';
import { refusedOption } from './options.ts';

/** Where the dial stands for the wanted station, and what levels say of it there. */
export interface Dialled {
  readonly station: number;
  readonly angle: number;
  readonly evaluation: Evaluation;
  /** null where the dial does not reach the station itself */
  readonly dial: BestDial | null;
  /** the turn that begins here; null where the dial stands */
  readonly turn: DialTurn | null;
}

/** A place that the dial does not reach: a result, told as a sentence. */
export interface NotReached {
  readonly station: number;
  readonly sentence: string;
}

/**
 * The station: the one named, else the one nearest to the frequency that the dial is set to, else the one that is heard best.
 *
 * @param where - frequency, angle or `best`
 */
export function wantedStation(reception: Reception, named: string | undefined, where: string): number {
  const stations = reception.signals.map((s) => s.received.station);
  if (named !== undefined)
    return pickStations(
      stations.map((s) => s.name),
      named,
    )[0]!;
  const indices = stations.map((_, k) => k);
  const frequency = readQuantity(where, 'frequency');
  const best = (measure: (k: number) => number): number => indices.reduce((a, b) => (measure(b) > measure(a) ? b : a));
  if (frequency.ok) return best((k) => -Math.abs(stations[k]!.frequency - frequency.value));
  const heard = indices.map((k) => reportStation(reception, k).heard?.evaluation.hearing ?? null);
  // understood best; where none is understood, the least far from being heard
  return best((k) => (heard[k] ? 1000 * heard[k].sii + Math.min(heard[k].overThreshold, heard[k].overNoise) : Number.NEGATIVE_INFINITY));
}

export const standing = (reception: Reception, station: number, angle: number, dial: BestDial | null): Dialled => ({
  station,
  angle,
  evaluation: evaluate(reception, station, angle),
  dial,
  turn: null,
});

/** @throws BadFile if `where` is none of a frequency, an angle of this dial, or `best` */
export function dialled(reception: Reception, station: number, where: string): Dialled | NotReached {
  const { receiver } = reception;
  const { arrival } = reception.signals[station]!;
  const dial = bestDial(reception, station);
  const here = (angle: number): Dialled => standing(reception, station, angle, 'missing' in dial ? null : dial);
  if (where === 'best') {
    if ('missing' in dial) return notReached(reception, station, reception.signals[station]!.received.station.frequency, dial);
    return here(listeningPoint(reception, station, dial).at.angle);
  }
  const frequency = readQuantity(where, 'frequency');
  if (frequency.ok) {
    const at = dialAt(receiver, arrival, frequency.value);
    return 'missing' in at ? notReached(reception, station, frequency.value, at) : here(at.angle);
  }
  const angle = readQuantity(where, 'angle');
  if (!angle.ok)
    throw refusedOption('dial', where, 'it is neither a frequency, nor an angle, nor "best"', 'Write it like 98.2MHz or "41°".');
  if (!(angle.value >= 0 && angle.value <= receiver.tank.rotation * (1 + 1e-9)))
    throw refusedOption(
      'dial',
      where,
      `this dial turns from 0° at least capacitance to ${formatFigure(receiver.tank.rotation, 'rad')}`,
      'Give an angle on it, or a frequency.',
    );
  return here(angle.value);
}

/** What is wrong, by how much, and what the dial does cover. */
export function notReached(reception: Reception, station: number, frequency: number, { missing }: OutOfReach): NotReached {
  const { receiver, signals } = reception;
  const { lowest, highest } = dialRange(receiver, signals[station]!.arrival);
  const covers =
    lowest === null || highest === null
      ? ''
      : ` It covers ${formatFigure(lowest, 'Hz')} to ${formatFigure(highest, 'Hz')}, aerial and detector joined;`;
  const amount = formatFigure(Math.abs(missing), 'F', 2);
  const why = missing > 0 ? `${amount} of capacitance is missing at its full end` : `${amount} of capacitance is too much at its empty end`;
  return { station, sentence: `The dial does not reach ${formatFigure(frequency, 'Hz')}.${covers} ${why}.` };
}
