import type { SlopeCurves, ToneWave } from '#jobs';

/** A box of the picture [px]. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Where everything stands: slope in the upper left, the swing below it, what comes of it to the right. */
export interface Shape {
  readonly width: number;
  readonly height: number;
  readonly slope: Box;
  /** the swing of the frequency, time running down */
  readonly swing: Box;
  /** the amplitude, time running to the right; below it the output */
  readonly amplitude: Box;
  readonly output: Box;
  /** at the top of the slope's box [V peak] */
  readonly most: number;
  /** of a distance from the carrier [Hz], an amplitude [V peak], an output [V]; time as a share of a period, up to `PERIODS` */
  x(offset: number): number;
  y(amplitude: number): number;
  outputY(output: number): number;
  down(time: number): number;
  across(time: number): number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** So many swings are drawn. */
export const PERIODS = 2;
/** A picture narrower than this has the short of what is written [px]. */
export const NARROW = 560;
/** Room over the greatest amplitude, and around the output [share]. */
const HEADROOM = 1.1;
const AIR = 0.12;

export function shapeOf(curves: SlopeCurves, width: number): Shape {
  const narrow = width < NARROW;
  const left = narrow ? 54 : 64;
  const right = Math.round(left + (width - left) * (narrow ? 0.52 : 0.56));
  const gap = narrow ? 14 : 30;
  const tall = Math.round(Math.min(340, Math.max(190, width * 0.34)));
  const slope: Box = { left, right, top: 30, bottom: 30 + tall };
  const below = { top: slope.bottom + 54, bottom: slope.bottom + 54 + Math.round(tall * 0.6) };
  const beside = { left: right + gap, right: width - 10 };
  const amplitude: Box = { ...beside, top: slope.top, bottom: slope.bottom };
  const output: Box = { ...beside, ...below };
  const swing: Box = { left, right, ...below };
  const half = curves.offset.at(-1)!;
  const most = HEADROOM * Math.max(...curves.amplitude, ...(curves.builtAmplitude ?? []), curves.rated.most) || 1;
  const heard = [...curves.rated.output, ...curves.rated.pure];
  const [low, high] = [Math.min(...heard), Math.max(...heard)];
  const span = (high - low) * (1 + 2 * AIR) || 1;
  const floor = low - (high - low) * AIR;
  return {
    width,
    height: below.bottom + 24,
    slope,
    swing,
    amplitude,
    output,
    most,
    x: (offset) => left + ((offset + half) / (2 * half)) * (right - left),
    y: (a) => slope.bottom - (a / most) * tall,
    outputY: (v) => output.bottom - ((v - floor) / span) * (output.bottom - output.top),
    down: (t) => swing.top + (t / PERIODS) * (swing.bottom - swing.top),
    across: (t) => amplitude.left + (t / PERIODS) * (amplitude.right - amplitude.left),
  };
}

/** A path through points. */
export const lineThrough = (points: readonly Point[]): string =>
  points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)},${y.toFixed(1)}`).join('');

/** All swings that are drawn: where the tone is, sample by sample. */
export function overTime(wave: ToneWave, at: (time: number, sample: number) => Point): readonly Point[] {
  const samples = wave.phase.length - 1;
  return Array.from({ length: PERIODS * samples + 1 }, (_, i) => at(i / samples, i % samples));
}

/** Where the tone is at a time, between its samples. */
export function momentOf(wave: ToneWave, time: number): { readonly [K in 'modulation' | 'amplitude' | 'output']: number } {
  const samples = wave.phase.length - 1;
  const at = (time % 1) * samples;
  const i = Math.min(samples - 1, Math.floor(at));
  const between = (of: Float64Array): number => of[i]! + (at - i) * (of[i + 1]! - of[i]!);
  return { modulation: between(wave.modulation), amplitude: between(wave.amplitude), output: between(wave.output) };
}

/** Where the handles of tuning and Q are taken hold of: the top of the slope, and its far side at half power; inside the picture in any case. */
export function gripsOf({ offset, amplitude, sharpness, carrier }: SlopeCurves): { readonly top: number; readonly shoulder: number } {
  const top = amplitude.reduce((best, a, i) => (a > amplitude[best]! ? i : best), 0);
  const side = (sharpness?.frequency ?? carrier) >= carrier ? 1 : -1;
  let shoulder = top;
  const inside = (i: number): boolean => i > 2 && i < offset.length - 3;
  while (inside(shoulder) && amplitude[shoulder]! > amplitude[top]! * Math.SQRT1_2) shoulder += side;
  return { top, shoulder };
}

/** Round numbers along an axis, about so many. */
export function roundNumbers(from: number, to: number, wanted: number): readonly number[] {
  const rough = (to - from) / wanted;
  if (!(rough > 0)) return [];
  const decade = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 2.5, 5, 10].map((m) => m * decade).find((s) => s >= rough)!;
  const first = Math.ceil(from / step - 1e-9);
  return Array.from({ length: Math.floor(to / step + 1e-9) - first + 1 }, (_, k) => (first + k) * step);
}
