import { GivenError } from '#engine';
import { plotSize } from '../plane/checked-size.ts';
import { type Extent, extentOf } from '../plane/extent.ts';
import { type Vector, vector } from '../plane/vector.ts';
import { type Mark, outline } from '../svg/mark.ts';
import { textWidth } from '../svg/text-width.ts';
import { type Axis, axis } from './axis.ts';
import { CLASSES, classOf, type DotClass, LOOK } from './dot-classes.ts';
import type { BuiltDot, Dots } from './dots.ts';
import { dotsKey } from './dots-key.ts';
import { dotsWords } from './dots-words.ts';
import { frameMarks, TICK_SIZE } from './frame-marks.ts';
import { MARGIN, type PlotOptions, plotSheet, WIDTH } from './plot-sheet.ts';

export interface DotsOptions extends PlotOptions {
  /** of the frame [mm] */
  readonly height?: number;
}

const HEIGHT = 80;
const EACH_X = 18;
const EACH_Y = 11;
/** Radius of a dot among few, and among very many [mm]. */
const LARGEST = 1.1;
const SMALLEST = 0.4;
/** So many dots are still few. */
const FEW = 200;
/** Room kept at the edges of the frame, as a share of the range. */
const AIR = 0.05;
/** Strip beside the frame, and what is free between them [mm]. */
const STRIP = 16;
const GAP = 4;
const MEANT = 2.4;

/**
 * What becomes of one set in many hands: a dot for each set built, the dial across and loudness upward, as SVG text. How it is heard is told by shape; sets that do not reach the
 * station stand in a strip of their own, filled as high as their share of all.
 *
 * @throws GivenError for what is no number, or a width that leaves no room
 */
export function drawDots(data: Dots, options: DotsOptions): string {
  const { dots, meant, spread } = data;
  dots.forEach((d, k) => {
    check(d, `dots[${k}]`);
  });
  check(meant, 'meant');
  const width = plotSize('options.width', options.width ?? WIDTH, 60);
  const height = plotSize('options.height', options.height ?? HEIGHT);
  const shown = [...dots, meant];
  const xs = [...present(shown.map((d) => d.x)), ...(spread.x ?? [])];
  const levels = [...present(shown.map((d) => d.headroom)), ...(spread.headroom ?? [])];
  const lost = dots.filter((d) => d.x === null).length;
  const right = width - 2 * MARGIN - (lost > 0 ? STRIP + GAP : 1);
  const x = axis(data.x, data.x.from === undefined ? aired(xs) : xs, (right - 20) / EACH_X, false, 'x');
  const y = axis({ label: 'best band over what the ear needs', unit: 'dB' }, aired(levels), height / EACH_Y, false, 'y');
  const gutter = 6 + 2 + Math.max(...y.ticks.map((t) => textWidth(t.text, TICK_SIZE)), 0) + 1.5;
  const frame: Extent = { left: gutter, right, top: 0, bottom: height };
  const at = placing(x, y, frame);
  const body: Mark[] = [
    ...bandMarks(at, frame, spread),
    ...frameMarks(x, y, frame),
    ...levelMark(at, frame, y),
    ...CLASSES.filter((c) => c !== 'lost').flatMap((c) => {
      const points = dots.filter((d) => classOf(d) === c).map(at);
      return specks(c, points, radiusOf(points.length));
    }),
    ...(lost > 0 ? stripMarks(lost, dots.length, frame) : []),
    ...(meant.x === null ? [] : meantMarks(at(meant))),
  ];
  const taken = extentOf(body.flatMap(outline))!;
  return plotSheet(options, {
    width,
    description: dotsWords(data),
    plot: { marks: body, left: 0, top: taken.top, bottom: taken.bottom },
    key: { ...dotsKey(data, width - 2 * MARGIN), above: 3, below: 2 },
  });
}

function check(d: BuiltDot, path: string): void {
  for (const key of ['x', 'headroom'] as const)
    if (d[key] !== null && !Number.isFinite(d[key]))
      throw new GivenError(
        `${path}.${key}`,
        `${d[key]}`,
        'such a set has no place in the picture',
        'Give a number, or null where there is none.',
      );
}

const present = (values: readonly (number | null)[]): readonly number[] => values.filter((v) => v !== null);

/** Values with room on both sides, so that no dot is cut by the frame. */
function aired(values: readonly number[]): readonly number[] {
  if (values.length === 0) return [0, 10];
  const [least, most] = [values.reduce((a, b) => Math.min(a, b)), values.reduce((a, b) => Math.max(a, b))];
  const air = AIR * (most - least);
  return [least - air, most + air];
}

