import type { TwoEnded } from '../circuit/netlist.ts';
import { STROKE } from '../circuit/symbol.ts';
import { type Vector, vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import type { Role } from '../svg/palette.ts';
import type { Pin } from './footprint.ts';

/** A part as it lies on the bench, its leads to left (first pin) and right. */
export interface Pictogram {
  readonly marks: readonly Mark[];
  /** of the body, from its middle [mm] */
  readonly half: { readonly x: number; readonly y: number };
  /** from the middle to each pin, a whole number of steps of the grid [mm] */
  readonly reach: number;
}

export type Lying = Exclude<TwoEnded, 'winding' | 'earpiece'>;

const FINE = { stroke: 'ink', width: 0.25 } as const;
const HEAVY = { stroke: 'ink', width: 0.7 } as const;

export const line = (from: Vector, to: Vector, look: { readonly stroke: Role; readonly width: number } = STROKE): Mark => ({
  kind: 'line',
  from,
  to,
  ...look,
});

/** A closed outline, filled. */
export const solid = (points: readonly Vector[], fill: Role = 'paper'): readonly Mark[] => [
  { kind: 'area', points, fill },
  { kind: 'polyline', points: [...points, points[0]!], ...STROKE },
];

export const rectangle = (left: number, top: number, right: number, bottom: number): readonly Vector[] => [
  vector(left, top),
  vector(right, top),
  vector(right, bottom),
  vector(left, bottom),
];

/** Part of a circle, angles clockwise from the right [rad]. */
export const bow = (centre: Vector, radius: number, from: number, to: number): readonly Vector[] =>
  Array.from({ length: 25 }, (_, i) => {
    const angle = from + ((to - from) * i) / 24;
    return vector(centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle));
  });

const disc = (centre: Vector, radius: number, fill: Role): Mark => ({ kind: 'circle', centre, radius, fill, ...STROKE });

/** Upper edge of a body with caps at its ends. */
const WAIST = [vector(-5, -1.8), vector(-3, -1.8), vector(-2.5, -1.4), vector(2.5, -1.4), vector(3, -1.8), vector(5, -1.8)];

export const PICTOGRAMS: Readonly<Record<Lying, Pictogram>> = {
  // a disc, its two plates hinted at
  capacitor: {
    marks: [
      disc(vector(0, 0), 3.6, 'faint'),
      line(vector(-0.7, -1.8), vector(-0.7, 1.8), HEAVY),
      line(vector(0.7, -1.8), vector(0.7, 1.8), HEAVY),
    ],
    half: { x: 3.6, y: 3.6 },
    reach: 8,
  },
  // seen from the front: fixed plates, plates that turn, shaft with its knob
  'variable-capacitor': {
    marks: [
      ...solid(rectangle(-10, -8, 10, 8)),
      ...solid(bow(vector(-1.5, 0), 6.5, Math.PI / 2, 1.5 * Math.PI), 'faint'),
      ...[5, 3.5].map((r): Mark => ({ kind: 'polyline', points: bow(vector(-1.5, 0), r, Math.PI / 2, 1.5 * Math.PI), ...FINE })),
      ...solid(bow(vector(1.2, 0), 6, -0.35 * Math.PI, 0.65 * Math.PI)),
      ...[4.6, 3.4].map((r): Mark => ({ kind: 'polyline', points: bow(vector(1.2, 0), r, -0.35 * Math.PI, 0.65 * Math.PI), ...FINE })),
      disc(vector(1.2, 0), 1.6, 'ink'),
    ],
    half: { x: 10, y: 8 },
    reach: 14,
  },
  resistor: {
    marks: [
      ...solid([...WAIST, ...WAIST.map((p) => vector(-p.x, -p.y))]),
      ...[-1.6, -0.2, 1.6].map((x) => line(vector(x, -1.4), vector(x, 1.4), HEAVY)),
    ],
    half: { x: 5, y: 1.8 },
    reach: 8,
  },
  // a bobbin between its cheeks
  choke: {
    marks: [
      ...solid(rectangle(-5, -3, 5, 3), 'faint'),
      ...[-3.75, -2.5, -1.25, 0, 1.25, 2.5, 3.75].map((x) => line(vector(x, -3), vector(x, 3), FINE)),
      ...solid(rectangle(-6, -4, -5, 4)),
      ...solid(rectangle(5, -4, 6, 4)),
    ],
    half: { x: 6, y: 4 },
    reach: 10,
  },
  // a glass body; the ring is at the cathode, towards the output
  junction: {
    marks: [
      ...solid(rectangle(-4, -1.7, 4, 1.7)),
      { kind: 'area', points: rectangle(1.6, -1.7, 2.9, 1.7), fill: 'ink' },
      // which way it conducts
      { kind: 'area', points: [vector(-2.4, -1), vector(-2.4, 1), vector(-0.6, 0)], fill: 'ink' },
    ],
    half: { x: 4, y: 1.7 },
    reach: 8,
  },
  'measured-law': {
    marks: [
      ...solid(rectangle(-4.5, -3.5, 4.5, 3.5)),
      { kind: 'polyline', points: [vector(-3, 1.6), vector(0, 1.2), vector(1.4, 0), vector(2.6, -2.4)], ...STROKE },
    ],
    half: { x: 4.5, y: 3.5 },
    reach: 8,
  },
};

/** Its two pins. */
export const lyingPins = ({ half, reach }: Pictogram, a: Omit<Pin, 'at' | 'from'>, b: Omit<Pin, 'at' | 'from'>): readonly Pin[] => [
  { ...a, at: vector(-reach, 0), from: vector(-half.x, 0) },
  { ...b, at: vector(reach, 0), from: vector(half.x, 0) },
];
