import type { Extent } from '../plane/extent.ts';
import { type Vector, vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import { textWidth } from '../svg/text-width.ts';
import type { Axis } from './axis.ts';

export const TICK_SIZE = 2.8;
const TITLE_SIZE = 3;

/** Grid, frame, numbers and titles of the axes. */
export function frameMarks(x: Axis, y: Axis, f: Extent): readonly Mark[] {
  const px = (u: number) => f.left + u * (f.right - f.left);
  const py = (v: number) => f.bottom - v * (f.bottom - f.top);
  const grid = (from: Vector, to: Vector, width: number): Mark => ({ kind: 'line', from, to, stroke: 'faint', width });
  const number = (at: Vector, text: string, anchor: 'middle' | 'end', name: string): Mark => ({
    kind: 'text',
    at,
    text,
    size: TICK_SIZE,
    anchor,
    angle: 0,
    fill: 'quiet',
    labels: { tick: name },
  });
  const title = (at: Vector, text: string, angle: number, name: string): Mark => ({
    kind: 'text',
    at,
    text,
    size: TITLE_SIZE,
    anchor: 'middle',
    angle,
    fill: 'ink',
    labels: { axis: name },
  });
  const upright = (u: number, width: number) => grid(vector(px(u), f.top), vector(px(u), f.bottom), width);
  const level = (v: number, width: number) => grid(vector(f.left, py(v)), vector(f.right, py(v)), width);
  return [
    ...x.minor.map((u) => upright(u, 0.1)),
    ...y.minor.map((v) => level(v, 0.1)),
    ...x.ticks.map((t) => upright(t.at, 0.2)),
    ...y.ticks.map((t) => level(t.at, 0.2)),
    {
      kind: 'polyline',
      points: [vector(f.left, f.top), vector(f.left, f.bottom), vector(f.right, f.bottom)],
      stroke: 'quiet',
      width: 0.3,
    },
    ...spaced(x, f.right - f.left).map((t) => number(vector(px(t.at), f.bottom + 4.2), t.text, 'middle', 'x')),
    ...y.ticks.map((t) => number(vector(f.left - 1.5, py(t.at) + 0.36 * TICK_SIZE), t.text, 'end', 'y')),
    title(vector((f.left + f.right) / 2, f.bottom + 9.4), x.title, 0, 'x'),
    title(vector(3.2, (f.top + f.bottom) / 2), y.title, -Math.PI / 2, 'y'),
  ];
}

/** Numbers along an axis that stand clear of the one before. */
function spaced(x: Axis, width: number): Axis['ticks'] {
  let free = Number.NEGATIVE_INFINITY;
  return x.ticks.filter((t) => {
    const half = textWidth(t.text, TICK_SIZE) / 2;
    if (t.at * width - half < free) return false;
    free = t.at * width + half + 1.5;
    return true;
  });
}
