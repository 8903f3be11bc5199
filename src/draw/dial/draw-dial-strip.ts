import { GivenError } from '#engine';
import { spread } from '../placing/spread.ts';
import { extentOf } from '../plane/extent.ts';
import { vector } from '../plane/vector.ts';
import { svgDocument } from '../svg/document.ts';
import { type Mark, outline } from '../svg/mark.ts';
import type { Theme } from '../svg/palette.ts';
import { type Paragraph, textBlock } from '../svg/text-block.ts';
import { textWidth } from '../svg/text-width.ts';
import { type DialScale, type DialStation, type PointerSense, travelOf } from './dial-scale.ts';
import { degreesText, dialDescription, keyWords, onDial, stationText, within } from './dial-words.ts';
import { frequencyTicks } from './frequency-ticks.ts';

export interface DialStripOptions {
  readonly title?: string;
  readonly note?: string;
  /** of the sheet [mm] */
  readonly width?: number;
  /** what the frequency does as the pointer goes to the right */
  readonly rightwards?: PointerSense;
  readonly theme?: Theme;
  readonly id?: string;
}

const WIDTH = 90;
const MARGIN = 4;
const NARROWEST = 45;
const SIZE = 2.8;
const AIR = 2;
const FINE = 1.2;
const DEGREES_AT = 9;
const DEGREE_STEPS = [10, 30, 60, 90, 180, 360, 720];
/** Beside the strip, for its units [mm]. */
const ENDS = 14;

/** The dial laid out straight, for narrow screens, as SVG text: even in degrees of the capacitor. */
export function drawDialStrip(scale: DialScale, options: DialStripOptions = {}): string {
  const sense = options.rightwards ?? 'rising';
  const travel = travelOf(scale, sense);
  const given = options.width ?? WIDTH;
  if (!(given >= NARROWEST && given <= 2000))
    throw new GivenError('options.width', `${given} mm`, 'a strip needs room for its numbers', `Give ${NARROWEST} to 2000 mm.`);
  const stations = onDial(scale, travel).here;
  const shares = stations.map((s) => s.points.map((p) => travel.ofAngle(p.angle)).filter(within));
  const length = given - 2 * MARGIN - ENDS;
  const marks: Mark[] = [
    { kind: 'line', from: vector(0, 0), to: vector(length, 0), stroke: 'ink', width: 0.4, labels: { part: 'scale' } },
    ...bestMarks(shares, length),
    ...stationNumbers(shares, length),
    ...frequencyMarks(),
    ...degreeMarks(),
  ];
  const extent = extentOf(marks.flatMap(outline))!;
  const sheetWidth = Math.max(given, extent.right - extent.left + 2 * MARGIN);
  const title = options.title ?? 'Dial';
  const quiet = (text: string, kind: string): Paragraph => ({ text, size: 2.6, fill: 'quiet', kind });
  const head = textBlock([{ text: title, size: 4, fill: 'ink', kind: 'title' }], sheetWidth - 2 * MARGIN);
  const foot = textBlock(
    [
      ...stations.map((s, i) => ({ text: stationLine(s, i), size: 2.8, fill: 'ink', kind: 'station' }) as const),
      ...keyWords(scale, travel).map((text) => quiet(text, 'key')),
      ...(options.note === undefined ? [] : [quiet(options.note, 'note')]),
    ],
    sheetWidth - 2 * MARGIN,
  );
  const top = MARGIN + head.height + 2;
  const footTop = top + extent.bottom - extent.top + 2;
  return svgDocument({
    width: sheetWidth,
    height: footTop + foot.height + MARGIN,
    title,
    description: `Dial laid out straight. ${dialDescription(scale, travel, sense, 'to the right')}`,
    groups: [
      { marks: head.marks, shift: vector(MARGIN, MARGIN) },
      { marks, shift: vector(MARGIN - extent.left, top - extent.top), labels: { part: 'dial', length } },
      { marks: foot.marks, shift: vector(MARGIN, footTop) },
    ],
    theme: options.theme ?? 'auto',
    id: options.id,
  });

  function frequencyMarks(): readonly Mark[] {
    if (travel.range === null) return [];
    const place = (f: number) => {
      const share = travel.ofFrequency(f);
      return share === null ? null : share * length;
    };
    const ticks = frequencyTicks(travel.range, place, (text) => textWidth(text, SIZE) + AIR, FINE);
    return [
      ...ticks.minor.map((x) => upright(x, 0, 1.4, 0.2, 'frequency')),
      ...ticks.major.flatMap(({ at, text }) => [upright(at, 0, 2.4, 0.35, 'frequency'), number(at, 5.6, text, 'middle', 'frequency')]),
      number(length + 5, 5.6, ticks.unit, 'start', 'unit'),
    ];
  }

  function degreeMarks(): readonly Mark[] {
    const whole = (scale.rotation * 180) / Math.PI;
    const last = `${Math.floor(whole)}`;
    const step = DEGREE_STEPS.find((s) => (s / whole) * length >= textWidth(last, SIZE) + AIR) ?? 3600;
    const base: Mark = { kind: 'line', from: vector(0, DEGREES_AT), to: vector(length, DEGREES_AT), stroke: 'quiet', width: 0.2 };
    const out: Mark[] = [base, number(length + 5, DEGREES_AT + 4.6, '°', 'start', 'unit')];
    for (let d = 0; d <= whole + 1e-6; d += step) {
      const x = travel.ofAngle((d * Math.PI) / 180) * length;
      out.push(upright(x, DEGREES_AT, DEGREES_AT + 1.4, 0.2, 'degree'), number(x, DEGREES_AT + 4.6, `${d}`, 'middle', 'degree'));
    }
    return out;
  }
}

