import { add, distance, dot, middle, scale, subtract, unit, type Vector, vector } from '../plane/vector.ts';
import { type Mark, type TextMark, textBox } from '../svg/mark.ts';
import { textWidth } from '../svg/text-width.ts';
import { type Occupied, WEIGHT } from './occupied.ts';

/** A length to be written beside a drawing. */
export interface Dimension {
  readonly from: Vector;
  readonly to: Vector;
  /** unit vector it is measured along */
  readonly along: Vector;
  readonly text: string;
  /** the drawn length is not the true one: the text is underlined (ISO 129-1) and the line is broken */
  readonly broken?: boolean;
  /** the text is underlined only */
  readonly foreshortened?: boolean;
  /** side that is looked at first: as a step on the paper, at right angles to the measure */
  readonly towards: Vector;
  /** points the dimension line has to lie beyond, besides its own */
  readonly beyond: readonly Vector[];
  readonly labels: Readonly<Record<string, string | number>>;
}

export const TEXT_SIZE = 3;
const LINE = 0.18;
const ARROW = { long: 2.2, half: 0.38 };
/** Air between the point measured and its extension line, and how far that runs on past the dimension line [mm]. */
const GAP = 0.8;
const PAST = 1;
const NEAREST = 6;
const STEP = 2.5;
/** What it costs [as mm of distance] to be on the side not asked for, or to have the text elsewhere than over the middle of the line. */
const OTHER_SIDE = 4;
const OUTSIDE = 6;
const OFF_CENTRE = 1;
const BESIDE = 2;

interface Placed {
  readonly price: number;
  readonly a: Vector;
  readonly b: Vector;
  readonly text: TextMark;
  readonly outside: boolean;
  /** end of the dimension line where the text stands beyond it */
  readonly tail: Vector | null;
}

/** The cheapest place for a dimension: how much it costs, and what to draw there. */
export function placeDimension(d: Dimension, occupied: Occupied): { readonly price: number; draw(): readonly Mark[] } {
  const { along } = d;
  let best: Placed | null = null;
  let limit = Number.POSITIVE_INFINITY;
  for (let offset = NEAREST; !best || best.price > offset; offset += STEP)
    for (const side of [1, -1]) {
      const normal = scale(vector(-along.y, along.x), side);
      const preference = dot(d.towards, normal) < -1e-9 ? OTHER_SIDE : 0;
      for (const candidate of candidates(d, along, normal, offset, occupied, limit)) {
        const price = candidate.price + preference;
        if (best && price >= limit) continue;
        best = { ...candidate, price };
        limit = price;
      }
    }
  const found = best;
  return { price: found.price, draw: () => draw(d, found, occupied) };
}

