import { GivenError } from '../../../given-error.ts';
import { mustBeNumber, mustBePositive, mustNotBeNegative } from '../../given-checks.ts';
import type { WireShape } from '../description.ts';
import { type Point, plus, times } from '../point.ts';
import type { Wire, WireStructure } from '../structure.ts';
import { rightOf, toward, UP, wire } from './placed.ts';

type RoundLoop = Extract<WireShape, { kind: 'round-loop' }>;
type SquareLoop = Extract<WireShape, { kind: 'square-loop' }>;

/**
 * A round loop fed at the bottom: regular polygon of the circle's area; several turns as a helix whose ends come out by two leads, downwards,
 * to the feed between them. The winding runs from the feed first towards the bearing of the loop's plane (east, for one that lies flat).
 *
 * Holds for: the wires' own skin effect; neighbouring turns crowd the current further, which is left out (see tank for windings whose loss matters).
 */
export function roundLoop(shape: RoundLoop, feed: Point): Omit<WireStructure, 'ground'> {
  mustBePositive('aerial.shape.diameter', shape.diameter, 'm');
  mustBePositive('aerial.shape.wireDiameter', shape.wireDiameter, 'm');
  mustNotBeNegative('aerial.shape.windingLength', shape.windingLength, 'm');
  if (!(Number.isInteger(shape.sides) && shape.sides >= 3 && shape.sides <= 96))
    throw new GivenError(
      'aerial.shape.sides',
      `${shape.sides}`,
      'a polygon has whole sides',
      'Give 3 to 96; 12 to 24 stand well for a circle.',
    );
  if (!(Number.isInteger(shape.turns) && shape.turns >= 1 && shape.turns <= 20))
    throw new GivenError(
      'aerial.shape.turns',
      `${shape.turns}`,
      'turns are whole here, at most 20',
      'Give 1 to 20, or a coil as the tank.',
    );
  if (shape.turns > 1 && !(shape.windingLength / shape.turns > 1.5 * shape.wireDiameter))
    throw new GivenError(
      'aerial.shape.windingLength',
      `${shape.windingLength} m`,
      `${shape.turns} turns of wire ${shape.wireDiameter} m thick need more, with air between them`,
      'Wind it longer, or of thinner wire.',
    );
  if (shape.axis.kind === 'horizontal') mustBeNumber('aerial.shape.axis.plane', shape.axis.plane, 'rad');
  const n = shape.sides;
  // area of the polygon (n/2) r^2 sin(2 pi/n) = pi (D/2)^2
  const radius = (shape.diameter / 2) * Math.sqrt((2 * Math.PI) / n / Math.sin((2 * Math.PI) / n));
  const side = 2 * radius * Math.sin(Math.PI / n);
  if (!(side > 2 * shape.wireDiameter))
    throw new GivenError(
      'aerial.shape.wireDiameter',
      `${shape.wireDiameter} m`,
      `the sides of the polygon are only ${side.toPrecision(3)} m long`,
      'Give fewer sides or a thinner wire.',
    );
  const [right, down, axis] =
    shape.axis.kind === 'horizontal'
      ? [toward(shape.axis.plane), times(UP, -1), rightOf(shape.axis.plane)]
      : [rightOf(0), times(toward(0), -1), UP];
  const one = shape.turns === 1;
  const lead = one ? 0 : Math.max(4 * shape.wireDiameter, shape.windingLength / shape.turns);
  // the vertex is at the bottom; with leads the feed is that much lower still
  const centre = plus(feed, times(down, -(radius + lead)));
  const middle = plus(centre, times(axis, one ? 0 : -shape.windingLength / 2));
  const steps = n * shape.turns;
  const vertex = (i: number): Point => {
    const angle = (2 * Math.PI * i) / n;
    const inPlane = plus(times(down, radius * Math.cos(angle)), times(right, radius * Math.sin(angle)));
    return plus(plus(middle, inPlane), times(axis, one ? 0 : (shape.windingLength * i) / steps));
  };
  const sides = Array.from({ length: steps }, (_, i) =>
    wire(vertex(i), one && i === steps - 1 ? vertex(0) : vertex(i + 1), shape.wireDiameter, shape.metal),
  );
  if (one) return { wires: sides, feed: { wire: 0, at: 0 }, loads: [] };
  const out = (p: Point) => plus(p, times(down, lead));
  const leads: Wire[] = [
    wire(vertex(steps), out(vertex(steps)), shape.wireDiameter, shape.metal),
    wire(out(vertex(steps)), out(vertex(0)), shape.wireDiameter, shape.metal),
    wire(out(vertex(0)), vertex(0), shape.wireDiameter, shape.metal),
  ];
  return { wires: [...sides, ...leads], feed: { wire: steps + 1, at: 0.5 }, loads: [] };
}

/** An upright square loop, one side level, its fed side's middle at `feed`. */
export function squareLoop(shape: SquareLoop, feed: Point): Omit<WireStructure, 'ground'> {
  mustBePositive('aerial.shape.side', shape.side, 'm');
  mustBePositive('aerial.shape.diameter', shape.diameter, 'm');
  mustBeNumber('aerial.shape.bearing', shape.bearing, 'rad');
  const right = rightOf(shape.bearing);
  const h = shape.side / 2;
  const centre = plus(feed, shape.fedAt === 'bottom' ? times(UP, h) : times(right, h));
  const corner = (r: number, u: number) => plus(centre, plus(times(right, r * h), times(UP, u * h)));
  // round so that the current in the fed side runs right, or up
  const corners =
    shape.fedAt === 'bottom'
      ? [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)]
      : [corner(-1, -1), corner(-1, 1), corner(1, 1), corner(1, -1)];
  return {
    wires: corners.map((c, i) => wire(c, corners[(i + 1) % 4]!, shape.diameter, shape.metal)),
    feed: { wire: 0, at: 0.5 },
    loads: [],
  };
}
