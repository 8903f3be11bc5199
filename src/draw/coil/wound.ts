import type { AerialDescription, Coupling, TankDescription } from '#engine';

/** A place on a winding where something is joined. */
export interface Tap {
  /** from the cold end, along the wire */
  readonly turns: number;
  /** `aerial`, `detector`, or both */
  readonly roles: readonly string[];
}

/** A single-layer winding as it is wound. Lengths in metres. */
export interface Wound {
  /** `coil`, `aerial link`, `detector link`, `frame` */
  readonly name: string;
  readonly turns: number;
  /** inside the wire */
  readonly innerDiameter: number;
  /** bare wire */
  readonly wireDiameter: number;
  /** middle to middle of neighbouring turns */
  readonly pitch: number;
  /** what the wire is made of */
  readonly metal: string;
  /** middle of the wire at its first end, along the axis from the cold end of the coil */
  readonly start: number;
  /** straight wire at each end; null where the description does not say */
  readonly leadLength: number | null;
  /** whether it sits on a former that stays in */
  readonly former: boolean;
  readonly taps: readonly Tap[];
}

/** Between the middles of the wire at both ends [m]. */
export const windingLength = (w: Wound): number => w.turns * w.pitch;

type Geometry = Extract<TankDescription['coil'], { kind: 'geometry' }>;

/**
 * The tank's coil and its links, as they are wound, the coil first.
 *
 * @returns null where the coil is given by its electrical values: nothing is known of its shape
 */
export function tankWindings(tank: TankDescription): readonly Wound[] | null {
  const { coil } = tank;
  if (coil.kind !== 'geometry') return null;
  const joined = [
    { role: 'aerial', coupling: tank.aerialCoupling },
    { role: 'detector', coupling: tank.detectorCoupling },
  ];
  return [
    {
      name: 'coil',
      turns: coil.turns,
      innerDiameter: coil.innerDiameter,
      wireDiameter: coil.wireDiameter,
      pitch: coil.pitch,
      metal: coil.metal,
      start: 0,
      leadLength: coil.leadLength,
      former: coil.former !== undefined,
      taps: tapsOf(joined, coil.turns),
    },
    ...joined.flatMap(({ role, coupling }) => (coupling?.kind === 'link' ? [linkOf(role, coupling, coil)] : [])),
  ];
}

/** Two things on one turn share a tap; one at the very end of the coil is none. */
function tapsOf(joined: readonly { readonly role: string; readonly coupling: Coupling | undefined }[], turns: number): readonly Tap[] {
  const taps = new Map<number, string[]>();
  for (const { role, coupling } of joined)
    if (coupling?.kind === 'tap' && coupling.turns < turns) taps.set(coupling.turns, [...(taps.get(coupling.turns) ?? []), role]);
  return [...taps].map(([at, roles]) => ({ turns: at, roles })).sort((a, b) => a.turns - b.turns);
}

/** A link lies beyond the coil's cold end, its nearer end `gap` away. */
function linkOf(role: string, link: Extract<Coupling, { kind: 'link' }>, coil: Geometry): Wound {
  return {
    name: `${role} link`,
    turns: link.turns,
    innerDiameter: link.innerDiameter,
    wireDiameter: link.wireDiameter,
    pitch: link.pitch,
    metal: coil.metal,
    start: -link.gap - link.turns * link.pitch,
    leadLength: null,
    former: false,
    taps: [],
  };
}

/** The winding of a frame aerial; null for an aerial that is not wound, or is computed from its wires, which drawDescribedAerial shows. */
export function frameWinding(aerial: AerialDescription): Wound | null {
  if (aerial.kind !== 'loop') return null;
  const { turns, diameter, wireDiameter, windingLength: overAll } = aerial;
  return {
    name: 'frame',
    turns,
    // the loop's diameter is taken to the middle of the wire
    innerDiameter: diameter - wireDiameter,
    wireDiameter,
    // measured from outer edge to outer edge, its turns taken as rings
    pitch: turns > 1 ? (overAll - wireDiameter) / (turns - 1) : wireDiameter,
    metal: aerial.metal,
    start: 0,
    leadLength: null,
    former: false,
    taps: [],
  };
}
