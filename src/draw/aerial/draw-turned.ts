import { GivenError, type SpacePoint } from '#engine';
import { placeLabel } from '../placing/label.ts';
import { Occupied, WEIGHT } from '../placing/occupied.ts';
import { add, distance, scale, subtract, unit, type Vector, vector } from '../plane/vector.ts';
import { svgDocument } from '../svg/document.ts';
import type { Mark } from '../svg/mark.ts';
import type { Theme } from '../svg/palette.ts';
import { type Paragraph, textBlock } from '../svg/text-block.ts';
import { type Eye, eyeAt, type Seen } from './eye.ts';
import { lengthText } from './length-text.ts';

/** Wires in space: x east, y north, z up [m]. */
export interface TurnedAerial {
  readonly wires: readonly { readonly from: SpacePoint; readonly to: SpacePoint }[];
  readonly feed: SpacePoint;
  /** current at the ends and the middle of each segment in turn: three entries a segment, over the feed's [A/A]; none where it is not known */
  readonly currents?: readonly (SpacePoint & { readonly re: number; readonly im: number })[];
  /** where waves come from; the one that is listened to has its name written */
  readonly stations: readonly { readonly label: string; readonly bearing: number; readonly picked: boolean }[];
}

export interface TurnedOptions {
  readonly title: string;
  /** bearing the eye looks along, and how steeply down it looks, -90 to 90 degrees [rad] */
  readonly azimuth: number;
  readonly elevation: number;
  readonly note?: string;
  /** of the sheet [mm] */
  readonly width?: number;
  readonly theme?: Theme;
  readonly id?: string;
}

const WIDTH = 150;
const MARGIN = 5;
/** Most that the compass is across [mm]. */
const LARGEST = 52;
/** Room round the compass for arrows and names [mm]. */
const RIM = 16;
/** The compass is so much wider than the aerial, and lies so far below it, as shares of half the aerial's size. */
const WIDER = 1.12;
const BELOW = 0.3;
/** Where the arrow of the picked station begins, by the compass's radius. */
const ARROW = 1.2;
const LETTERS = ['N', 'E', 'S', 'W'];
const NAME = 3;
const THINNEST = 0.35;
const THICKEST = 2.6;

/**
 * An aerial in space, seen from wherever one likes to stand, as SVG text: its wires, as thick as the current in them, the feed, a level compass below
 * it and where the stations are. The sheet keeps its size as the aerial is turned. Parallel projection.
 *
 * @throws GivenError where there is no wire, or something is no number
 */
export function drawTurned(aerial: TurnedAerial, options: TurnedOptions): string {
  check(aerial, options);
  const width = options.width ?? WIDTH;
  const radius = Math.min(LARGEST, width / 2 - RIM);
  const size = sizeOf(aerial);
  const reach = Math.max(1e-9, size.half * WIDER);
  const eye = eyeAt(size.middle, radius / reach, options);
  const floor = size.least.z - BELOW * size.half;
  const occupied = new Occupied();
  const wires = wireMarks(aerial, eye, occupied);
  const compass = compassMarks(aerial, eye, floor, reach, size.middle, width);
  const feed = eye.see(aerial.feed);
  const plumb: Mark = {
    kind: 'line',
    from: feed,
    to: eye.see({ ...aerial.feed, z: floor }),
    stroke: 'faint',
    width: 0.25,
    dash: [1.2, 1],
  };
  for (const t of compass.texts) occupied.addText(t);
  const feedMarks: readonly Mark[] = [
    { kind: 'circle', centre: feed, radius: 1.5, fill: 'paper', stroke: 'ink', width: 0.5, labels: { part: 'feed' } },
    ...placeLabel(feed, 'feed', { size: NAME, fill: 'ink', clear: 1.7, labels: { name: 'feed' } }, occupied),
  ];
  const inner = width - 2 * MARGIN;
  const known = aerial.currents !== undefined && aerial.currents.length > 0;
  const head = textBlock([{ text: options.title, size: 4.4, fill: 'ink', kind: 'title' }], inner);
  const below = textBlock(
    [
      quiet(`${size.words} ${known ? 'The thicker a wire is drawn, the more current is in it.' : ''}`.trim(), 'size'),
      ...(options.note === undefined ? [] : [quiet(options.note, 'note')]),
    ],
    inner,
  );
  // what aerial, compass, arrows and a name can take, whichever way they are turned
  const above = ARROW * radius + 2 * NAME;
  const beneath = Math.hypot(ARROW * radius, ((size.middle.z - floor) * radius) / reach) + 2 * NAME;
  const middle = vector(width / 2, MARGIN + head.height + above);
  return svgDocument({
    width,
    height: middle.y + beneath + below.height + MARGIN,
    title: options.title,
    description: words(aerial, options, size.words),
    groups: [
      { marks: head.marks, shift: vector(MARGIN, MARGIN) },
      { marks: [...compass.marks, plumb, ...wires, ...feedMarks], shift: middle, labels: { part: 'space' } },
      { marks: below.marks, shift: vector(MARGIN, middle.y + beneath) },
    ],
    theme: options.theme ?? 'auto',
    id: options.id,
  });
}

