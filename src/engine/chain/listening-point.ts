import type { BestDial, FlankPoint } from './best-dial.ts';
import { type Evaluation, evaluate } from './evaluate.ts';
import type { Reception } from './receiver.ts';

/** Where a listener leaves the dial, and what is heard there. */
export interface ListeningPoint {
  readonly at: FlankPoint;
  readonly evaluation: Evaluation;
}

/** Intelligibility that a listener would notice: below it, the louder side is the better one. */
const NOTICED = 0.01;

/**
 * The better side of a station, as one finds by trying both: the one that is understood better, since a neighbour may sit on the other; the one with
 * more headroom where that makes no difference.
 */
export function listeningPoint(reception: Reception, index: number, dial: BestDial): ListeningPoint {
  const tried = dial.points.map((at) => ({ at, evaluation: evaluate(reception, index, at.angle) }));
  const headroom = (p: ListeningPoint): number => Math.max(...p.evaluation.hearing.headroom);
  return tried.reduce((best, next) => {
    const gain = next.evaluation.hearing.sii - best.evaluation.hearing.sii;
    return gain > NOTICED || (gain > -NOTICED && headroom(next) > headroom(best)) ? next : best;
  });
}