const upright = (x: number, from: number, to: number, width: number, mark: string): Mark => ({
  kind: 'line',
  from: vector(x, from),
  to: vector(x, to),
  stroke: mark === 'degree' ? 'quiet' : 'ink',
  width,
  labels: { mark },
});

const number = (x: number, y: number, text: string, anchor: 'start' | 'middle', name: string): Mark => ({
  kind: 'text',
  at: vector(x, y),
  text,
  size: SIZE,
  anchor,
  angle: 0,
  fill: name === 'degree' ? 'quiet' : 'ink',
  labels: { number: name },
});

/** Best points above the line: solid where a station is loudest, broken on the other side of its carrier. */
function bestMarks(shares: readonly (readonly number[])[], length: number): readonly Mark[] {
  return shares.flatMap((list, i) => {
    const bow: Mark = {
      kind: 'line',
      from: vector(Math.min(...list) * length, -3.4),
      to: vector(Math.max(...list) * length, -3.4),
      stroke: 'accent',
      width: 0.25,
    };
    return [
      ...list.map(
        (share, k): Mark => ({
          kind: 'line',
          from: vector(share * length, -0.5),
          to: vector(share * length, -3.2),
          stroke: 'accent',
          width: k === 0 ? 0.6 : 0.35,
          ...(k === 0 ? {} : { dash: [0.7, 0.5] }),
          labels: { station: i, best: k === 0 ? 'loudest' : 'other' },
        }),
      ),
      ...(list.length > 1 ? [bow] : []),
    ];
  });
}

/** A station's number over its marks, as near as its neighbours allow. */
function stationNumbers(shares: readonly (readonly number[])[], length: number): readonly Mark[] {
  const wishes = shares.map((list, i) => ({
    at: ((Math.min(...list) + Math.max(...list)) / 2) * length,
    size: textWidth(`${i + 1}`, SIZE) + 1.2,
  }));
  const placed = spread(wishes, -2, length + 2);
  return placed.flatMap((x, i): readonly Mark[] => [
    { kind: 'line', from: vector(wishes[i]!.at, -3.4), to: vector(x, -5.6), stroke: 'quiet', width: 0.15 },
    { kind: 'text', at: vector(x, -6.4), text: `${i + 1}`, size: SIZE, anchor: 'middle', angle: 0, fill: 'ink', labels: { station: i } },
  ]);
}

const stationLine = (s: DialStation, i: number): string =>
  `${i + 1}  ${stationText(s)}: ${s.points.map((p) => degreesText(p.angle)).join(' and ')}`;
