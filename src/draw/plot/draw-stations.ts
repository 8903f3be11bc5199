import { fieldLevel, GivenError } from '#engine';
import { Occupied, WEIGHT } from '../placing/occupied.ts';
import { extentOf } from '../plane/extent.ts';
import { scale as by, type Vector, vector } from '../plane/vector.ts';
import { type Mark, outline, type TextMark, textBox } from '../svg/mark.ts';
import { columnHeight, columnWidth, drawEndLabels, type EndLabel, endLines } from './end-labels.ts';
import { fixedText, valueText } from './number-text.ts';
import { bearingWords } from './pattern-facts.ts';
import { towards } from './pattern-grid.ts';
import { MARGIN, type PlotOptions, plotSheet, WIDTH } from './plot-sheet.ts';
import { niceStep, roundDown } from './ticks.ts';

/** A station as it lies around a place. */
export interface StationAround {
  readonly label: string;
  /** [rad], clockwise from true north */
  readonly bearing: number;
  /** [m] */
  readonly distance: number;
  /** median field [V/m rms] */
  readonly field: number;
}

export interface StationsOptions extends PlotOptions {
  /** how distances grow from the middle; logarithmic where the furthest is ten times as far as the nearest, if left out */
  readonly rings?: 'linear' | 'log';
}

const LARGEST = 56;
const SMALLEST = 40;
/** Room round the outermost ring for the bearings [mm]. */
const RIM = 15;
const LONGEST_NAME = 34;
const SIZE = 2.8;
const SPOKE = 30;
/** A station nearer than this to a spoke takes the place of the spoke's number [rad]. */
const NEAR = (7 * Math.PI) / 180;
const LOG_FROM = 10;
/** The innermost ring of a logarithmic disc stands at this share of its radius: the place itself is the middle. */
const INNERMOST = 0.2;
/** Rings stand at least so far apart [mm]. */
const APART = 6;

interface Rings {
  readonly kind: 'linear' | 'log';
  readonly at: readonly number[];
  /** share of the disc's radius */
  place(distance: number): number;
}

/** Stations around a place by bearing and distance, each with the field it makes there, as SVG text. */
export function drawStations(stations: readonly StationAround[], options: StationsOptions): string {
  const width = options.width ?? WIDTH;
  check(stations, width);
  const names = stations.map(stationLines);
  const column = columnWidth(names.map((lines) => ({ lines, sample: null })));
  const wide = Math.max(SMALLEST, Math.min(LARGEST, width / 2 - MARGIN - RIM - column));
  const rings = ringsOf(stations, options.rings, wide);
  const spots = stations.map((s) => by(towards('bearing', s.bearing), wide * rings.place(s.distance)));
  const occupied = new Occupied();
  const rays = stations.map((s, i) => ({ from: spots[i]!, to: by(towards('bearing', s.bearing), wide + 9) }));
  for (const r of rays) occupied.addLine(r.from, r.to, WEIGHT.conductor);
  const marks: Mark[] = [
    ...discMarks(rings, stations, wide, occupied),
    ...rays.map((r): Mark => ({ kind: 'line', ...r, stroke: 'quiet', width: 0.15 })),
    { kind: 'circle', centre: vector(0, 0), radius: 0.9, fill: 'ink', stroke: 'ink', width: 0.1, labels: { place: 'here' } },
    ...spots.map(
      (centre, i): Mark => ({
        kind: 'circle',
        centre,
        radius: 1.2,
        fill: 'accent',
        stroke: 'paper',
        width: 0.3,
        labels: { station: i, part: 'spot' },
      }),
    ),
    ...labelMarks(stations, names, rays, wide),
  ];
  const extent = extentOf(marks.flatMap(outline))!;
  const sheetWidth = Math.max(width, 2 * (Math.max(-extent.left, extent.right) + MARGIN));
  const kind = rings.kind === 'log' ? 'Distances are logarithmic' : 'Distances are even';
  return plotSheet(options, {
    width: sheetWidth,
    description:
      stations.length === 0
        ? 'No stations.'
        : `${stations.length} ${stations.length === 1 ? 'station' : 'stations'} around the place: ${names.map((lines) => lines.join(' ')).join('; ')}.`,
    subtitle: [{ text: `${kind}; rings in km, bearings from true north.`, size: 2.8, fill: 'quiet', kind: 'rings' }],
    plot: { marks, left: sheetWidth / 2 - MARGIN, top: extent.top, bottom: extent.bottom, labels: { radius: wide } },
    aboveFoot: 4,
  });
}

/** Name; bearing and distance; field. */
function stationLines(s: StationAround): readonly string[] {
  const level = s.field > 0 ? `${fixedText(fieldLevel(s.field), 0)} dBµV/m` : 'nothing';
  return [...endLines(s.label, LONGEST_NAME), `${bearingWords(s.bearing)}, ${valueText(s.distance, 'm')}`, level];
}

