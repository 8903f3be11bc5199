import { labelMarks, type PartLabel } from '../circuit/label.ts';
import { leadMark } from '../circuit/symbol.ts';
import { type Extent, extentOf } from '../plane/extent.ts';
import { type Vector, vector } from '../plane/vector.ts';
import { type Mark, outline } from '../svg/mark.ts';
import { type Lead, LOOKS } from './lead.ts';
import { markAt } from './mark-at.ts';

/** Wires run on a grid of this pitch [mm]. */
export const GRID = 2;

/** Where a wire is soldered. */
export interface Pin {
  readonly part: string;
  readonly pin: string;
  /** the line it is on; null where nothing is joined here */
  readonly net: string | null;
  readonly lead: Lead;
  /** on the grid, seen from the part's own zero */
  readonly at: Vector;
  /** where its lead leaves the body */
  readonly from: Vector;
}

/** A part as it is seen, without its words. */
export interface Picture {
  readonly name: string;
  readonly marks: readonly Mark[];
  readonly pins: readonly Pin[];
  readonly body: Extent;
}

/** A part lying one way, with its words. */
export interface Footprint {
  readonly marks: readonly Mark[];
  readonly pins: readonly Pin[];
  /** where no wire may run */
  readonly blocks: readonly Extent[];
  /** all of it, to the grid */
  readonly extent: Extent;
}

/** A way of laying a part down. */
export type Turn = (v: Vector) => Vector;

export const QUARTERS: readonly Turn[] = [(v) => v, (v) => vector(-v.y, v.x), (v) => vector(-v.x, -v.y), (v) => vector(v.y, -v.x)];
/** As it is, and mirrored one way, the other, and both. */
export const FLIPS: readonly Turn[] = [(v) => v, (v) => vector(-v.x, v.y), (v) => vector(v.x, -v.y), (v) => vector(-v.x, -v.y)];

export function turnedPicture({ name, marks, pins, body }: Picture, turn: Turn): Picture {
  return {
    name,
    marks: marks.map((m) => markAt(m, turn)),
    pins: pins.map((p) => ({ ...p, at: turn(p.at), from: turn(p.from) })),
    body: extentOf([vector(body.left, body.top), vector(body.right, body.bottom)].map(turn))!,
  };
}

export type Side = 'right' | 'left' | 'above' | 'below';

/** Words at a place of a footprint. */
export interface Words {
  readonly label: PartLabel;
  /** as of `labelMarks` */
  readonly at: Vector;
  readonly side: Side;
  readonly names: string;
}

const AIR = 1;

/** A picture with its words. */
export function footprint(picture: Picture, words: readonly Words[]): Footprint {
  const texts = words.filter((w) => w.label.lines.length > 0).map((w) => labelMarks(w.label, w.at, w.side, w.names));
  const blocks = [
    grown(picture.body, AIR),
    ...texts.map((t) => grown(extentOf(t.flatMap(outline))!, AIR / 2)),
    ...picture.pins.map(leadBlock),
  ];
  const all = extentOf([...blocks.flatMap((b) => [vector(b.left, b.top), vector(b.right, b.bottom)]), ...picture.pins.map((p) => p.at)])!;
  return {
    marks: [
      ...picture.pins.map((p) => ({ ...leadMark(p.part, p.pin, p.at, p.from), ...LOOKS[p.lead], cap: 'round' as const })),
      ...picture.marks.map((m) => (m.labels ? m : { ...m, labels: { body: picture.name } })),
      ...texts.flat(),
    ],
    pins: picture.pins,
    blocks,
    extent: {
      left: Math.floor(all.left / GRID) * GRID,
      top: Math.floor(all.top / GRID) * GRID,
      right: Math.ceil(all.right / GRID) * GRID,
      bottom: Math.ceil(all.bottom / GRID) * GRID,
    },
  };
}

/** A lead but for its end, where wires come. */
function leadBlock({ at, from }: Pin): Extent {
  const short = (a: number, b: number): number => a + Math.sign(b - a) * Math.min(Math.abs(b - a), GRID / 2);
  const end = Math.abs(at.x - from.x) > Math.abs(at.y - from.y) ? vector(short(at.x, from.x), at.y) : vector(at.x, short(at.y, from.y));
  return grown(extentOf([end, from])!, 0.2);
}

const grown = (e: Extent, by: number): Extent => ({ left: e.left - by, top: e.top - by, right: e.right + by, bottom: e.bottom + by });

/** Words on the first side of a part that no pin leaves by. */
export function wordsBeside({ body, pins }: Picture, label: PartLabel, names: string): Words {
  const taken = (side: Side): boolean =>
    pins.some(({ at }) =>
      side === 'below' ? at.y > body.bottom : side === 'above' ? at.y < body.top : side === 'right' ? at.x > body.right : at.x < body.left,
    );
  const side = (['below', 'right', 'above', 'left'] as const).find((s) => !taken(s)) ?? 'below';
  const [x, y] = [(body.left + body.right) / 2, (body.top + body.bottom) / 2];
  const at = {
    below: vector(x, body.bottom + AIR),
    above: vector(x, body.top - AIR),
    right: vector(body.right + AIR + 0.6, y),
    left: vector(body.left - AIR - 0.6, y),
  };
  return { label, at: at[side], side, names };
}
