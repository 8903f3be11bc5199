import { GivenError } from '#engine';
import { plotSize } from '../plane/checked-size.ts';
import { type Extent, extentOf } from '../plane/extent.ts';
import { type Vector, vector } from '../plane/vector.ts';
import { type Mark, outline } from '../svg/mark.ts';
import { textWidth } from '../svg/text-width.ts';
import { axis } from './axis.ts';
import { frameMarks, TICK_SIZE } from './frame-marks.ts';
import { fixedText, valueText } from './number-text.ts';
import { MARGIN, type PlotOptions, plotSheet, WIDTH } from './plot-sheet.ts';

/** What each third octave adds to a whole, and the most it could add. */
export interface BandShares {
  /** mid-frequencies, ascending [Hz] */
  readonly band: ArrayLike<number>;
  /** from 0 to `most` */
  readonly share: ArrayLike<number>;
  readonly most: ArrayLike<number>;
}

export interface SharesOptions extends PlotOptions {
  /** what is divided among the bands, for the axis and for those who do not see the picture: `intelligibility index` */
  readonly whole: string;
  /** of the frame the bars stand in [mm] */
  readonly height?: number;
}

const HEIGHT = 50;
const EACH_X = 18;
const EACH_Y = 11;
/** Half a third of an octave, as a factor. */
const HALF_BAND = 2 ** (1 / 6);
/** A bar leaves so much of its band free on either side. */
const FREE = 0.12;
const KEY = 2.8;

/**
 * Shares by third octaves as bars, as SVG text: the outline is what a band could give, filled is what it gives.
 *
 * @throws GivenError for lists of unequal length, or a share outside 0 to the most
 */
export function drawShares(shares: BandShares, options: SharesOptions): string {
  check(shares);
  const bands = Array.from(shares.band);
  const width = plotSize('options.width', options.width ?? WIDTH);
  const height = plotSize('options.height', options.height ?? HEIGHT);
  const y = axis(
    { label: `share of the ${options.whole}`, unit: '%', from: 0 },
    Array.from(shares.most, (m) => 100 * m),
    height / EACH_Y,
    true,
    'shares',
  );
  const gutter = 6 + 2 + Math.max(...y.ticks.map((t) => textWidth(t.text, TICK_SIZE))) + 1.5;
  const inner = width - 2 * MARGIN - gutter - 3;
  const ends = { from: bands[0]! / HALF_BAND, to: bands.at(-1)! * HALF_BAND };
  const x = axis({ label: 'frequency', unit: 'Hz', scale: 'log', ...ends }, bands, Math.max(2, inner / EACH_X), false, 'shares.band');
  const frame: Extent = { left: gutter, right: gutter + inner, top: 0, bottom: height };
  const barWidth = (x.place(bands[0]! * HALF_BAND)! - x.place(bands[0]! / HALF_BAND)!) * inner * (1 - 2 * FREE);
  const bars = bands.flatMap((f, i): readonly Mark[] => {
    const middle = frame.left + x.place(f)! * inner;
    const top = (share: number): number => frame.bottom - y.place(100 * share)! * height;
    const box = (share: number): readonly Vector[] => rectangle(middle - barWidth / 2, top(share), barWidth, frame.bottom - top(share));
    const whole = box(shares.most[i]!);
    return [
      { kind: 'area', points: whole, fill: 'faint', opacity: 0.45, labels: { band: i, part: 'most' } },
      ...(shares.share[i]! > 0
        ? [{ kind: 'area', points: box(shares.share[i]!), fill: 'series-1', labels: { band: i, part: 'share' } } as const]
        : []),
      { kind: 'polyline', points: [...whole, whole[0]!], stroke: 'series-1', width: 0.25 },
    ];
  });
  const body: Mark[] = [...frameMarks(x, y, frame), ...bars];
  const taken = extentOf(body.flatMap(outline))!;
  return plotSheet(options, {
    width,
    description: shareWords(shares, options.whole),
    plot: { marks: body, left: -Math.min(0, taken.left), top: taken.top, bottom: taken.bottom },
    key: { marks: keyMarks(), height: 6, above: 4, below: 0 },
  });
}

const rectangle = (x: number, y: number, width: number, height: number): readonly Vector[] => [
  vector(x, y),
  vector(x + width, y),
  vector(x + width, y + height),
  vector(x, y + height),
];

function keyMarks(): readonly Mark[] {
  const [first, second] = ['what the band gives', 'what it could give'];
  const start = 7 + textWidth(first, KEY) + 6;
  const entry = (x: number, words: string, full: boolean): readonly Mark[] => {
    const corners = rectangle(x, 0, 5, KEY);
    return [
      { kind: 'area', points: corners, fill: full ? 'series-1' : 'faint', opacity: full ? 1 : 0.45 },
      { kind: 'polyline', points: [...corners, corners[0]!], stroke: 'series-1', width: 0.25 },
      { kind: 'text', at: vector(x + 7, 2.4), text: words, size: KEY, anchor: 'start', angle: 0, fill: 'ink', labels: { key: words } },
    ];
  };
  return [...entry(0, first, true), ...entry(start, second, false)];
}

function shareWords({ band, share, most }: BandShares, whole: string): string {
  const bands = Array.from(band);
  const sum = (list: ArrayLike<number>): number => Array.from(list).reduce((a, b) => a + b, 0);
  const lost = bands.reduce((k, _, i) => (most[i]! - share[i]! > most[k]! - share[k]! ? i : k), 0);
  return [
    `Third octaves from ${valueText(bands[0]!, 'Hz')} to ${valueText(bands.at(-1)!, 'Hz')}.`,
    `Together they give ${fixedText(100 * sum(share), 0)} % of the ${whole}, of ${fixedText(100 * sum(most), 0)} % that they could.`,
    `Most is lost at ${valueText(bands[lost]!, 'Hz')}.`,
  ].join(' ');
}

function check({ band, share, most }: BandShares): void {
  if (band.length < 2)
    throw new GivenError('shares.band', `${band.length} bands`, 'bars stand beside each other', 'Give two bands or more.');
  for (const [key, list] of [
    ['share', share],
    ['most', most],
  ] as const)
    if (list.length !== band.length)
      throw new GivenError(`shares.${key}`, `${list.length} values`, `there are ${band.length} bands`, 'Give one for each band.');
  for (let i = 0; i < band.length; i++) {
    if (!(band[i]! > (i === 0 ? 0 : band[i - 1]!) && band[i]! < 1e9))
      throw new GivenError(`shares.band[${i}]`, `${band[i]} Hz`, 'frequencies ascend', 'Sort the bands.');
    // the sum of many rounded numbers may be more than the whole by their rounding
    if (!(share[i]! >= 0 && share[i]! <= most[i]! + 1e-9 && most[i]! <= 1))
      throw new GivenError(`shares.share[${i}]`, `${share[i]} of ${most[i]}`, 'no band gives more than it could', 'Give 0 to the most.');
  }
}
