import { elementAxis } from '../../arrival.ts';
import type { Orientation } from '../../orientation.ts';
import type { Point } from '../point.ts';
import type { Wire, WireMetal } from '../structure.ts';

export const UP: Point = { x: 0, y: 0, z: 1 };

/** Level unit vector of a bearing [rad], clockwise from north. */
export const toward = (bearing: number): Point => ({ x: Math.sin(bearing), y: Math.cos(bearing), z: 0 });

/** Level unit vector to the right of one who faces the bearing. */
export const rightOf = (bearing: number): Point => ({ x: Math.cos(bearing), y: -Math.sin(bearing), z: 0 });

/** Unit vector along a straight element, in the direction its voltage is counted. */
export function axisOf(orientation: Orientation): Point {
  const [x, y, z] = elementAxis(orientation);
  return { x, y, z };
}

/** Level unit vector across an element, to its front: the broadside of a horizontal one, north for a vertical one. */
export const frontOf = (orientation: Orientation): Point => (orientation.kind === 'vertical' ? toward(0) : toward(orientation.broadside));

export const wire = (from: Point, to: Point, diameter: number, metal: WireMetal): Wire => ({ from, to, diameter, metal });
