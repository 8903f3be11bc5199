import { type Vector, vector } from '../plane/vector.ts';
import type { Labels, Mark } from '../svg/mark.ts';
import type { Role } from '../svg/palette.ts';
import type { Wound } from './wound.ts';

/**
 * A winding on paper. Side view: the axis runs to the right, the cold end is left. The wire begins at the bottom and winds to the right as a
 * right-hand screw does; `turn` counts along it. End view: seen from the cold end, what lies towards the reader in the side view is right.
 */
export interface Helix {
  readonly wound: Wound;
  /** [mm] */
  readonly radius: number;
  readonly wire: number;
  readonly pitch: number;
  readonly start: number;
}

export const helixOf = (wound: Wound, perMetre: number): Helix => ({
  wound,
  radius: ((wound.innerDiameter + wound.wireDiameter) / 2) * perMetre,
  wire: wound.wireDiameter * perMetre,
  pitch: wound.pitch * perMetre,
  start: wound.start * perMetre,
});

/** Steps of the drawn curve for half a turn. */
const STEPS = 16;
/** A wire drawn thinner than this is a plain line [mm]. */
const TUBE = 0.7;
const THINNEST = 0.2;
const EDGE = 0.18;
/** Neighbouring turns drawn nearer than this run into each other for the eye [mm]. */
const NEAREST = 0.6;
/** More turns than this are not drawn one by one. */
const MOST_TURNS = 150;

/** Place in the side view after so many turns, so far from the axis. */
export const sideAt = (h: Helix, turn: number, radius = h.radius): Vector =>
  vector(h.start + turn * h.pitch, radius * Math.cos(2 * Math.PI * turn));

/** The same seen from the cold end, its middle at (0, 0). */
export const endAt = (h: Helix, turn: number, radius = h.radius): Vector =>
  vector(-radius * Math.sin(2 * Math.PI * turn), radius * Math.cos(2 * Math.PI * turn));

/** Whether the wire is on the reader's side of the coil there; at the very top and bottom it is. */
export const inFront = (turn: number): boolean => Math.sin(2 * Math.PI * turn) < 1e-9;

export interface DrawnHelix {
  readonly back: readonly Mark[];
  readonly front: readonly Mark[];
  /** fewer turns are drawn than wound */
  readonly thinned: boolean;
}

/** The side view, what lies behind the axis apart. `look` is told apart by how the wire is filled. */
export function helixMarks(h: Helix, fill: Role, labels: Labels): DrawnHelix {
  const { turns } = h.wound;
  const every = Math.max(1, Math.ceil(Math.max(NEAREST / h.pitch, turns / MOST_TURNS) - 1e-9));
  const [back, front]: [Mark[], Mark[]] = [[], []];
  const ends = Math.ceil(2 * turns - 1e-9);
  for (let half = 0; half < ends; half++) {
    if (Math.floor(half / 2) % every !== 0) continue;
    const [from, to] = [half / 2, Math.min(turns, (half + 1) / 2)];
    const points = Array.from({ length: STEPS + 1 }, (_, i) => sideAt(h, from + ((to - from) * i) / STEPS));
    // the first half of every turn runs behind
    (half % 2 === 0 ? back : front).push(
      ...tube(points, h.wire, half % 2 === 0 ? 'paper' : fill, half % 2 === 0 ? 'quiet' : 'ink', labels),
    );
  }
  return { back, front, thinned: every > 1 };
}

/** A length of wire as seen: two edges and what is between them, or a line where it is too thin for that. */
export function tube(points: readonly Vector[], wire: number, fill: Role, edge: Role, labels: Labels): readonly Mark[] {
  if (wire < TUBE) return [{ kind: 'polyline', points, stroke: edge, width: Math.max(THINNEST, wire), labels }];
  return [
    { kind: 'polyline', points, stroke: edge, width: wire, cap: 'round', labels },
    { kind: 'polyline', points, stroke: fill, width: wire - 2 * EDGE, cap: 'round' },
  ];
}
