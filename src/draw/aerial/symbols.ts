import { add, scale, subtract, type Vector, vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';

/** Radius of a terminal's ring, and how far from the feed's middle it stands [mm]. */
const TERMINAL = 0.7;
const AWAY = 1.2;
/** Room that labels leave round a feed and a load [mm]. */
export const FEED_CLEARANCE = AWAY + TERMINAL;
export const LOAD_CLEARANCE = 2;

/**
 * The feed: two terminals, a ring each as in IEC 60617, with a gap between.
 *
 * @param along - unit vector, as drawn, of the conductor the feed sits in; null where it is seen from its end
 * @param other - of the one conductor on the other side; null where that is seen from its end, or there is none or more than one
 * @param thickness - of the conductor as drawn [mm]
 */
export function feedMarks(at: Vector, along: Vector | null, other: Vector | null, thickness: number): readonly Mark[] {
  const radius = Math.max(TERMINAL, 0.6 * thickness);
  const reach = Math.max(AWAY, radius + 0.5);
  const ring = (centre: Vector, feed: string): Mark => ({
    kind: 'circle',
    centre,
    radius,
    fill: 'paper',
    stroke: 'accent',
    width: 0.35,
    labels: { feed },
  });
  if (!along) return [ring(at, 'end-on')];
  const first = other ? add(at, scale(other, reach)) : at;
  const second = add(at, scale(along, other ? reach : 2 * reach));
  const gap = { stroke: 'paper', width: thickness + 0.4 } as const;
  return [
    { kind: 'polyline', points: other ? [first, at, second] : [first, second], ...gap },
    ring(first, 'terminal'),
    ring(second, 'terminal'),
  ];
}

/** A load: the plain rectangle of IEC 60617, lying in the conductor. */
export function loadMarks(at: Vector, along: Vector): readonly Mark[] {
  const [u, v] = [scale(along, 1.8), scale(vector(-along.y, along.x), 0.8)];
  const corners = [subtract(add(at, u), v), add(add(at, u), v), add(subtract(at, u), v), subtract(subtract(at, u), v)];
  return [
    { kind: 'area', points: corners, fill: 'paper', labels: { load: 'box' } },
    { kind: 'polyline', points: [...corners, corners[0]!], stroke: 'ink', width: 0.3 },
  ];
}

/** Earth as in IEC 60617: three strokes, shorter downwards, below the point. */
export function earthMarks(at: Vector): readonly Mark[] {
  const strokes: Mark[] = [3, 2, 1].map((half, i) => {
    const y = at.y + 1.6 + 0.9 * i;
    return { kind: 'line', from: vector(at.x - half, y), to: vector(at.x + half, y), stroke: 'ink', width: 0.35 };
  });
  return [{ kind: 'line', from: at, to: vector(at.x, at.y + 1.6), stroke: 'ink', width: 0.35 }, ...strokes];
}

/** A dot where conductors are joined. */
export const jointMark = (at: Vector, thickness: number): Mark => ({
  kind: 'circle',
  centre: at,
  radius: Math.max(0.55, thickness * 0.75),
  fill: 'ink',
  stroke: 'ink',
  width: 0.1,
  labels: { joint: 'dot' },
});

/** The surface of the ground: a line with short slanting strokes beneath; `broken` where it is drawn nearer than it is. */
export function groundMarks(left: number, right: number, y: number, broken: boolean): readonly Mark[] {
  const marks: Mark[] = [
    {
      kind: 'line',
      from: vector(left, y),
      to: vector(right, y),
      stroke: 'quiet',
      width: 0.35,
      labels: { ground: broken ? 'nearer' : 'to-scale' },
    },
  ];
  for (let x = left + 2; x <= right - 0.5; x += 4)
    marks.push({ kind: 'line', from: vector(x, y), to: vector(x - 1.5, y + 1.5), stroke: 'quiet', width: 0.18 });
  return marks;
}

/** An arrow that points north in a plan: its direction as drawn, a letter at its head. */
export function northMarks(at: Vector, north: Vector): readonly Mark[] {
  const [tail, tip] = [subtract(at, scale(north, 3.2)), add(at, scale(north, 3.2))];
  const aside = scale(vector(-north.y, north.x), 0.8);
  const foot = subtract(tip, scale(north, 2.2));
  return [
    { kind: 'line', from: tail, to: foot, stroke: 'quiet', width: 0.25 },
    { kind: 'area', points: [tip, add(foot, aside), subtract(foot, aside)], fill: 'quiet' },
    {
      kind: 'text',
      at: add(add(tip, scale(north, 2.2)), vector(0, 1)),
      text: 'N',
      size: 2.8,
      anchor: 'middle',
      angle: 0,
      fill: 'quiet',
      labels: { north: 'arrow' },
    },
  ];
}
