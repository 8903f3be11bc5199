import { plotSize } from '../plane/checked-size.ts';
import { type Extent, extentOf } from '../plane/extent.ts';
import { type Vector, vector } from '../plane/vector.ts';
import { type Mark, outline } from '../svg/mark.ts';
import { textWidth } from '../svg/text-width.ts';
import { type AxisOptions, axis } from './axis.ts';
import { bandMarks, curveMarks } from './curve-marks.ts';
import { curveWords } from './curve-words.ts';
import { columnHeight, columnWidth, drawEndLabels, type EndLabel, endLines } from './end-labels.ts';
import { drawFlags, flagOverrun } from './flags.ts';
import { frameMarks, TICK_SIZE } from './frame-marks.ts';
import { MARGIN, type PlotOptions, plotSheet, WIDTH } from './plot-sheet.ts';
import { pointMarks } from './point-marks.ts';
import { checkSeries, type PlotMark, type Series } from './series.ts';
import { seriesLook } from './series-look.ts';

export interface CurveOptions extends PlotOptions {
  readonly x: AxisOptions;
  readonly y: AxisOptions;
  readonly marks?: readonly PlotMark[];
  /** of the frame the curves are in [mm] */
  readonly height?: number;
}

const HEIGHT = 80;
/** A frame narrower than this shows nothing: then the sheet is made wider [mm]. */
const NARROWEST = 50;
/** Room for one number on an axis [mm]. */
const EACH_X = 18;
const EACH_Y = 11;

/**
 * Curves over a common axis, as SVG text; each named at its end.
 *
 * @throws GivenError for values that are no numbers, or sizes or ends of axes that cannot be
 */
export function drawCurve(series: readonly Series[], options: CurveOptions): string {
  const marks = options.marks ?? [];
  checkSeries(series, marks);
  const width = plotSize('options.width', options.width ?? WIDTH);
  const xs = [
    ...series.flatMap((s) => [...s.points, ...(s.band ?? [])].map((p) => p.x)),
    ...marks.flatMap((m) => (m.kind === 'y' ? [] : [m.x])),
  ];
  const ys = [
    ...series.flatMap((s) => s.points.flatMap((p) => (p.y === null ? [] : [p.y]))),
    ...series.flatMap((s) => (s.band ?? []).flatMap((b) => [b.low, b.high])),
    ...marks.flatMap((m) => (m.kind === 'x' ? [] : [m.y])),
  ];
  const names = [
    ...series.map((s, i) => ({ lines: endLines(s.label), sample: { ...seriesLook(i), dots: s.look === 'dots' } })),
    ...levelNames(marks),
  ];
  const height = Math.max(plotSize('options.height', options.height ?? HEIGHT), columnHeight(names));
  const y = axis(options.y, ys, height / EACH_Y, true, 'options.y');
  const gutter = 6 + 2 + Math.max(...y.ticks.map((t) => textWidth(t.text, TICK_SIZE)), 0) + 1.5;
  const xWanted = (width - 2 * MARGIN - gutter - columnWidth(names)) / EACH_X;
  const x = axis(options.x, xs, Math.max(2, xWanted), false, 'options.x');

  const flags = marks.flatMap((m) => {
    const at = m.kind === 'x' ? x.place(m.x) : null;
    return m.kind === 'x' && at !== null && at >= 0 && at <= 1 ? [{ at, label: m.label }] : [];
  });
  const room = width - 2 * MARGIN - gutter;
  let inner = room - columnWidth(names);
  // flags near the right edge may need more room than the names; twice is enough, for the need grows slower than the room
  for (let i = 0; i < 2; i++) inner = Math.min(inner, room - Math.min(room, flagOverrun(flags, inner)));
  inner = Math.max(NARROWEST, inner);
  const frame: Extent = { left: gutter, right: gutter + inner, top: 0, bottom: height };
  const at = (px: number, py: number): Vector | null => {
    const [u, v] = [x.place(px), y.place(py)];
    return u === null || v === null ? null : vector(frame.left + u * inner, frame.bottom - v * height);
  };
  const flagged = drawFlags(flags, frame.left, inner, frame.top, frame.bottom);
  const body: Mark[] = [...frameMarks(x, y, frame), ...series.flatMap((s, i) => bandMarks(s, i, at, frame)), ...flagged.marks];
  const ends: EndLabel[] = [];
  series.forEach((s, i) => {
    const drawn = curveMarks(s, i, at, frame);
    body.push(...drawn.marks);
    if (drawn.end) ends.push({ ...names[i]!, from: drawn.end, fill: seriesLook(i).stroke, labels: { series: i, part: 'name' } });
  });
  for (const m of marks) {
    const v = m.kind === 'y' ? y.place(m.y) : null;
    if (m.kind !== 'y' || v === null || v < 0 || v > 1) continue;
    const from = vector(frame.left, frame.bottom - v * height);
    const to = vector(frame.right, from.y);
    body.push({ kind: 'line', from, to, stroke: 'accent', width: 0.25, labels: { level: 'line' } });
    ends.push({ lines: endLines(m.label), sample: null, from: to, fill: 'accent', labels: { level: 'name' } });
  }
  body.push(...drawEndLabels(ends, frame.right, frame.top, frame.bottom, 1));
  body.push(...pointMarks(marks, at, frame, body));

  const taken = extentOf(body.flatMap(outline))!;
  const left = Math.min(0, taken.left);
  const sheetWidth = Math.max(width, taken.right - left + 2 * MARGIN);
  return plotSheet(options, {
    width: sheetWidth,
    description: curveWords(series, options, x, y, marks),
    plot: { marks: body, left: -left, top: taken.top, bottom: taken.bottom },
    aboveFoot: 3,
  });
}

const levelNames = (marks: readonly PlotMark[]) =>
  marks.flatMap((m) => (m.kind === 'y' ? [{ lines: endLines(m.label), sample: null }] : []));
