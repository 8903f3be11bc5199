import { GivenError } from '../../../given-error.ts';
import { mustBeNumber, mustBePositive, mustBeThin } from '../../given-checks.ts';
import type { WireShape } from '../description.ts';
import { type Point, plus, times } from '../point.ts';
import type { WireStructure } from '../structure.ts';
import { axisOf, frontOf, UP, wire } from './placed.ts';

type Dipole = Extract<WireShape, { kind: 'dipole' }>;
type Folded = Extract<WireShape, { kind: 'folded-dipole' }>;

/** A dipole with its feed at `middle`: one wire where it is straight, two where it is bent. */
export function dipole(shape: Dipole, middle: Point): Omit<WireStructure, 'ground'> {
  mustBeThin('aerial.shape', shape.length, shape.diameter);
  if (shape.orientation.kind === 'horizontal') mustBeNumber('aerial.shape.orientation.broadside', shape.orientation.broadside, 'rad');
  mustBeNumber('aerial.shape.slope', shape.slope, 'rad');
  if (!(shape.includedAngle > 0 && shape.includedAngle <= Math.PI + 1e-9))
    throw new GivenError('aerial.shape.includedAngle', `${shape.includedAngle} rad`, 'the halves make an angle', 'Give above 0, up to pi.');
  const flat = axisOf(shape.orientation);
  const axis = shape.orientation.kind === 'vertical' ? flat : plus(times(flat, Math.cos(shape.slope)), times(UP, Math.sin(shape.slope)));
  const aside = shape.bend === 'down' && shape.orientation.kind === 'horizontal' ? times(UP, -1) : frontOf(shape.orientation);
  const half = shape.length / 2;
  const turn = (Math.PI - shape.includedAngle) / 2;
  const tip = (side: 1 | -1) => plus(middle, plus(times(axis, side * half * Math.cos(turn)), times(aside, half * Math.sin(turn))));
  if (turn < 1e-9) return { wires: [wire(tip(-1), tip(1), shape.diameter, shape.metal)], feed: { wire: 0, at: 0.5 }, loads: [] };
  return {
    wires: [wire(tip(-1), middle, shape.diameter, shape.metal), wire(middle, tip(1), shape.diameter, shape.metal)],
    feed: { wire: 1, at: 0 },
    loads: [],
  };
}

/** A folded dipole with its feed at `middle`, the second conductor above it, or behind a vertical one. */
export function foldedDipole(shape: Folded, middle: Point): Omit<WireStructure, 'ground'> {
  mustBeThin('aerial.shape', shape.length, shape.diameter);
  mustBePositive('aerial.shape.secondDiameter', shape.secondDiameter, 'm');
  checkSpacing('aerial.shape.spacing', shape.spacing, (shape.diameter + shape.secondDiameter) / 2, shape.length);
  const across = shape.orientation.kind === 'vertical' ? times(frontOf(shape.orientation), -1) : UP;
  return foldedElement(middle, axisOf(shape.orientation), across, shape);
}

/** @param touching - spacing at which the two conductors touch [m] */
export function checkSpacing(path: string, spacing: number, touching: number, length: number): void {
  if (!(spacing > 1.5 * touching && spacing < length / 4))
    throw new GivenError(
      path,
      `${spacing} m`,
      `the conductors touch at ${touching} m, and further apart than a quarter of their length they are no folded dipole`,
      'Give something between.',
    );
}

/**
 * Five wires: fed conductor, end piece, the two halves of the second (cut where the first is, so that their segments face each other), end piece.
 *
 * @param axis, across - unit vectors along the conductors and from the first to the second
 */
export function foldedElement(
  middle: Point,
  axis: Point,
  across: Point,
  size: Pick<Folded, 'length' | 'diameter' | 'secondDiameter' | 'spacing' | 'metal'>,
): Omit<WireStructure, 'ground'> {
  const place = (along: number, over: number) => plus(middle, plus(times(axis, along), times(across, over)));
  const half = size.length / 2;
  const { diameter, secondDiameter, spacing, metal } = size;
  return {
    wires: [
      wire(place(-half, 0), place(half, 0), diameter, metal),
      wire(place(half, 0), place(half, spacing), secondDiameter, metal),
      wire(place(half, spacing), place(0, spacing), secondDiameter, metal),
      wire(place(0, spacing), place(-half, spacing), secondDiameter, metal),
      wire(place(-half, spacing), place(-half, 0), secondDiameter, metal),
    ],
    feed: { wire: 0, at: 0.5 },
    loads: [],
  };
}
