import { type Occupied, WEIGHT } from '../placing/occupied.ts';
import { scale, type Vector, vector } from '../plane/vector.ts';
import { type Mark, type TextMark, textBox } from '../svg/mark.ts';
import { fixedText } from './number-text.ts';

/** The disc of a polar plot: its middle is `span` decibels below its rim, which stands for `top` dBi. */
export interface Disc {
  readonly radius: number;
  readonly top: number;
  readonly span: number;
  /** the upper half only */
  readonly half: boolean;
}

export type Compass = 'bearing' | 'elevation';

const SIZE = 2.8;
const RING_STEP = 5;
const NAMED_STEP = 10;
const SPOKE = 30;
/** Ring numbers stand at least so far from each other [mm]. */
const APART = 8;
/** A station nearer than this to a spoke takes the place of the spoke's number [rad]. */
const NEAR = (7 * Math.PI) / 180;

/** Rings, spokes and their numbers. Numbers of the rings stand along the spoke where they hide least of the curve. */
export function compassMarks(disc: Disc, compass: Compass, stations: readonly number[], occupied: Occupied): readonly Mark[] {
  const { radius, half } = disc;
  const marks: Mark[] = [];
  const ring = (r: number, width: number) => {
    const look = { centre: vector(0, 0), radius: r, stroke: r === radius ? 'quiet' : 'faint', width } as const;
    marks.push(half ? { kind: 'arc', ...look } : { kind: 'circle', ...look });
  };
  const named: { readonly r: number; readonly text: string }[] = [];
  const lowest = disc.top - disc.span;
  for (let gain = RING_STEP * Math.ceil(lowest / RING_STEP + 1e-9); gain <= disc.top; gain += RING_STEP) {
    const r = (radius * (gain - lowest)) / disc.span;
    const whole = gain % NAMED_STEP === 0 || gain === disc.top;
    ring(r, gain === disc.top ? 0.35 : whole ? 0.25 : 0.12);
    if (whole && r > 4) named.push({ r, text: fixedText(gain, 0) });
  }
  for (let degrees = 0; degrees < (half ? 181 : 360); degrees += SPOKE) {
    const out = towards(compass, (degrees * Math.PI) / 180);
    marks.push({ kind: 'line', from: vector(0, 0), to: scale(out, radius), stroke: 'faint', width: 0.2 });
    const taken = stations.some((s) => Math.abs(Math.sin((s - (degrees * Math.PI) / 180) / 2)) < Math.sin(NEAR / 2));
    if (taken) continue;
    const text = spokeText(compass, degrees);
    const at = scale(out, radius + 4.2);
    const number: TextMark = {
      kind: 'text',
      at: vector(at.x, at.y + 0.35 * SIZE),
      text,
      size: SIZE,
      anchor: Math.abs(out.x) < 0.3 ? 'middle' : out.x > 0 ? 'start' : 'end',
      angle: 0,
      fill: 'quiet',
      labels: { spoke: degrees },
    };
    occupied.addText(textBox(number));
    marks.push(number);
  }
  const numbers = ringNumbers(disc, compass, thinned(named), occupied);
  for (const n of numbers) occupied.addText(textBox(n));
  return [...marks, ...numbers];
}

/** From the rim inwards, those that stand clear of the one before. */
function thinned(named: readonly { readonly r: number; readonly text: string }[]) {
  let free = Number.POSITIVE_INFINITY;
  return [...named].reverse().filter(({ r }) => {
    if (r > free) return false;
    free = r - APART;
    return true;
  });
}

/** Step on the paper towards an angle: bearings clockwise from the top, elevations upwards from the right. */
export function towards(compass: Compass, angle: number): Vector {
  return compass === 'bearing' ? vector(Math.sin(angle), -Math.cos(angle)) : vector(Math.cos(angle), -Math.sin(angle));
}

function spokeText(compass: Compass, degrees: number): string {
  const points: Readonly<Record<number, string>> =
    compass === 'bearing' ? { 0: 'N', 90: 'E', 180: 'S', 270: 'W' } : { 0: 'level', 90: 'up', 180: 'level', 270: 'down' };
  if (points[degrees] !== undefined) return points[degrees];
  if (compass === 'bearing') return `${String(degrees).padStart(3, '0')}°`;
  const above = degrees > 180 ? degrees - 360 : degrees;
  return `${fixedText(Math.abs(above) > 90 ? Math.sign(above) * 180 - above : above, 0)}°`;
}

function ringNumbers(
  disc: Disc,
  compass: Compass,
  named: readonly { readonly r: number; readonly text: string }[],
  occupied: Occupied,
): readonly TextMark[] {
  let best: { readonly price: number; readonly texts: readonly TextMark[] } | null = null;
  for (let degrees = SPOKE / 2; degrees < (disc.half ? 180 : 360); degrees += SPOKE) {
    const out = towards(compass, (degrees * Math.PI) / 180);
    const texts = named.map(({ r, text }): TextMark => {
      const at = scale(out, r - 1.6);
      return {
        kind: 'text',
        at: vector(at.x, at.y + 0.35 * SIZE),
        text,
        size: SIZE,
        anchor: 'middle',
        angle: 0,
        fill: 'quiet',
        labels: { ring: text },
      };
    });
    const price = texts.reduce((sum, t) => sum + Math.min(occupied.priceOfText(textBox(t)), 100 * WEIGHT.conductor), 0);
    if (!best || price < best.price) best = { price, texts };
  }
  return best!.texts;
}
