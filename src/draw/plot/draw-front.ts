import { GivenError } from '#engine';
import { placeLabel } from '../placing/label.ts';
import { Occupied, WEIGHT } from '../placing/occupied.ts';
import { plotSize } from '../plane/checked-size.ts';
import { type Extent, extentOf } from '../plane/extent.ts';
import { type Vector, vector } from '../plane/vector.ts';
import { type Mark, outline, textBox } from '../svg/mark.ts';
import { textBlock } from '../svg/text-block.ts';
import { textWidth } from '../svg/text-width.ts';
import { axis } from './axis.ts';
import { frameMarks, TICK_SIZE } from './frame-marks.ts';
import { MARGIN, type PlotOptions, plotSheet, WIDTH } from './plot-sheet.ts';

/** A set of the list, or one of those of which none is louder, cleaner and easier to tune at once. */
export interface FrontDot {
  /** best band over what the ear needs [dB] */
  readonly headroom: number;
  /** of programme, relative to it [dB] */
  readonly distortion: number;
  /** how fast the dial runs [Hz per degree]; less is easier */
  readonly hertzPerDegree: number;
  /** its place in the list beside the picture, 1 for the best; null for one that is not in it */
  readonly rank: number | null;
}

export interface FrontOptions extends PlotOptions {
  /** of the frame [mm] */
  readonly height?: number;
}

const HEIGHT = 80;
const EACH_X = 18;
const EACH_Y = 11;
/** Radii of dots, from the fastest dial to the slowest [mm]. */
const SMALLEST = 0.9;
const LARGEST = 2.6;
/** Room kept for dots at the edges of the frame, as a share of the range. */
const AIR = 0.06;

/**
 * What can be had of a drawer: loudness across, cleanness upward, and the larger a dot the slower its dial, as SVG text. Sets of the list carry their number.
 *
 * @throws GivenError for what is no number, or a width that leaves no room
 */
export function drawFront(dots: readonly FrontDot[], options: FrontOptions): string {
  check(dots);
  const width = plotSize('options.width', options.width ?? WIDTH, 60);
  const height = plotSize('options.height', options.height ?? HEIGHT);
  const clean = (d: FrontDot): number => -d.distortion;
  const x = axis(
    { label: 'loudness over what the ear needs', unit: 'dB' },
    aired(dots.map((d) => d.headroom)),
    (width - 30) / EACH_X,
    false,
    'x',
  );
  const y = axis({ label: 'distortion below programme', unit: 'dB' }, aired(dots.map(clean)), height / EACH_Y, false, 'y');
  const gutter = 6 + 2 + Math.max(...y.ticks.map((t) => textWidth(t.text, TICK_SIZE)), 0) + 1.5;
  const frame: Extent = { left: gutter, right: width - 2 * MARGIN, top: 0, bottom: height };
  const at = (d: FrontDot): Vector =>
    vector(frame.left + x.place(d.headroom)! * (frame.right - frame.left), frame.bottom - y.place(clean(d))! * (frame.bottom - frame.top));
  const radius = radiusOf(dots);
  // small dots over large ones, numbered ones over all
  const order = dots
    .map((d, index) => ({ d, index }))
    .sort((a, b) => Number(a.d.rank !== null) - Number(b.d.rank !== null) || radius(b.d) - radius(a.d));
  const body: Mark[] = [...frameMarks(x, y, frame)];
  for (const { d, index } of order)
    body.push({
      kind: 'circle',
      centre: at(d),
      radius: radius(d),
      fill: d.rank === null ? 'faint' : 'accent',
      stroke: d.rank === null ? 'quiet' : 'ink',
      width: d.rank === null ? 0.2 : 0.35,
      labels: { dot: index, ...(d.rank !== null && { rank: d.rank }) },
    });
  body.push(...numbers(dots, at, radius, body));
  const taken = extentOf(body.flatMap(outline))!;
  return plotSheet(options, {
    width,
    description: words(dots),
    plot: { marks: body, left: 0, top: taken.top, bottom: taken.bottom },
    key: { ...sizeKey(dots, radius, width - 2 * MARGIN), above: 3, below: 2 },
  });
}

function check(dots: readonly FrontDot[]): void {
  dots.forEach((d, k) => {
    for (const key of ['headroom', 'distortion', 'hertzPerDegree'] as const)
      if (!Number.isFinite(d[key]) || (key === 'hertzPerDegree' && !(d[key] > 0)))
        throw new GivenError(`dots[${k}].${key}`, `${d[key]}`, 'such a set has no place in the picture', 'Leave it out.');
  });
}