/** Places for the text on one line; none where the lines alone cost more than `limit`. */
function candidates(d: Dimension, along: Vector, normal: Vector, offset: number, occupied: Occupied, limit: number): readonly Placed[] {
  const level = Math.max(...[d.from, d.to, ...d.beyond].map((p) => dot(p, normal))) + offset;
  const onLine = (p: Vector) => add(scale(along, dot(p, along)), scale(normal, level));
  const [a, b] = [onLine(d.from), onLine(d.to)];
  const lines = occupied.priceOfLine(a, b) + occupied.priceOfExtension(d.from, a) + occupied.priceOfExtension(d.to, b);
  if (offset + lines >= limit) return [];
  // written so that it is read from below or from the right
  const steep = Math.abs(along.x) < 1e-6;
  const reading = steep ? vector(0, -1) : along.x < 0 ? scale(along, -1) : along;
  const angle = Math.atan2(reading.y, reading.x);
  const above = vector(reading.y, -reading.x);
  const lift = add(middle(a, b), scale(above, 0.9));
  const width = textWidth(d.text, TEXT_SIZE);
  const room = distance(a, b);
  const cramped = room < 3 * ARROW.long;
  const text = (at: Vector): TextMark => ({
    kind: 'text',
    at,
    text: d.text,
    size: TEXT_SIZE,
    anchor: 'middle',
    angle,
    fill: 'ink',
    underlined: d.broken === true || d.foreshortened === true,
  });
  const out: Placed[] = [];
  const place = (t: TextMark, tail: Vector | null, price: number) =>
    out.push({ price: offset + lines + price + occupied.priceOfText(textBox(t)), a, b, text: t, outside: cramped, tail });
  // along the line, in its middle by choice
  for (const shift of d.broken ? [0] : [0, -0.25, 0.25]) {
    if (width > room * (1 - 2 * Math.abs(shift)) - 1) continue;
    place(text(add(lift, scale(along, shift * room))), null, shift === 0 ? 0 : OFF_CENTRE);
  }
  // level beside a line too short for it
  if (cramped && Math.abs(normal.x) > 0.5)
    place(
      {
        ...text(add(middle(a, b), vector(Math.sign(normal.x) * 1.2, 0.35 * TEXT_SIZE))),
        anchor: normal.x > 0 ? 'start' : 'end',
        angle: 0,
      },
      null,
      BESIDE,
    );
  for (const [end, sign] of [
    [b, 1],
    [a, -1],
  ] as const) {
    const clear = ARROW.long * 2 + 1;
    const tail = add(end, scale(along, sign * (clear + width)));
    const at = add(add(end, scale(along, sign * (clear + width / 2))), scale(above, 0.9));
    place(text(at), tail, OUTSIDE + occupied.priceOfLine(end, tail));
  }
  return out;
}

function draw(d: Dimension, p: Placed, occupied: Occupied): readonly Mark[] {
  const { a, b } = p;
  const along = unit(subtract(b, a));
  const quiet = { stroke: 'quiet', width: LINE } as const;
  const marks: Mark[] = [];
  for (const [point, end] of [
    [d.from, a],
    [d.to, b],
  ] as const) {
    const out = unit(subtract(end, point));
    const [from, to] = [add(point, scale(out, GAP)), add(end, scale(out, PAST))];
    marks.push({ kind: 'line', from, to, ...quiet });
    occupied.addLine(from, to, WEIGHT.extension);
  }
  const overrun = p.outside ? 2 * ARROW.long : 0;
  const starts = [add(a, scale(along, -overrun)), add(b, scale(along, overrun))] as const;
  const towardsB = p.tail && dot(subtract(p.tail, a), along) > 0;
  const [from, to] = [p.tail && !towardsB ? p.tail : starts[0], p.tail && towardsB ? p.tail : starts[1]];
  marks.push({ kind: 'line', from, to, ...quiet });
  occupied.addLine(from, to, WEIGHT.dimension);
  const inward = p.outside ? -1 : 1;
  marks.push(arrow(a, scale(along, inward)), arrow(b, scale(along, -inward)));
  // near the beginning, clear of the arrowhead and of the text
  if (d.broken) marks.push(...breakMarks(add(a, scale(along, Math.min(distance(a, b) / 2, 5))), along));
  marks.push({ ...p.text, labels: d.labels });
  occupied.addText(textBox(p.text));
  return marks;
}

/** A slim arrowhead whose point is at `tip`, its body in the direction `back`. */
function arrow(tip: Vector, back: Vector): Mark {
  const foot = add(tip, scale(back, ARROW.long));
  const aside = scale(vector(-back.y, back.x), ARROW.half);
  return { kind: 'area', points: [tip, add(foot, aside), subtract(foot, aside)], fill: 'quiet' };
}

/** Two short strokes across a line: part of it is left out. */
function breakMarks(at: Vector, along: Vector): readonly Mark[] {
  const stroke = add(scale(along, 0.6), scale(vector(-along.y, along.x), 1.4));
  return [-0.5, 0.5].map((i) => {
    const c = add(at, scale(along, i * 1.2));
    return { kind: 'line', from: subtract(c, stroke), to: add(c, stroke), stroke: 'quiet', width: 0.25 };
  });
}
