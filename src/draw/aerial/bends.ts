import type { SpacePoint } from '#engine';
import type { Conductor, Piece } from './conductors.ts';
import { along, cross, dot, minus, norm, unitStep } from './space.ts';

/** A part of a conductor that is wound round: many short sides stand for turns of a circle. */
export interface Turns {
  readonly kind: 'turns';
  readonly pieces: readonly Piece[];
  /** of the circle of the same area, to the middle of the wire [m] */
  readonly diameter: number;
  readonly turns: number;
  /** from turn to turn [m] */
  readonly pitch: number;
  /** of the wire, wound on the circle [m] */
  readonly length: number;
}

export interface Straight {
  readonly kind: 'straight';
  readonly piece: Piece;
  readonly length: number;
}

/** Fewer sides to a turn than this are a polygon meant as such. */
const LEAST_SIDES = 10;
/** Fewer sides than this in all are bends. */
const LEAST_RUN = 5;
const ALIKE = 1e-3;
const ORIGIN: SpacePoint = { x: 0, y: 0, z: 0 };

/** A conductor as it is bent: straight parts, and parts wound round. */
export function bends(conductor: Conductor): readonly (Straight | Turns)[] {
  const { pieces } = conductor;
  const out: (Straight | Turns)[] = [];
  for (let i = 0; i < pieces.length; ) {
    let last = i;
    while (last + 1 < pieces.length && alike(pieces[last]!, pieces[last + 1]!, pieces[i]!, pieces[i + 1]!)) last++;
    const wound = last - i + 1 >= LEAST_RUN ? turnsOf(pieces.slice(i, last + 1)) : null;
    if (wound) {
      out.push(wound);
      i = last + 1;
    } else {
      out.push({ kind: 'straight', piece: pieces[i]!, length: pieces[i]!.length });
      i++;
    }
  }
  return out;
}

/** Whether the bend from a to b is the same as that from c to d: sides of one length, turned by one angle. */
function alike(a: Piece, b: Piece, c: Piece, d: Piece): boolean {
  const turn = (p: Piece, q: Piece) => dot(unitStep(p.from, p.to), unitStep(q.from, q.to));
  return Math.abs(b.length - c.length) < ALIKE * c.length && Math.abs(turn(a, b) - turn(c, d)) < ALIKE;
}

/** The circle or the helix that a run of equal sides stands for; null where the sides are too few to a turn, or do not turn about one axis. */
function turnsOf(pieces: readonly Piece[]): Turns | null {
  const steps = pieces.map((p) => minus(p.to, p.from));
  // the change from side to side always lies across the axis
  const changes = steps.slice(1).map((s, i) => minus(s, steps[i]!));
  const sum = changes.slice(1).reduce((total, c, i) => along(total, cross(changes[i]!, c), 1), ORIGIN);
  if (norm(sum) < 1e-9 * norm(steps[0]!) ** 2) return null;
  const axis = along(ORIGIN, sum, 1 / norm(sum));
  const advance = dot(steps[0]!, axis);
  const flat = steps.map((s) => along(s, axis, -dot(s, axis)));
  const side = norm(flat[0]!);
  const angle = (i: number) => Math.atan2(dot(cross(flat[i]!, flat[i + 1]!), axis), dot(flat[i]!, flat[i + 1]!));
  const turn = angle(0);
  const sides = (2 * Math.PI) / turn;
  if (!(turn > 0) || sides < LEAST_SIDES) return null;
  for (let i = 0; i + 1 < flat.length; i++)
    if (Math.abs(angle(i) - turn) > 0.01 * turn || Math.abs(dot(steps[i + 1]!, axis) - advance) > ALIKE * norm(steps[0]!)) return null;
  const radius = side / (2 * Math.sin(turn / 2));
  // area of the polygon, per turn (sides/2) r^2 sin(turn), equals that of the circle
  const diameter = 2 * radius * Math.sqrt((sides / (2 * Math.PI)) * Math.sin(turn));
  const turns = pieces.length / sides;
  const pitch = advance * sides;
  return { kind: 'turns', pieces, diameter, turns, pitch, length: turns * Math.hypot(Math.PI * diameter, pitch) };
}
