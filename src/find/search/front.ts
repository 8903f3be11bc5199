import type { Glance } from '../glance.ts';
import { type Design, keyOf } from './design.ts';

/** A design on the front of what can be had: no other is louder, cleaner and easier to tune at once. */
export interface FrontPoint {
  readonly design: Design;
  /** index of the station heard best */
  readonly station: number;
  /** [dB] over what the ear needs */
  readonly headroom: number;
  /** programme's distortion, relative to it [dB] */
  readonly distortion: number;
  /** [Hz per degree]; less is easier */
  readonly hertzPerDegree: number;
}

/** Points nearer than this in all three are one: half a decibel twice, and a tenth of the speed of the dial. */
const CELL = { headroom: 0.5, distortion: 0.5, speed: 0.1 };
/** A set heard less well than this is on no front [dB]: speech is just noticed there. */
const JUST_NOTICED = -12;

/** The station that a set hears best. */
export const heardBest = (looks: readonly Glance[]): Glance => looks.reduce((a, b) => (b.headroom > a.headroom ? b : a));

/** Where a set stands, by the station it hears best. */
export function pointOf(design: Design, looks: readonly Glance[]): FrontPoint {
  const { station, headroom, distortion, hertzPerDegree } = heardBest(looks);
  return { design, station, headroom, distortion, hertzPerDegree };
}

/** The point of a design that keeps its limits; null where nothing is heard. */
export function frontPoint(design: Design, looks: readonly Glance[]): FrontPoint | null {
  const point = pointOf(design, looks);
  return point.headroom > JUST_NOTICED ? point : null;
}

const cells = (p: FrontPoint): readonly number[] => [
  Math.floor(p.headroom / CELL.headroom),
  Math.floor(-p.distortion / CELL.distortion),
  Math.floor(-Math.log(p.hertzPerDegree) / CELL.speed),
];
const covers = (a: readonly number[], b: readonly number[]): boolean => a.every((v, k) => v >= b[k]!);

/** The front with one more point, in order of loudness; of two in one cell the louder stays. */
export function withPoint(front: readonly FrontPoint[], point: FrontPoint): readonly FrontPoint[] {
  const own = cells(point);
  const rival = front.find((p) => covers(cells(p), own));
  if (rival && !(covers(own, cells(rival)) && before(point, rival))) return front;
  return [...front.filter((p) => !covers(own, cells(p))), point].sort((a, b) => (before(a, b) ? -1 : 1));
}

/** Louder first; of equals the one whose numbers come first, so that no order of trying matters. */
function before(a: FrontPoint, b: FrontPoint): boolean {
  return a.headroom !== b.headroom ? a.headroom > b.headroom : keyOf(a.design) < keyOf(b.design);
}