/** Values with room on both sides, so that no dot is cut by the frame. */
function aired(values: readonly number[]): readonly number[] {
  if (values.length === 0) return [0, 10];
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const air = Math.max(1, AIR * (most - least));
  return [least - air, most + air];
}

/** Area grows with the logarithm of the slowness of the dial, over the range that there is. */
function radiusOf(dots: readonly FrontDot[]): (d: Pick<FrontDot, 'hertzPerDegree'>) => number {
  const slow = dots.map((d) => -Math.log(d.hertzPerDegree));
  const [least, most] = [Math.min(...slow), Math.max(...slow)];
  return ({ hertzPerDegree }) => {
    const share = most - least > 1e-9 ? (-Math.log(hertzPerDegree) - least) / (most - least) : 0.5;
    return Math.sqrt(SMALLEST ** 2 + share * (LARGEST ** 2 - SMALLEST ** 2));
  };
}

function numbers(
  dots: readonly FrontDot[],
  at: (d: FrontDot) => Vector,
  radius: (d: FrontDot) => number,
  drawn: readonly Mark[],
): readonly Mark[] {
  const occupied = new Occupied();
  for (const m of drawn) {
    if (m.kind === 'text') occupied.addText(textBox(m));
    else if (m.kind === 'circle')
      occupied.addLine(vector(m.centre.x - m.radius, m.centre.y), vector(m.centre.x + m.radius, m.centre.y), WEIGHT.conductor);
  }
  return dots.flatMap((d) =>
    d.rank === null
      ? []
      : placeLabel(at(d), `${d.rank}`, { size: 3.4, fill: 'ink', clear: radius(d) + 0.6, labels: { number: d.rank } }, occupied),
  );
}

/** What the sizes mean, by three of them. */
function sizeKey(
  dots: readonly FrontDot[],
  radius: (d: Pick<FrontDot, 'hertzPerDegree'>) => number,
  width: number,
): { readonly marks: readonly Mark[]; readonly height: number } {
  if (dots.length === 0) return { marks: [], height: 0 };
  const speeds = dots.map((d) => d.hertzPerDegree);
  const [slowest, fastest] = [Math.min(...speeds), Math.max(...speeds)];
  const shown = fastest / slowest > 1.2 ? [slowest, Math.sqrt(slowest * fastest), fastest] : [slowest];
  const words = textBlock(
    [{ text: 'The larger a dot, the easier its set is to tune; the dial runs by', size: 2.8, fill: 'quiet', kind: 'key' }],
    width,
  );
  const marks: Mark[] = [...words.marks];
  let left = 0;
  let top = words.height + LARGEST + 1;
  for (const hertzPerDegree of shown) {
    const text = speed(hertzPerDegree);
    const needed = 2 * LARGEST + 1.2 + textWidth(text, 2.8) + 5;
    if (left > 0 && left + needed > width) {
      left = 0;
      top += 2 * LARGEST + 1;
    }
    const centre = vector(left + LARGEST, top);
    marks.push(
      { kind: 'circle', centre, radius: radius({ hertzPerDegree }), fill: 'faint', stroke: 'quiet', width: 0.2 },
      {
        kind: 'text',
        at: vector(left + 2 * LARGEST + 1.2, top + 1),
        text,
        size: 2.8,
        anchor: 'start',
        angle: 0,
        fill: 'quiet',
        labels: { key: 'size' },
      },
    );
    left += needed;
  }
  return { marks, height: top + LARGEST };
}

/** To two figures: nobody feels more of a dial. */
const speed = (hertzPerDegree: number): string => `${Number((hertzPerDegree / 1e3).toPrecision(2))} kHz a degree`;

function words(dots: readonly FrontDot[]): string {
  if (dots.length === 0) return 'No set yet.';
  const told = (d: FrontDot): string =>
    `${d.headroom.toFixed(0)} dB over what the ear needs, distortion ${(-d.distortion).toFixed(0)} dB below programme, ${speed(d.hertzPerDegree)}`;
  const ranked = dots.filter((d) => d.rank !== null).sort((a, b) => a.rank! - b.rank!);
  const most = (value: (d: FrontDot) => number): FrontDot => dots.reduce((a, b) => (value(b) > value(a) ? b : a));
  return [
    `${dots.length} ${dots.length === 1 ? 'set' : 'sets'}: those of the list by their numbers, the others such that none is louder, cleaner and easier to tune at once.`,
    ...ranked.map((d) => `Number ${d.rank}: ${told(d)}.`),
    `The loudest: ${told(most((d) => d.headroom))}.`,
    `The cleanest: ${told(most((d) => -d.distortion))}.`,
    `The easiest to tune: ${told(most((d) => -d.hertzPerDegree))}.`,
  ].join(' ');
}