function ringsOf(stations: readonly StationAround[], asked: StationsOptions['rings'], radius: number): Rings {
  const distances = stations.map((s) => s.distance);
  const [nearest, furthest] = distances.length > 0 ? [Math.min(...distances), Math.max(...distances)] : [1e3, 1e4];
  const kind = asked ?? (furthest >= LOG_FROM * nearest ? 'log' : 'linear');
  if (kind === 'linear') {
    const step = niceStep(furthest, 4);
    const count = Math.max(1, Math.ceil(furthest / step - 1e-9));
    return { kind, at: Array.from({ length: count }, (_, i) => (i + 1) * step), place: (d) => d / (count * step) };
  }
  const first = roundDown(nearest * (1 + 1e-9));
  const last = Math.max(1 / roundDown((1 / furthest) * (1 + 1e-9)), 2 * first);
  const place = (d: number) => INNERMOST + ((1 - INNERMOST) * Math.log(d / first)) / Math.log(last / first);
  const at: number[] = [];
  for (let d = last; d >= first * (1 - 1e-9); d = roundDown(d * (1 - 1e-6)))
    if (at.length === 0 || (place(at[0]!) - place(d)) * radius >= APART) at.unshift(d);
  return { kind, at, place };
}

function discMarks(rings: Rings, stations: readonly StationAround[], radius: number, occupied: Occupied): readonly Mark[] {
  const marks: Mark[] = rings.at.map(
    (d, i): Mark => ({
      kind: 'circle',
      centre: vector(0, 0),
      radius: radius * rings.place(d),
      stroke: i === rings.at.length - 1 ? 'quiet' : 'faint',
      width: i === rings.at.length - 1 ? 0.35 : 0.2,
      labels: { ring: d },
    }),
  );
  for (let degrees = 0; degrees < 360; degrees += SPOKE) {
    const angle = (degrees * Math.PI) / 180;
    const out = towards('bearing', angle);
    marks.push({ kind: 'line', from: vector(0, 0), to: by(out, radius), stroke: 'faint', width: 0.15 });
    if (stations.some((s) => Math.abs(Math.sin((s.bearing - angle) / 2)) < Math.sin(NEAR / 2))) continue;
    const at = by(out, radius + 4.2);
    const number: TextMark = {
      kind: 'text',
      at: vector(at.x, at.y + 0.35 * SIZE),
      text: { 0: 'N', 90: 'E', 180: 'S', 270: 'W' }[degrees] ?? `${String(degrees).padStart(3, '0')}°`,
      size: SIZE,
      anchor: Math.abs(out.x) < 0.3 ? 'middle' : out.x > 0 ? 'start' : 'end',
      angle: 0,
      fill: 'quiet',
      labels: { spoke: degrees },
    };
    occupied.addText(textBox(number));
    marks.push(number);
  }
  return [...marks, ...ringNumbers(rings, radius, occupied)];
}

/** Kilometres along the spoke between two others that hides least. */
function ringNumbers(rings: Rings, radius: number, occupied: Occupied): readonly Mark[] {
  let best: { readonly price: number; readonly texts: readonly TextMark[] } | null = null;
  for (let degrees = SPOKE / 2; degrees < 360; degrees += SPOKE) {
    const out = towards('bearing', (degrees * Math.PI) / 180);
    const texts = rings.at.map((d): TextMark => {
      const at = by(out, radius * rings.place(d) - 1.6);
      return {
        kind: 'text',
        at: vector(at.x, at.y + 0.35 * SIZE),
        text: `${Number((d / 1e3).toPrecision(6))}`,
        size: SIZE,
        anchor: 'middle',
        angle: 0,
        fill: 'quiet',
        labels: { kilometres: 'ring' },
      };
    });
    const price = texts.reduce((sum, t) => sum + Math.min(occupied.priceOfText(textBox(t)), 100 * WEIGHT.conductor), 0);
    if (!best || price < best.price) best = { price, texts };
  }
  return best!.texts;
}

/** Names in two columns, each led to from the rim where its ray ends. */
function labelMarks(
  stations: readonly StationAround[],
  names: readonly (readonly string[])[],
  rays: readonly { readonly to: Vector }[],
  radius: number,
): readonly Mark[] {
  const [right, left]: [EndLabel[], EndLabel[]] = [[], []];
  stations.forEach((_, i) => {
    const from = rays[i]!.to;
    (from.x >= 0 ? right : left).push({ lines: names[i]!, sample: null, from, fill: 'ink', labels: { station: i } });
  });
  const edge = radius + RIM - 5;
  const half = Math.max(radius + RIM, columnHeight(right) / 2, columnHeight(left) / 2);
  return [...drawEndLabels(right, edge, -half, half, 1), ...drawEndLabels(left, -edge, -half, half, -1)];
}

function check(stations: readonly StationAround[], width: number): void {
  stations.forEach((s, i) => {
    if (!Number.isFinite(s.bearing)) throw new GivenError(`stations[${i}].bearing`, `${s.bearing}`, 'it is an angle', 'Give radians.');
    if (!(s.distance > 0 && s.distance < 1e9))
      throw new GivenError(`stations[${i}].distance`, `${s.distance} m`, 'it lies nowhere', 'Give metres above zero.');
    if (!(s.field >= 0 && s.field < 1e9)) throw new GivenError(`stations[${i}].field`, `${s.field} V/m`, 'it is no field', 'Give V/m.');
  });
  if (!(width >= 80 && width <= 2000)) throw new GivenError('options.width', `${width} mm`, 'a plot needs room', 'Give 80 to 2000 mm.');
}
