import { add, distance, scale, subtract, unit, type Vector, vector } from '../plane/vector.ts';
import { type Labels, type Mark, type TextMark, textBox } from '../svg/mark.ts';
import type { Role } from '../svg/palette.ts';
import { type Occupied, WEIGHT } from './occupied.ts';

/** Directions round a point that are tried, the handiest first, and the distances [mm]: the first, and how much further the next. */
const DIRECTIONS = [-45, 45, -135, 135, 0, 180, -90, 90, -20, 20, -160, 160].map((d) => (d * Math.PI) / 180);
const NEAREST = 5;
const STEP = 1.3;
/** A leader ends so far from the text [mm]. */
const SHORT_OF_TEXT = 0.7;

/** Writes a text near a point, with a thin line to it, where that costs least. */
export function placeLabel(
  point: Vector,
  text: string,
  look: { readonly size: number; readonly fill: Role; readonly clear: number; readonly labels: Labels },
  occupied: Occupied,
): readonly Mark[] {
  let best: { readonly price: number; readonly text: TextMark; readonly end: Vector } | null = null;
  for (let reach = NEAREST; !best || best.price > reach; reach *= STEP)
    for (const [i, angle] of DIRECTIONS.entries()) {
      const direction = vector(Math.cos(angle), Math.sin(angle));
      const corner = add(point, scale(direction, reach + look.clear));
      const anchor = Math.abs(direction.x) < 0.1 ? 'middle' : direction.x > 0 ? 'start' : 'end';
      const written: TextMark = {
        kind: 'text',
        at: add(corner, vector(0, look.size * (0.3 + 0.4 * direction.y))),
        text,
        size: look.size,
        anchor,
        angle: 0,
        fill: look.fill,
      };
      const end = add(corner, scale(direction, -SHORT_OF_TEXT));
      const price = reach + 0.3 * i + occupied.priceOfText(textBox(written)) + occupied.priceOfLine(point, end);
      if (!best || price < best.price) best = { price, text: written, end };
    }
  const found = best;
  const out = unit(subtract(found.end, point));
  const from = add(point, scale(out, look.clear));
  occupied.addText(textBox(found.text));
  occupied.addLine(from, found.end, WEIGHT.extension);
  const leader: Mark = { kind: 'line', from, to: found.end, stroke: 'quiet', width: 0.15 };
  return [...(distance(from, found.end) > 1 ? [leader] : []), { ...found.text, labels: look.labels }];
}
