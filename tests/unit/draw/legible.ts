import { expect } from 'vitest';
import { type Drawn, outside, overlaps } from './drawn.ts';
import type { Element } from './xml.ts';

type Straight = readonly [number, number, number, number];

/** Every straight stroke of an element. */
function strokes(e: Element): readonly Straight[] {
  if (e.name === 'line') return [['x1', 'y1', 'x2', 'y2'].map((k) => Number(e.attributes[k])) as unknown as Straight];
  if (e.name !== 'polyline') return [];
  const points = e.attributes.points!.split(' ').map((pair) => pair.split(',').map(Number) as [number, number]);
  return points.slice(1).map((p, i) => [...points[i]!, ...p] as const);
}

/** Texts that a stroke runs through: upright and level ones by their ends, slanting ones by the box around them. */
function struck(d: Drawn): readonly string[] {
  const all = d.elements.flatMap(strokes);
  return d.texts.flatMap((t) => {
    const [xs, ys] = [t.corners.map((c) => c[0]), t.corners.map((c) => c[1])];
    const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    const hit = all.some(
      ([x1, y1, x2, y2]) => Math.max(x1, x2) > left && Math.min(x1, x2) < right && Math.max(y1, y2) > top && Math.min(y1, y2) < bottom,
    );
    return hit ? [t.text] : [];
  });
}

/** No text runs into another, off the sheet, or is struck through. */
export function mustBeLegible(d: Drawn): void {
  expect(overlaps(d.texts)).toEqual([]);
  expect(outside(d)).toEqual([]);
  expect(struck(d)).toEqual([]);
}
