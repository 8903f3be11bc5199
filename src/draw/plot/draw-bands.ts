import { GivenError } from '#engine';
import { plotSize } from '../plane/checked-size.ts';
import { type Extent, extentOf } from '../plane/extent.ts';
import { type Vector, vector } from '../plane/vector.ts';
import { type Mark, outline } from '../svg/mark.ts';
import { textWidth } from '../svg/text-width.ts';
import { axis } from './axis.ts';
import { curveMarks } from './curve-marks.ts';
import { columnHeight, columnWidth, drawEndLabels, type EndLabel, endLines } from './end-labels.ts';
import { frameMarks, TICK_SIZE } from './frame-marks.ts';
import { fixedText, valueText } from './number-text.ts';
import { MARGIN, type PlotOptions, plotSheet, WIDTH } from './plot-sheet.ts';
import type { Series } from './series.ts';
import { seriesLook } from './series-look.ts';

/** Levels in third-octave bands [dB], all of one kind, so that they stand beside each other: what the earpiece's coupler reads, in dB SPL. */
export interface LevelsByBand {
  /** mid-frequencies, ascending [Hz] */
  readonly band: ArrayLike<number>;
  readonly programme: ArrayLike<number>;
  /** of the listener */
  readonly threshold: ArrayLike<number>;
  readonly roomNoise?: ArrayLike<number>;
  /** unwanted sound of the set itself */
  readonly disturbance?: ArrayLike<number>;
  /** level from which a band is heard: threshold or what masks it, whichever is more; the threshold where left out */
  readonly needed?: ArrayLike<number>;
}

export interface BandsOptions extends PlotOptions {
  /** of the frame the curves are in [mm] */
  readonly height?: number;
}

const HEIGHT = 80;
const NARROWEST = 50;
const EACH_X = 18;
const EACH_Y = 11;
/** Half a third of an octave, as a factor. */
const HALF_BAND = 2 ** (1 / 6);
/** A bar leaves so much of its band free on either side. */
const FREE = 0.12;
/** Levels below this are silence, and stretch no axis [dB]. */
const SILENCE = -20;
const LEAST_BAR = 3;
const NUMBER = 2.3;
const ROW = 4.2;

/**
 * A programme in third-octave bands as bars over the curves that it must rise above, as SVG text: what stands above is filled, what is not heard is
 * an outline, and over each bar stands by how much [dB].
 *
 * @throws GivenError for levels that are no numbers, or lists of unequal length
 */
export function drawBands(levels: LevelsByBand, options: BandsOptions): string {
  check(levels);
  const bands = Array.from(levels.band);
  const needed = Array.from(levels.needed ?? levels.threshold);
  const curves = curvesOf(levels);
  const width = plotSize('options.width', options.width ?? WIDTH);
  const names = curves.map((s, i) => ({ lines: endLines(s.label), sample: seriesLook(i + 1) }));
  const height = Math.max(plotSize('options.height', options.height ?? HEIGHT), columnHeight(names));
  const heights = [...Array.from(levels.programme), ...curves.flatMap((s) => s.points.map((p) => p.y!))].filter((v) => v > SILENCE);
  // the lowest bar still stands up from the axis
  const reach = heights.length > 0 ? [Math.min(...heights) - LEAST_BAR, ...heights] : [0, 60];
  const y = axis({ label: 'level', unit: 'dB SPL' }, reach, height / EACH_Y, true, 'levels');
  const gutter = 6 + 2 + Math.max(...y.ticks.map((t) => textWidth(t.text, TICK_SIZE))) + 1.5;
  const inner = Math.max(NARROWEST, width - 2 * MARGIN - gutter - columnWidth(names));
  const ends = { from: bands[0]! / HALF_BAND, to: bands.at(-1)! * HALF_BAND };
  const x = axis({ label: 'frequency', unit: 'Hz', scale: 'log', ...ends }, bands, Math.max(2, inner / EACH_X), false, 'levels.band');
  const frame: Extent = { left: gutter, right: gutter + inner, top: 0, bottom: height };
  const px = (f: number) => frame.left + x.place(f)! * inner;
  const py = (level: number) => frame.bottom - Math.max(0, Math.min(1, y.place(level)!)) * height;
  const at = (f: number, level: number): Vector | null => vector(px(f), frame.bottom - y.place(level)! * height);

  const step = px(bands[0]! * HALF_BAND) - frame.left;
  const bars = bands.flatMap((f, i) => barMarks(i, px(f), step * (1 - 2 * FREE), py(levels.programme[i]!), py(needed[i]!), frame.bottom));
  const body: Mark[] = [...frameMarks(x, y, frame), ...bars, ...headroomMarks(bands.map(px), levels.programme, needed, step)];
  const endLabels: EndLabel[] = [];
  curves.forEach((s, i) => {
    const drawn = curveMarks(s, i + 1, at, frame);
    body.push(...drawn.marks);
    if (drawn.end)
      endLabels.push({ ...names[i]!, from: drawn.end, fill: seriesLook(i + 1).stroke, labels: { series: i + 1, part: 'name' } });
  });
  body.push(...drawEndLabels(endLabels, frame.right, frame.top, frame.bottom, 1));

  const taken = extentOf(body.flatMap(outline))!;
  const sheetWidth = Math.max(width, taken.right + 2 * MARGIN);
  return plotSheet(options, {
    width: sheetWidth,
    description: bandWords(levels, needed),
    plot: { marks: body, left: 0, top: taken.top, bottom: taken.bottom },
    key: { ...keyMarks(), above: 4, below: 0 },
  });
}

