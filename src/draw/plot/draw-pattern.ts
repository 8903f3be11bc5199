import { GivenError, type PatternPoint } from '#engine';
import { placeLabel } from '../placing/label.ts';
import { Occupied, WEIGHT } from '../placing/occupied.ts';
import { extentOf } from '../plane/extent.ts';
import { scale, type Vector, vector } from '../plane/vector.ts';
import { type Mark, outline, textBox } from '../svg/mark.ts';
import { columnWidth } from './end-labels.ts';
import { fixedText } from './number-text.ts';
import { backOf, type Facts, factsOf, type PatternCut } from './pattern-facts.ts';
import { type Compass, compassMarks, type Disc, towards } from './pattern-grid.ts';
import { RIM, type StationMark, stationLabels, stationLines } from './pattern-stations.ts';
import { cutWords, factWords, patternWords } from './pattern-words.ts';
import { MARGIN, type PlotOptions, plotSheet, WIDTH } from './plot-sheet.ts';
import { seriesLook } from './series-look.ts';

export type Component = 'total' | 'horizontal' | 'vertical';

export interface PatternOptions extends PlotOptions {
  /** which curves; the whole alone where left out */
  readonly components?: readonly Component[];
  /** from the outermost ring to the middle [dB] */
  readonly span?: number;
  /** marked round a cut round the compass */
  readonly stations?: readonly StationMark[];
}

const SPAN = 30;
const LARGEST = 56;
const SMALLEST = 42;
const NAMES: Readonly<Record<Component, string>> = { total: 'both polarisations', horizontal: 'horizontal', vertical: 'vertical' };

/**
 * A cut through a pattern as a polar plot of gain over isotropic, as SVG text: the greatest gain, what goes back, and where the stations lie.
 *
 * Rings are even in decibels; what is weaker than the middle is drawn in the middle.
 *
 * @throws GivenError for a cut without points or values that cannot be
 */
export function drawPattern(cut: PatternCut, options: PatternOptions): string {
  check(cut, options);
  const facts = factsOf(cut);
  const span = options.span ?? SPAN;
  const width = options.width ?? WIDTH;
  const stations = cut.kind === 'azimuth' ? (options.stations ?? []) : [];
  const names = stations.map((s) => stationLines(cut, s));
  const column = columnWidth(names.map((lines) => ({ lines, sample: null })));
  const radius = Math.max(SMALLEST, Math.min(LARGEST, width / 2 - MARGIN - RIM - column));
  const top = 5 * Math.ceil((facts.greatest?.gain ?? 0) / 5 - 1e-9);
  const half = cut.kind === 'elevation' && cut.points.every((p) => Math.sin(p.angle) > -1e-9);
  const disc: Disc = { radius, top, span, half };
  const compass: Compass = cut.kind === 'azimuth' ? 'bearing' : 'elevation';
  const at = (angle: number, gain: number | null): Vector => scale(towards(compass, angle), reach(disc, gain));

  const components = options.components ?? ['total'];
  const curves = components.map((c, i) => curveOf(cut, c, i, at));
  const occupied = new Occupied();
  for (const c of curves)
    if (c.kind === 'polyline')
      for (let i = 0; i + 1 < c.points.length; i++) occupied.addLine(c.points[i]!, c.points[i + 1]!, WEIGHT.dimension);
  const sides = stationLabels(stations, names, disc);
  const taken = stations.map((s) => s.bearing);
  const marks: Mark[] = [...compassMarks(disc, compass, taken, occupied), ...curves, ...sides];
  for (const m of sides) {
    if (m.kind === 'text') occupied.addText(textBox(m));
    else if (m.kind === 'line') occupied.addLine(m.from, m.to, WEIGHT.extension);
  }
  marks.push(...pointers(cut, facts, at, occupied));

  const extent = extentOf(marks.flatMap(outline))!;
  const reachSide = Math.max(-extent.left, extent.right);
  const sheetWidth = Math.max(width, 2 * (reachSide + MARGIN));
  const key = components.length > 1 ? keyMarks(components) : { marks: [], height: 0 };
  return plotSheet(options, {
    width: sheetWidth,
    description: patternWords(cut, facts, stations),
    subtitle: [{ text: cutWords(cut), size: 2.8, fill: 'quiet', kind: 'cut' }],
    plot: { marks, left: sheetWidth / 2 - MARGIN, top: extent.top, bottom: extent.bottom, labels: { radius, top, span } },
    key: { ...key, above: 4, below: 0 },
    foot: [{ text: factWords(facts), size: 3, fill: 'ink', kind: 'facts' }],
  });
}

