import { GivenError } from '../../../given-error.ts';
import { mustBeNumber, mustBePositive, mustBeThin, mustNotBeNegative } from '../../given-checks.ts';
import type { Counterpart, WireShape } from '../description.ts';
import { type Point, plus, times } from '../point.ts';
import type { Load, Wire, WireStructure } from '../structure.ts';
import { toward, UP, wire } from './placed.ts';

type Rod = Extract<WireShape, { kind: 'rod' }>;
type Against = { readonly wires: readonly Wire[]; readonly loads: readonly Load[] };

/** A rod with its foot at the feed, and what it works against; wire 0 is the rod. */
export function rod(shape: Rod, foot: Point): Omit<WireStructure, 'ground'> {
  mustBeThin('aerial.shape.rod', shape.rod.length, shape.rod.diameter);
  mustBeNumber('aerial.shape.lean.angle', shape.lean.angle, 'rad');
  mustBeNumber('aerial.shape.lean.bearing', shape.lean.bearing, 'rad');
  const along = plus(times(UP, Math.cos(shape.lean.angle)), times(toward(shape.lean.bearing), Math.sin(shape.lean.angle)));
  const own = wire(foot, plus(foot, times(along, shape.rod.length)), shape.rod.diameter, shape.rod.metal);
  const { wires, loads } = counterpart(shape.against, foot);
  return { wires: [own, ...wires], feed: { wire: 0, at: 0 }, loads };
}

function counterpart(against: Counterpart, foot: Point): Against {
  const path = 'aerial.shape.against';
  switch (against.kind) {
    case 'drop-wire':
      mustBeThin(path, against.length, against.diameter);
      return { wires: [wire(foot, plus(foot, times(UP, -against.length)), against.diameter, against.metal)], loads: [] };
    case 'radials': {
      mustBeThin(path, against.length, against.diameter);
      mustBeNumber(`${path}.droop`, against.droop, 'rad');
      if (!(Number.isInteger(against.count) && against.count >= 1 && against.count <= 64))
        throw new GivenError(`${path}.count`, `${against.count}`, 'it is a number of wires', 'Give 1 to 64.');
      const wires = Array.from({ length: against.count }, (_, i) => {
        const out = toward((2 * Math.PI * i) / against.count);
        const along = plus(times(out, Math.cos(against.droop)), times(UP, -Math.sin(against.droop)));
        return wire(foot, plus(foot, times(along, against.length)), against.diameter, against.metal);
      });
      return { wires, loads: [] };
    }
    case 'box':
      return { wires: box(against, foot), loads: [] };
    case 'earth-wire':
      return earthWire(against, foot);
  }
}

/** Thickness of the wires that stand for a case's sides, over its least size: as thick as thin-wire theory carries. */
const CAGE = 1 / 8;

/**
 * A metal case as a cage: the edges, and diagonals from the middle of the top and of the bottom to the corners.
 *
 * Current spreads over the sides as it does along the nearest wires; the cage is open to the field between, so that the case is somewhat too
 * small electrically (the tests put its capacitance beside that of a solid cube).
 */
function box(case_: Extract<Counterpart, { kind: 'box' }>, top: Point): Wire[] {
  for (const key of ['width', 'depth', 'height'] as const) mustBePositive(`aerial.shape.against.${key}`, case_[key], 'm');
  const least = Math.min(case_.width, case_.depth, case_.height);
  const diameter = least * CAGE;
  const corner = (i: number, level: number): Point =>
    plus(top, {
      x: ((i === 0 || i === 3 ? -1 : 1) * case_.width) / 2,
      y: ((i < 2 ? -1 : 1) * case_.depth) / 2,
      z: -level * case_.height,
    });
  const bottom = plus(top, times(UP, -case_.height));
  return [0, 1, 2, 3].flatMap((i) => {
    const next = (i + 1) % 4;
    return [
      wire(top, corner(i, 0), diameter, case_.metal),
      wire(corner(i, 0), corner(next, 0), diameter, case_.metal),
      wire(corner(i, 0), corner(i, 1), diameter, case_.metal),
      wire(corner(i, 1), corner(next, 1), diameter, case_.metal),
      wire(corner(i, 1), bottom, diameter, case_.metal),
    ];
  });
}

/** From the foot of the rod to the ground, with the earth's resistance in it there. */
function earthWire(given: Extract<Counterpart, { kind: 'earth-wire' }>, foot: Point): Against {
  const path = 'aerial.shape.against';
  mustBeThin(path, given.length, given.diameter);
  mustNotBeNegative(`${path}.earthResistance`, given.earthResistance, 'ohm');
  if (given.length < foot.z * (1 - 1e-9))
    throw new GivenError(
      `${path}.length`,
      `${given.length} m`,
      `the set is ${foot.z} m above the ground`,
      'Give a wire at least that long, or a lower set.',
    );
  const run = Math.sqrt(Math.max(0, given.length ** 2 - foot.z ** 2));
  const ground = { x: foot.x, y: foot.y + run, z: 0 };
  return {
    wires: [wire(foot, ground, given.diameter, given.metal)],
    loads: [{ place: { wire: 1, at: 1 }, kind: 'impedance', resistance: given.earthResistance, reactance: 0 }],
  };
}
