import { add, distance, middle, scale, subtract, unit, type Vector, vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';

/** Symbols of two terminals, after IEC 60617 in plain form. */
export type SymbolKind =
  | 'resistor'
  | 'capacitor'
  | 'variable-capacitor'
  /** as long as there is room: a coil that is tapped */
  | 'long-winding'
  | 'winding'
  | 'choke'
  | 'diode'
  | 'measured-law'
  | 'impedance';

export const STROKE = { stroke: 'ink', width: 0.35 } as const;
const HEAVY = { stroke: 'ink', width: 0.55 } as const;

/** Length of a body along its leads [mm]. */
const LENGTHS: Readonly<Record<Exclude<SymbolKind, 'long-winding'>, number>> = {
  resistor: 9,
  capacitor: 1.6,
  'variable-capacitor': 1.6,
  winding: 12,
  choke: 12,
  diode: 4.4,
  'measured-law': 7,
  impedance: 9,
};
/** How far a body reaches to the sides [mm]. */
export const HALF_WIDTH: Readonly<Record<SymbolKind, number>> = {
  resistor: 1.6,
  capacitor: 3.2,
  'variable-capacitor': 3.6,
  'long-winding': 1.7,
  winding: 1.7,
  choke: 3,
  diode: 2.2,
  'measured-law': 3.5,
  impedance: 2.4,
};

/** From body coordinates to the paper: u along the leads from a to b, v to the right of that way. */
type ToPaper = (u: number, v: number) => Vector;

/**
 * A part between two points, with its leads; the leads carry its name and the pin.
 *
 * @param bulge - side on which a winding's turns lie, seen from a to b: 1 right, -1 left
 */
export function symbolMarks(kind: SymbolKind, name: string, a: Vector, b: Vector, bulge: 1 | -1 = 1): readonly Mark[] {
  const along = unit(subtract(b, a));
  const side = vector(-along.y, along.x);
  const centre = middle(a, b);
  const at: ToPaper = (u, v) => add(centre, add(scale(along, u), scale(side, v)));
  const half = (kind === 'long-winding' ? distance(a, b) - 2 : LENGTHS[kind]) / 2;
  return [leadMark(name, 'a', a, at(-half, 0)), leadMark(name, 'b', b, at(half, 0)), ...body(kind, at, half, bulge)];
}

/** From a pin to the body. */
export const leadMark = (part: string, pin: string, from: Vector, to: Vector): Mark => ({
  kind: 'line',
  from,
  to,
  ...STROKE,
  labels: { part, pin },
});

function body(kind: SymbolKind, at: ToPaper, half: number, bulge: 1 | -1): readonly Mark[] {
  switch (kind) {
    case 'resistor':
    case 'impedance':
      return [box(at, half, kind === 'resistor' ? HALF_WIDTH.resistor : HALF_WIDTH.impedance)];
    case 'capacitor':
      return plates(at, half);
    case 'variable-capacitor':
      return [...plates(at, half), ...arrow(at(4, -3.4), at(-4, 3.4))];
    case 'long-winding':
    case 'winding':
      return [humps(at, half, bulge)];
    case 'choke':
      return [humps(at, half, bulge), stroke(at(-half, -bulge * 1.5), at(half, -bulge * 1.5), HEAVY)];
    case 'diode':
      return [closed([at(-half, -2.2), at(-half, 2.2), at(half, 0)]), stroke(at(half, -2.2), at(half, 2.2), HEAVY)];
    case 'measured-law':
      return [
        box(at, half, HALF_WIDTH['measured-law']),
        // current against voltage: flat, then steep
        { kind: 'polyline', points: [at(-2.4, 1.2), at(0, 0.9), at(1.2, 0), at(2.1, -2.4)], ...STROKE },
      ];
  }
}

const stroke = (from: Vector, to: Vector, look: { readonly stroke: 'ink'; readonly width: number } = STROKE): Mark => ({
  kind: 'line',
  from,
  to,
  ...look,
});
const closed = (points: readonly Vector[]): Mark => ({ kind: 'polyline', points: [...points, points[0]!], ...STROKE });
const box = (at: ToPaper, half: number, wide: number): Mark => closed([at(-half, -wide), at(half, -wide), at(half, wide), at(-half, wide)]);
const plates = (at: ToPaper, half: number): readonly Mark[] => [-half, half].map((u) => stroke(at(u, -3), at(u, 3), HEAVY));

/** A slim arrow: it can be turned. */
function arrow(from: Vector, to: Vector): readonly Mark[] {
  const back = unit(subtract(from, to));
  const foot = add(to, scale(back, 2));
  const aside = scale(vector(-back.y, back.x), 0.7);
  return [
    stroke(from, foot, { stroke: 'ink', width: 0.25 }),
    { kind: 'area', points: [to, add(foot, aside), subtract(foot, aside)], fill: 'ink' },
  ];
}

/** Half circles in a row. */
function humps(at: ToPaper, half: number, bulge: 1 | -1): Mark {
  const count = Math.max(2, Math.round((2 * half) / 3));
  const radius = half / count;
  const points: Vector[] = [];
  for (let i = 0; i < count; i++)
    for (let k = i === 0 ? 0 : 1; k <= 12; k++) {
      const angle = (Math.PI * k) / 12;
      points.push(at(-half + radius * (2 * i + 1 - Math.cos(angle)), bulge * Math.min(radius, 1.6) * Math.sin(angle)));
    }
  return { kind: 'polyline', points, ...STROKE };
}

/** All places with this sign are joined: a frame or common line, not the ground. */
export const frameMarks = (at: Vector): readonly Mark[] => [
  { ...stroke(at, add(at, vector(0, 2))), labels: { sign: 'frame' } },
  stroke(add(at, vector(-2.6, 2)), add(at, vector(2.6, 2)), HEAVY),
  ...[-2.2, 0, 2.2].map((x) => stroke(add(at, vector(x, 2)), add(at, vector(x - 1.3, 4)))),
];