const quiet = (text: string, kind: string): Paragraph => ({ text, size: 2.8, fill: 'quiet', kind });

/** The nearest last, so that it is drawn over the others; currents over all wires, so that none is cut by the wire it runs in. */
function wireMarks({ wires, currents = [] }: TurnedAerial, eye: Eye, occupied: Occupied): readonly Mark[] {
  const greatest = Math.max(1e-12, ...currents.map((c) => Math.hypot(c.re, c.im)));
  const piece = (from: Seen, to: Seen, look: Pick<Extract<Mark, { kind: 'line' }>, 'stroke' | 'width' | 'labels'>): Piece => ({
    depth: from.depth + to.depth,
    mark: { kind: 'line', from, to, cap: 'round', ...look },
  });
  const bare = wires.map((w, i): Piece => {
    const [from, to] = [eye.see(w.from), eye.see(w.to)];
    occupied.addLine(from, to, WEIGHT.conductor);
    return piece(from, to, { stroke: 'ink', width: 0.5, labels: { wire: i } });
  });
  const flowing: Piece[] = [];
  for (let i = 0; i + 2 < currents.length; i += 3)
    for (const j of [i, i + 1]) {
      const [a, b] = [currents[j]!, currents[j + 1]!];
      const amount = (Math.hypot(a.re, a.im) + Math.hypot(b.re, b.im)) / 2 / greatest;
      const width = Number((THINNEST + amount * (THICKEST - THINNEST)).toFixed(3));
      flowing.push(piece(eye.see(a), eye.see(b), { stroke: 'accent', width, labels: { current: Number(amount.toFixed(3)) } }));
    }
  return [bare, flowing].flatMap((pieces) => pieces.toSorted((a, b) => b.depth - a.depth).map((p) => p.mark));
}

interface Piece {
  readonly depth: number;
  readonly mark: Mark;
}

/** A level ring with the four points, stations as arrows that point inwards. */
function compassMarks(
  { stations }: TurnedAerial,
  eye: Eye,
  floor: number,
  reach: number,
  middle: SpacePoint,
  width: number,
): { readonly marks: readonly Mark[]; readonly texts: readonly Parameters<Occupied['addText']>[0][] } {
  const on = (bearing: number, r: number): Seen =>
    eye.see({ x: middle.x + r * reach * Math.sin(bearing), y: middle.y + r * reach * Math.cos(bearing), z: floor });
  const ring = Array.from({ length: 73 }, (_, i) => on((2 * Math.PI * i) / 72, 1));
  const texts: Parameters<Occupied['addText']>[0][] = [];
  const text = (at: Vector, written: string, fill: 'quiet' | 'accent', name: string): Mark => {
    const base = vector(at.x, at.y + 0.35 * NAME);
    texts.push({ centre: at, halfWidth: 0.35 * NAME * written.length, halfHeight: 0.6 * NAME, angle: 0 });
    return { kind: 'text', at: base, text: written, size: NAME, anchor: 'middle', angle: 0, fill, labels: { compass: name } };
  };
  const arrows = stations.flatMap(({ label, bearing, picked }, i): readonly Mark[] => {
    const [far, tip] = [on(bearing, picked ? ARROW : 1.09), on(bearing, picked ? 0.8 : 1)];
    // seen end on, an arrow is shorter than its head would be
    const back = scale(unit(subtract(far, tip)), Math.min(picked ? 3 : 2, 0.6 * distance(far, tip)));
    const aside = scale(vector(-back.y, back.x), 0.32);
    const stroke = picked ? 'accent' : 'quiet';
    const foot = add(tip, back);
    return [
      { kind: 'line', from: far, to: foot, stroke, width: picked ? 0.5 : 0.25, labels: { station: i } },
      { kind: 'area', points: [tip, add(foot, aside), subtract(foot, aside)], fill: stroke },
      ...(picked ? [text(beyond(far, unit(subtract(far, tip)), label, width), label, 'accent', 'station')] : []),
    ];
  });
  return {
    marks: [
      { kind: 'polyline', points: ring, stroke: 'quiet', width: 0.3, labels: { compass: 'ring' } },
      ...LETTERS.map((letter, k) => text(on((k * Math.PI) / 2, 1.09), letter, 'quiet', letter)),
      ...LETTERS.map(
        (_, k): Mark => ({ kind: 'line', from: on((k * Math.PI) / 2, 0.96), to: on((k * Math.PI) / 2, 1.03), stroke: 'quiet', width: 0.3 }),
      ),
      ...arrows,
    ],
    texts,
  };
}

