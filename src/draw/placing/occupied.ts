import { type Box, boxesOverlap, grown, lineMeetsBox } from '../plane/box.ts';
import { distance, dot, subtract, unit, type Vector } from '../plane/vector.ts';

/** How much it matters that nothing is written across a line. */
export const WEIGHT = { conductor: 40, dimension: 20, extension: 8, faint: 12 } as const;

/** Price of a line through a text: there is nearly always a better place. */
const THROUGH_TEXT = 150;
/** Air round every text [mm]. */
const AIR = 0.5;
/** Parallel lines nearer than this [mm] run into each other for the eye. */
const TOO_CLOSE = 2;
/** Sine of the angle between them. */
const NEARLY_PARALLEL = 0.25;
const CROSSING = 0.15;

interface Line {
  readonly from: Vector;
  readonly to: Vector;
  readonly weight: number;
}

/** What has been drawn in one part of a sheet: no text may touch another, and lines are better left free. */
export class Occupied {
  readonly #texts: Box[] = [];
  readonly #lines: Line[] = [];

  addText(box: Box): void {
    this.#texts.push(grown(box, AIR));
  }

  addLine(from: Vector, to: Vector, weight: number): void {
    this.#lines.push({ from, to, weight });
  }

  /** Price of writing there; infinite over another text. */
  priceOfText(box: Box): number {
    if (this.#texts.some((t) => boxesOverlap(t, box))) return Number.POSITIVE_INFINITY;
    const wide = grown(box, AIR);
    return this.#lines.reduce((sum, l) => (lineMeetsBox(l.from, l.to, wide) ? sum + l.weight : sum), 0);
  }

  /** Price of a thin line there. */
  priceOfLine(from: Vector, to: Vector): number {
    const texts = this.#texts.filter((t) => lineMeetsBox(from, to, t)).length;
    return this.#lines.reduce((sum, l) => sum + l.weight * conflict({ from, to }, l), texts * THROUGH_TEXT);
  }

  /** Price of a line that leads out to a dimension: several may share one. */
  priceOfExtension(from: Vector, to: Vector): number {
    const texts = this.#texts.filter((t) => lineMeetsBox(from, to, t)).length;
    const others = this.#lines.filter((l) => l.weight !== WEIGHT.extension);
    return others.reduce((sum, l) => sum + l.weight * conflict({ from, to }, l), texts * THROUGH_TEXT);
  }
}

/** 1 for lines that run into each other, a little for lines that cross. */
function conflict(a: Omit<Line, 'weight'>, b: Line): number {
  const [u, v] = [unit(subtract(a.to, a.from)), unit(subtract(b.to, b.from))];
  const turn = u.x * v.y - u.y * v.x;
  const across = (p: Vector) => Math.abs(u.x * (p.y - a.from.y) - u.y * (p.x - a.from.x));
  if (Math.abs(turn) < NEARLY_PARALLEL) {
    const [s, t] = [dot(subtract(b.from, a.from), u), dot(subtract(b.to, a.from), u)];
    const shared = Math.min(Math.max(s, t), distance(a.from, a.to)) - Math.max(Math.min(s, t), 0);
    return shared > 0.2 && Math.min(across(b.from), across(b.to)) < TOO_CLOSE ? 1 : 0;
  }
  // fractions along both at which the endless lines meet
  const step = subtract(b.from, a.from);
  const i = (step.x * v.y - step.y * v.x) / turn / Math.max(distance(a.from, a.to), 1e-9);
  const j = (step.x * u.y - step.y * u.x) / turn / Math.max(distance(b.from, b.to), 1e-9);
  return i > 0.001 && i < 0.999 && j > 0.001 && j < 0.999 ? CROSSING : 0;
}
