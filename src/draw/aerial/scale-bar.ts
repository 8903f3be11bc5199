import { vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import { lengthText } from './length-text.ts';

/** It is drawn no longer than this [mm]. */
const LONGEST = 60;
const PARTS = 5;
const HEIGHT = 1.6;

/** Length a scale bar stands for: 1, 2 or 5 of a decade, as long as there is room for [m]. */
function barLength(perMetre: number): number {
  const most = LONGEST / perMetre;
  const decade = 10 ** Math.floor(Math.log10(most) + 1e-9);
  return decade * ([5, 2].find((step) => step * decade <= most * (1 + 1e-9)) ?? 1);
}

/** A bar in five parts, its left end at (0, 0), with the lengths it stands for beneath. */
export function scaleBar(perMetre: number): readonly Mark[] {
  const length = barLength(perMetre);
  const part = (length * perMetre) / PARTS;
  const marks: Mark[] = [];
  for (let i = 0; i < PARTS; i++) {
    const [left, right] = [i * part, (i + 1) * part];
    const box = [vector(left, 0), vector(right, 0), vector(right, HEIGHT), vector(left, HEIGHT)];
    if (i % 2 === 0) marks.push({ kind: 'area', points: box, fill: 'quiet' });
    marks.push({ kind: 'polyline', points: [...box, box[0]!], stroke: 'quiet', width: 0.2 });
  }
  const text = (at: number, words: string, anchor: 'start' | 'middle'): Mark => ({
    kind: 'text',
    at: vector(at, HEIGHT + 3.6),
    text: words,
    size: 2.8,
    anchor,
    angle: 0,
    fill: 'quiet',
    labels: { bar: at === 0 ? 'from' : 'to' },
  });
  return [...marks, text(0, '0', 'middle'), text(PARTS * part, lengthText(length), 'middle')];
}
