import { GivenError } from '../../../given-error.ts';
import { mustBeNumber, mustBePositive, mustBeThin } from '../../given-checks.ts';
import type { WireShape } from '../description.ts';
import { type Point, plus, times } from '../point.ts';
import type { Wire, WireStructure } from '../structure.ts';
import { checkSpacing, foldedElement } from './dipole.ts';
import { rightOf, toward, UP, wire } from './placed.ts';

type Beam = Extract<WireShape, { kind: 'beam' }>;

/** A beam with the middle of its driven element at `middle`: the driven element first, then reflector and directors. */
export function beam(shape: Beam, middle: Point): Omit<WireStructure, 'ground'> {
  mustBeNumber('aerial.shape.bearing', shape.bearing, 'rad');
  mustBeThin('aerial.shape.driven', shape.driven.length, shape.diameter);
  const forward = toward(shape.bearing);
  const axis = shape.polarisation === 'vertical' ? UP : rightOf(shape.bearing);
  const across = shape.polarisation === 'vertical' ? rightOf(shape.bearing) : UP;
  const element = (ahead: number, length: number): Wire => {
    const centre = plus(middle, times(forward, ahead));
    return wire(plus(centre, times(axis, -length / 2)), plus(centre, times(axis, length / 2)), shape.diameter, shape.metal);
  };
  const others: Wire[] = [];
  if (shape.reflector) {
    mustBeThin('aerial.shape.reflector', shape.reflector.length, shape.diameter);
    mustBePositive('aerial.shape.reflector.behind', shape.reflector.behind, 'm');
    others.push(element(-shape.reflector.behind, shape.reflector.length));
  }
  let last = 0;
  shape.directors.forEach((d, i) => {
    mustBeThin(`aerial.shape.directors[${i}]`, d.length, shape.diameter);
    if (!(d.ahead > last))
      throw new GivenError(
        `aerial.shape.directors[${i}].ahead`,
        `${d.ahead} m`,
        `the element before it is ${last} m ahead of the driven one`,
        'Give the directors from the driven element outwards.',
      );
    last = d.ahead;
    others.push(element(d.ahead, d.length));
  });
  if (shape.driven.element.kind === 'straight')
    return { wires: [element(0, shape.driven.length), ...others], feed: { wire: 0, at: 0.5 }, loads: [] };
  const { spacing } = shape.driven.element;
  checkSpacing('aerial.shape.driven.element.spacing', spacing, shape.diameter, shape.driven.length);
  const folded = foldedElement(middle, axis, across, {
    length: shape.driven.length,
    diameter: shape.diameter,
    secondDiameter: shape.diameter,
    spacing,
    metal: shape.metal,
  });
  return { ...folded, wires: [...folded.wires, ...others] };
}