function curvesOf(levels: LevelsByBand): readonly Series[] {
  const curve = (label: string, values: ArrayLike<number> | undefined): readonly Series[] =>
    values ? [{ label, points: Array.from(levels.band, (x, i) => ({ x, y: values[i]! })) }] : [];
  return [
    ...curve('hearing threshold', levels.threshold),
    ...curve('room noise', levels.roomNoise),
    ...curve("the set's own noise", levels.disturbance),
    ...curve('needed to be heard', levels.needed),
  ];
}

/** One band: up to what is needed an outline, above it filled. Heights grow upwards, that is to smaller y. */
function barMarks(i: number, x: number, width: number, top: number, needed: number, bottom: number): readonly Mark[] {
  if (bottom - top < 1e-6) return [];
  const box = (from: number, to: number): readonly Vector[] => [
    vector(x - width / 2, from),
    vector(x + width / 2, from),
    vector(x + width / 2, to),
    vector(x - width / 2, to),
  ];
  const whole = box(top, bottom);
  const heard = Math.min(needed, bottom);
  return [
    { kind: 'area', points: whole, fill: 'faint', opacity: 0.45, labels: { band: i, part: 'programme' } },
    ...(heard > top ? [{ kind: 'area', points: box(top, heard), fill: 'series-1', labels: { band: i, part: 'heard' } } as const] : []),
    { kind: 'polyline', points: [...whole, whole[0]!], stroke: 'series-1', width: 0.25 },
  ];
}

/** By how much each band stands over what it needs, above the frame; every second or third where there is no room for all. */
function headroomMarks(at: readonly number[], programme: ArrayLike<number>, needed: readonly number[], step: number): readonly Mark[] {
  const texts = needed.map((n, i) => headroomText(programme[i]! - n));
  const every = Math.max(1, Math.ceil((Math.max(...texts.map((t) => textWidth(t, NUMBER))) + 0.8) / step));
  const text = (x: number, y: number, words: string, anchor: 'start' | 'middle', name: string): Mark => ({
    kind: 'text',
    at: vector(x, y),
    text: words,
    size: NUMBER,
    anchor,
    angle: 0,
    fill: 'quiet',
    labels: { headroom: name },
  });
  return [
    ...texts.flatMap((t, i) => (i % every === 0 ? [text(at[i]!, -1.6, t, 'middle', 'number')] : [])),
    text(at[0]! - step / 2, -1.6 - ROW, 'over what is needed [dB]:', 'start', 'name'),
  ];
}

const headroomText = (decibels: number): string => (decibels < -99 ? '–' : `${decibels >= 0.5 ? '+' : ''}${fixedText(decibels, 0)}`);

function keyMarks(): { readonly marks: readonly Mark[]; readonly height: number } {
  const swatch = (x: number, heard: boolean): readonly Mark[] => {
    const corners = [vector(x, 0), vector(x + 5, 0), vector(x + 5, 2.8), vector(x, 2.8)];
    return [
      { kind: 'area', points: corners, fill: heard ? 'series-1' : 'faint', opacity: heard ? 1 : 0.45 },
      { kind: 'polyline', points: [...corners, corners[0]!], stroke: 'series-1', width: 0.25 },
    ];
  };
  const text = (x: number, words: string): Mark => ({
    kind: 'text',
    at: vector(x, 2.4),
    text: words,
    size: 2.8,
    anchor: 'start',
    angle: 0,
    fill: 'ink',
    labels: { key: words },
  });
  const first = 'programme, heard';
  const second = 7 + textWidth(first, 2.8) + 6;
  return { marks: [...swatch(0, true), text(7, first), ...swatch(second, false), text(second + 7, 'programme, not heard')], height: 6 };
}

function bandWords(levels: LevelsByBand, needed: readonly number[]): string {
  const bands = Array.from(levels.band);
  const over = bands.filter((_, i) => levels.programme[i]! > needed[i]!);
  const best = bands.reduce((k, _, i) => (levels.programme[i]! - needed[i]! > levels.programme[k]! - needed[k]! ? i : k), 0);
  const room = levels.programme[best]! - needed[best]!;
  return [
    `Third-octave bands from ${valueText(bands[0]!, 'Hz')} to ${valueText(bands.at(-1)!, 'Hz')}.`,
    over.length === 0 ? 'No band of the programme is heard.' : `${over.length} of ${bands.length} bands are heard.`,
    `Best band: ${valueText(bands[best]!, 'Hz')}, ${fixedText(Math.abs(room), 1)} dB ${room > 0 ? 'over' : 'under'} what is needed.`,
  ].join(' ');
}

function check(levels: LevelsByBand): void {
  const count = levels.band.length;
  if (count < 2) throw new GivenError('levels.band', `${count} bands`, 'bars stand beside each other', 'Give two bands or more.');
  for (const key of ['band', 'programme', 'threshold', 'roomNoise', 'disturbance', 'needed'] as const) {
    const list = levels[key];
    if (!list) continue;
    if (list.length !== count)
      throw new GivenError(`levels.${key}`, `${list.length} values`, `there are ${count} bands`, 'Give one value for each band.');
    for (let i = 0; i < count; i++) {
      const ascends = key !== 'band' || (list[i]! > 0 && (i === 0 || list[i]! > list[i - 1]!));
      if (!(Math.abs(list[i]!) < 1e6 && ascends))
        throw new GivenError(
          `levels.${key}[${i}]`,
          `${list[i]}`,
          'only numbers can be drawn',
          'Give ascending frequencies, and levels in dB.',
        );
    }
  }
}
