import { clip } from '../plane/box.ts';
import type { Extent } from '../plane/extent.ts';
import { add, scale, subtract, type Vector } from '../plane/vector.ts';

/** The parts of a curve that lie within a frame; a null interrupts it. */
export function clipCurve(points: readonly (Vector | null)[], frame: Extent): readonly (readonly Vector[])[] {
  const pieces: Vector[][] = [];
  let current: Vector[] = [];
  const close = () => {
    if (current.length > 1) pieces.push(current);
    current = [];
  };
  for (let i = 0; i + 1 < points.length; i++) {
    const [from, to] = [points[i], points[i + 1]];
    const inside = from && to ? clip(from, to, frame) : null;
    if (!from || !to || !inside) {
      close();
      continue;
    }
    const at = (t: number) => add(from, scale(subtract(to, from), t));
    if (current.length === 0 || inside[0] > 0) {
      close();
      current.push(at(inside[0]));
    }
    current.push(at(inside[1]));
    if (inside[1] < 1) close();
  }
  close();
  return pieces;
}

/** A closed area cut down to a frame, side by side. Source: Sutherland and Hodgman, CACM 17 (1974) 32. */
export function clipArea(points: readonly Vector[], frame: Extent): readonly Vector[] {
  const sides: readonly ((p: Vector) => number)[] = [
    (p) => p.x - frame.left,
    (p) => frame.right - p.x,
    (p) => p.y - frame.top,
    (p) => frame.bottom - p.y,
  ];
  return sides.reduce<readonly Vector[]>((area, inside) => {
    const out: Vector[] = [];
    area.forEach((to, i) => {
      const from = area[(i + area.length - 1) % area.length]!;
      const [a, b] = [inside(from), inside(to)];
      if (a >= 0 !== b >= 0) out.push(add(from, scale(subtract(to, from), a / (a - b))));
      if (b >= 0) out.push(to);
    });
    return out;
  }, points);
}