function check(cut: PatternCut, options: PatternOptions): void {
  if (cut.points.length < 3)
    throw new GivenError('cut.points', `${cut.points.length}`, 'a pattern goes round', 'Give at least 3 directions, better one a degree.');
  cut.points.forEach((p, i) => {
    if (!Number.isFinite(p.angle)) throw new GivenError(`cut.points[${i}].angle`, `${p.angle}`, 'it is an angle', 'Give radians.');
  });
  options.stations?.forEach((s, i) => {
    if (!Number.isFinite(s.bearing))
      throw new GivenError(`options.stations[${i}].bearing`, `${s.bearing}`, 'it is an angle', 'Give radians.');
  });
  const { span = SPAN, width = WIDTH } = options;
  if (!(span >= 10 && span <= 100)) throw new GivenError('options.span', `${span} dB`, 'rings need room', 'Give 10 to 100 dB.');
  if (!(width >= 80 && width <= 2000)) throw new GivenError('options.width', `${width} mm`, 'a plot needs room', 'Give 80 to 2000 mm.');
}

/** Distance from the middle for a gain [mm]. */
function reach({ radius, top, span }: Disc, gain: number | null): number {
  return gain === null ? 0 : radius * Math.max(0, Math.min(1, 1 + (gain - top) / span));
}

function curveOf(cut: PatternCut, component: Component, i: number, at: (angle: number, gain: number | null) => Vector): Mark {
  const points = cut.points.map((p) => at(p.angle, p.gain[component]));
  const whole = turnOf(cut.points) > 2 * Math.PI - 1e-6;
  return {
    kind: 'polyline',
    points: whole ? [...points, points[0]!] : points,
    ...seriesLook(i),
    width: 0.6,
    labels: { component },
  };
}

/** The angle a cut goes through, the step from the last point back to the first counted. */
function turnOf(points: readonly PatternPoint[]): number {
  const [first, last] = [points[0]!.angle, points.at(-1)!.angle];
  return ((last - first) * points.length) / (points.length - 1);
}

/** Main direction and what goes back, marked on the curve and named. */
function pointers(cut: PatternCut, facts: Facts, at: (angle: number, gain: number | null) => Vector, occupied: Occupied): readonly Mark[] {
  const { greatest, back } = facts;
  if (!greatest) return [];
  const name = (point: Vector, text: string, part: string) =>
    placeLabel(point, text, { size: 2.8, fill: 'accent', clear: 1.2, labels: { pointer: part } }, occupied);
  const head = at(greatest.angle, greatest.gain);
  occupied.addLine(vector(0, 0), head, WEIGHT.extension);
  const marks: Mark[] = [
    { kind: 'line', from: vector(0, 0), to: head, stroke: 'accent', width: 0.25 },
    { kind: 'circle', centre: head, radius: 1, fill: 'accent', stroke: 'accent', width: 0.2, labels: { pointer: 'greatest' } },
    ...name(head, `${fixedText(greatest.gain, 1)} dBi`, 'greatest-name'),
  ];
  if (back === null) return marks;
  const tail = at(backOf(cut, greatest.angle), back);
  return [
    ...marks,
    { kind: 'circle', centre: tail, radius: 1, fill: 'paper', stroke: 'accent', width: 0.4, labels: { pointer: 'back' } },
    ...name(tail, `back ${fixedText(back, 1)} dBi`, 'back-name'),
  ];
}

function keyMarks(components: readonly Component[]): { readonly marks: readonly Mark[]; readonly height: number } {
  const marks = components.flatMap((c, i): readonly Mark[] => {
    const y = i * 4.6;
    return [
      { kind: 'line', from: vector(0, y), to: vector(9, y), ...seriesLook(i), width: 0.6 },
      { kind: 'text', at: vector(11, y + 1), text: NAMES[c], size: 2.8, anchor: 'start', angle: 0, fill: 'ink', labels: { key: c } },
    ];
  });
  return { marks, height: components.length * 4.6 };
}
