import { scale as by, type Vector, vector } from '../plane/vector.ts';
import type { Labels, Mark } from '../svg/mark.ts';
import type { Role } from '../svg/palette.ts';
import { textWidth } from '../svg/text-width.ts';
import type { DialScale, Travel } from './dial-scale.ts';
import { type FrequencyTicks, frequencyTicks } from './frequency-ticks.ts';

/** Direction of a share of the travel on a dial: clockwise, the middle at the top. */
export function direction({ rotation }: DialScale, share: number): Vector {
  const angle = (share - 0.5) * rotation;
  return vector(Math.sin(angle), -Math.cos(angle));
}

const NUMBER_SIZE = 3;
const DEGREE_SIZE = 2.4;
/** From the arc inwards [mm]: marks with and without a number, the middle of the numbers at the top, the ring of degrees. */
const LONG = 4;
const SHORT = 2;
const NUMBER = 7.5;
const DEGREES = 14;
const AIR = 2;
const HALF_HEIGHT = 0.45;
const FINE = 1.3;
const DEGREE_STEP = 10;
/** A ring of degrees smaller than this would run into the shaft [mm]. */
const SMALLEST_RING = 18;
const NAMED_DEGREES = [10, 20, 30, 60, 90];

/** Arc, frequencies, degrees, shaft. Its middle is at (0, 0). */
export function dialMarks(scale: DialScale, travel: Travel, radius: number, hole: number): readonly Mark[] {
  const out = (share: number, r: number): Vector => by(direction(scale, share), r);
  const arc = (r: number, stroke: Role, width: number, labels: Labels): Mark => {
    const steps = Math.max(2, Math.ceil(scale.rotation / 0.03));
    return { kind: 'polyline', points: Array.from({ length: steps + 1 }, (_, i) => out(i / steps, r)), stroke, width, labels };
  };
  const tick = (share: number, from: number, to: number, stroke: Role, width: number, labels: Labels): Mark => ({
    kind: 'line',
    from: out(share, from),
    to: out(share, to),
    stroke,
    width,
    labels,
  });
  /** Its box just touches a circle of radius `r` from within. */
  const number = (share: number, r: number, text: string, size: number, fill: Role, labels: Labels): Mark => {
    const d = direction(scale, share);
    const reach = (Math.abs(d.x) * textWidth(text, size)) / 2 + Math.abs(d.y) * HALF_HEIGHT * size;
    const at = out(share, r - reach);
    return { kind: 'text', at: vector(at.x, at.y + 0.36 * size), text, size, anchor: 'middle', angle: 0, fill, labels };
  };
  // along the ring the numbers stand on, where there is least room
  const length = scale.rotation * (radius - NUMBER);
  const place = (f: number): number | null => {
    const share = travel.ofFrequency(f);
    return share === null ? null : share * length;
  };
  const ticks = travel.range && frequencyTicks(travel.range, place, (text) => textWidth(text, NUMBER_SIZE) + AIR, FINE);
  // long numbers push the degrees further in
  const widest = Math.max(0, ...(ticks?.major ?? []).map((t) => textWidth(t.text, NUMBER_SIZE)));
  const ring = radius - Math.max(DEGREES, LONG + 1 + widest + 1.5);
  return [
    arc(radius, 'ink', 0.4, { part: 'arc' }),
    ...(ticks ? frequencyMarks(ticks) : []),
    ...(ring < SMALLEST_RING ? [] : degreeMarks()),
    ...shaftMarks(hole),
  ];

  function frequencyMarks({ unit, major, minor }: FrequencyTicks): readonly Mark[] {
    return [
      ...minor.map((at) => tick(at / length, radius, radius - SHORT, 'ink', 0.2, { mark: 'frequency' })),
      ...major.flatMap(({ at, text, frequency }) => [
        tick(at / length, radius, radius - LONG, 'ink', 0.35, { mark: 'frequency', hertz: frequency }),
        number(at / length, radius - LONG - 1, text, NUMBER_SIZE, 'ink', { number: 'frequency' }),
      ]),
      number(0.5, Math.min(ring - 7.5, radius - NUMBER - 6), unit, NUMBER_SIZE, 'ink', { unit: 'frequency' }),
    ];
  }

  function degreeMarks(): readonly Mark[] {
    const whole = (scale.rotation * 180) / Math.PI;
    const room = textWidth('180', DEGREE_SIZE) + AIR;
    const named = NAMED_DEGREES.find((n) => (n * Math.PI * (ring - 3.5)) / 180 >= room) ?? 90;
    const marks: Mark[] = [arc(ring, 'quiet', 0.2, { part: 'degrees' })];
    for (let d = 0; d <= whole + 1e-6; d += DEGREE_STEP) {
      const share = travel.ofAngle((d * Math.PI) / 180);
      const chief = d % named === 0;
      marks.push(tick(share, ring, ring - (chief ? 1.6 : 0.9), 'quiet', 0.2, { mark: 'degree' }));
      if (chief) marks.push(number(share, ring - 2.2, `${d}`, DEGREE_SIZE, 'quiet', { number: 'degree' }));
    }
    return [...marks, number(0.5, ring - 12, 'degrees', DEGREE_SIZE, 'quiet', { unit: 'degree' })];
  }
}

/** The hole for the shaft, with a cross to find its middle. */
function shaftMarks(hole: number): readonly Mark[] {
  const reach = Math.max(hole / 2 + 2, 3);
  const line = (from: Vector, to: Vector): Mark => ({ kind: 'line', from, to, stroke: 'quiet', width: 0.15 });
  return [
    ...(hole > 0
      ? [{ kind: 'circle', centre: vector(0, 0), radius: hole / 2, stroke: 'ink', width: 0.3, labels: { part: 'shaft' } } as const]
      : []),
    line(vector(-reach, 0), vector(reach, 0)),
    line(vector(0, -reach), vector(0, reach)),
  ];
}
