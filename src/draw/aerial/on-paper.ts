import type { SpacePoint } from '#engine';
import type { Occupied } from '../placing/occupied.ts';
import { scale, type Vector } from '../plane/vector.ts';
import type { Content } from './content.ts';
import { minus } from './space.ts';
import { project, type View } from './view.ts';

/** Thinner lines do not print well [mm]. */
const THINNEST = 0.3;
/** A piece drawn shorter than this [mm] is seen from its end. */
export const END_ON = 0.05;

/** A structure as one view puts it on the paper, and what is drawn there already. */
export interface OnPaper {
  readonly content: Content;
  readonly view: View;
  readonly occupied: Occupied;
  /** place of a point of space [mm], from the reference point that all views share */
  point(p: SpacePoint): Vector;
  /** place of a node of the layout */
  node(n: number): Vector;
  /** drawn thickness of a conductor [mm] */
  thickness(diameter: number): number;
}

/** @param perMetre - millimetres of paper for a metre */
export function onPaper(content: Content, view: View, perMetre: number, reference: SpacePoint, occupied: Occupied): OnPaper {
  const point = (p: SpacePoint) => scale(project(view, minus(p, reference)), perMetre);
  return {
    content,
    view,
    occupied,
    point,
    node: (n) => point(content.layout.nodes[n]!),
    thickness: (diameter) => Math.max(THINNEST, diameter * perMetre),
  };
}