/** Middle of a name where its arrow begins, away from where that points; above or below it where the sheet ends before the name does. */
function beyond(end: Vector, out: Vector, label: string, width: number): Vector {
  const half = 0.35 * NAME * label.length;
  const wanted = end.x + out.x * (half + 1.5);
  const edge = Math.max(0, width / 2 - MARGIN - half);
  const x = Math.max(-edge, Math.min(edge, wanted));
  const aside = x === wanted ? 0 : 1.2 * NAME * (out.y < 0 ? -1 : 1);
  return vector(x, end.y + out.y * 1.2 * NAME + aside);
}

interface Size {
  readonly middle: SpacePoint;
  readonly least: SpacePoint;
  /** half of the longest way through [m] */
  readonly half: number;
  readonly words: string;
}

function sizeOf({ wires, feed }: TurnedAerial): Size {
  const points = [...wires.flatMap((w) => [w.from, w.to]), feed];
  const over = (key: 'x' | 'y' | 'z', pick: (...values: number[]) => number): number =>
    points.reduce((best, p) => pick(best, p[key]), points[0]![key]);
  const least = { x: over('x', Math.min), y: over('y', Math.min), z: over('z', Math.min) };
  const most = { x: over('x', Math.max), y: over('y', Math.max), z: over('z', Math.max) };
  const middle = { x: (least.x + most.x) / 2, y: (least.y + most.y) / 2, z: (least.z + most.z) / 2 };
  const half = points.reduce((best, p) => Math.max(best, Math.hypot(p.x - middle.x, p.y - middle.y, p.z - middle.z)), 0);
  const sides = [
    [most.x - least.x, 'east to west'],
    [most.y - least.y, 'north to south'],
    [most.z - least.z, 'bottom to top'],
  ] as const;
  // below half a millimetre it is the rounding of a bearing
  const [only] = wires.length === 1 ? wires : [];
  if (only) {
    const length = Math.hypot(only.to.x - only.from.x, only.to.y - only.from.y, only.to.z - only.from.z);
    return { middle, least, half, words: `${lengthText(length)} from end to end.` };
  }
  const told = sides.filter(([length]) => length > 5e-4).map(([length, way]) => `${lengthText(length)} ${way}`);
  return { middle, least, half, words: told.length > 0 ? `${told.join(', ')}.` : '' };
}

function words({ wires, stations }: TurnedAerial, { azimuth, elevation }: TurnedOptions, size: string): string {
  const degrees = (angle: number): number => Math.round((angle * 180) / Math.PI);
  const picked = stations.find((s) => s.picked);
  const bearing = (angle: number): string => `${String((degrees(angle) + 720) % 360).padStart(3, '0')}°`;
  return [
    `${wires.length} straight ${wires.length === 1 ? 'wire' : 'wires'}, ${size}`,
    `Seen looking ${bearing(azimuth)}, ${degrees(Math.abs(elevation))}° ${elevation < 0 ? 'up' : 'down'}.`,
    ...(picked ? [`${picked.label} lies ${bearing(picked.bearing)}.`] : []),
  ].join(' ');
}

function check({ wires, feed }: TurnedAerial, { azimuth, elevation, width = WIDTH }: TurnedOptions): void {
  if (!(width >= 80 && width <= 2000)) throw new GivenError('options.width', `${width} mm`, 'a drawing needs room', 'Give 80 to 2000 mm.');
  if (wires.length === 0) throw new GivenError('aerial.wires', 'none', 'there is nothing to draw', 'Give at least one wire.');
  const number = (path: string, value: number): void => {
    if (!(Math.abs(value) < 1e6)) throw new GivenError(path, `${value}`, 'only numbers can be drawn', 'Give metres, and radians.');
  };
  wires.forEach((w, i) => {
    for (const end of ['from', 'to'] as const)
      for (const key of ['x', 'y', 'z'] as const) number(`aerial.wires[${i}].${end}.${key}`, w[end][key]);
  });
  for (const key of ['x', 'y', 'z'] as const) number(`aerial.feed.${key}`, feed[key]);
  number('options.azimuth', azimuth);
  number('options.elevation', elevation);
}