/** What is rare is drawn larger, or it would be lost among the others. */
const radiusOf = (count: number): number => Math.max(SMALLEST, LARGEST * Math.min(1, (FEW / Math.max(1, count)) ** 0.3));

type Placing = (d: Pick<BuiltDot, 'x' | 'headroom'>) => Vector;

/** What gives no sound at all stands on the lower edge. */
const placing =
  (x: Axis, y: Axis, f: Extent): Placing =>
  (d) =>
    vector(
      f.left + x.place(d.x ?? x.from)! * (f.right - f.left),
      d.headroom === null ? f.bottom : f.bottom - y.place(d.headroom)! * (f.bottom - f.top),
    );

function specks(c: DotClass, points: readonly Vector[], radius: number): readonly Mark[] {
  if (points.length === 0) return [];
  const { shape, stroke, thickness } = LOOK[c];
  return [
    {
      kind: 'specks',
      shape,
      points,
      radius,
      stroke,
      width: shape === 'dot' ? 2 * radius : Math.max(0.15, thickness * radius),
      cap: 'round',
      labels: { dots: c, count: points.length },
    },
  ];
}

/** Where 80 of 100 lie, and the middle, across and upward. */
function bandMarks(at: Placing, f: Extent, { x, headroom }: Dots['spread']): readonly Mark[] {
  const band = (points: readonly Vector[], name: string): Mark => ({
    kind: 'area',
    points,
    fill: 'faint',
    opacity: 0.35,
    labels: { band: name },
  });
  const middle = (from: Vector, to: Vector, name: string): Mark => ({
    kind: 'line',
    from,
    to,
    stroke: 'quiet',
    width: 0.25,
    dash: [1.4, 1],
    labels: { middle: name },
  });
  const out: Mark[] = [];
  if (x) {
    const [low, half, high] = x.map((v) => at({ x: v, headroom: null }).x) as [number, number, number];
    out.push(
      band([vector(low, f.top), vector(high, f.top), vector(high, f.bottom), vector(low, f.bottom)], 'x'),
      middle(vector(half, f.top), vector(half, f.bottom), 'x'),
    );
  }
  if (headroom) {
    const [low, half, high] = headroom.map((v) => at({ x: null, headroom: v }).y) as [number, number, number];
    out.push(
      band([vector(f.left, low), vector(f.right, low), vector(f.right, high), vector(f.left, high)], 'y'),
      middle(vector(f.left, half), vector(f.right, half), 'y'),
    );
  }
  return out;
}

/** Where sound begins to be heard, if that is in the picture. */
function levelMark(at: Placing, f: Extent, y: Axis): readonly Mark[] {
  const place = y.place(0)!;
  if (place <= 0 || place >= 1) return [];
  const height = at({ x: null, headroom: 0 }).y;
  return [
    { kind: 'line', from: vector(f.left, height), to: vector(f.right, height), stroke: 'quiet', width: 0.4, labels: { level: 'ear' } },
  ];
}

/** Sets that never get there, from the bottom up: each has as much room as if all were there. */
function stripMarks(lost: number, all: number, f: Extent): readonly Mark[] {
  const [left, right] = [f.right + GAP, f.right + GAP + STRIP];
  const height = f.bottom - f.top;
  const columns = Math.max(1, Math.round(Math.sqrt((all * STRIP) / height)));
  const rows = Math.ceil(all / columns);
  const points = Array.from({ length: lost }, (_, k) =>
    vector(left + (((k % columns) + 0.5) * STRIP) / columns, f.bottom - ((Math.floor(k / columns) + 0.5) * height) / rows),
  );
  const text = (line: number, words: string): Mark => ({
    kind: 'text',
    at: vector((left + right) / 2, f.bottom + 4.2 + 3.6 * line),
    text: words,
    size: TICK_SIZE,
    anchor: 'middle',
    angle: 0,
    fill: 'quiet',
    labels: { strip: line },
  });
  const corners = [vector(left, f.top), vector(right, f.top), vector(right, f.bottom), vector(left, f.bottom), vector(left, f.top)];
  return [
    { kind: 'polyline', points: corners, stroke: 'faint', width: 0.3 },
    ...specks('lost', points, Math.min(LARGEST, (0.28 * STRIP) / columns)),
    text(0, 'not reached'),
    text(1, `${lost} of ${all}`),
  ];
}

const meantMarks = (centre: Vector): readonly Mark[] => [
  { kind: 'circle', centre, radius: MEANT, stroke: 'paper', width: 1.4 },
  { kind: 'circle', centre, radius: MEANT, stroke: 'accent', width: 0.7, labels: { meant: 'set' } },
];
