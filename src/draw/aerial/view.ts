import type { SpacePoint } from '#engine';
import type { Vector } from '../plane/vector.ts';
import type { Piece } from './conductors.ts';
import { dot, minus, norm } from './space.ts';

export type ViewName = 'front' | 'side' | 'plan';

/** A way of looking: unit vectors that run to the right and upwards on the paper. */
export interface View {
  readonly name: ViewName;
  readonly right: SpacePoint;
  readonly up: SpacePoint;
  /** words over the picture */
  readonly title: string;
}

const bearingVector = (bearing: number): SpacePoint => ({ x: Math.sin(bearing), y: Math.cos(bearing), z: 0 });
const UP: SpacePoint = { x: 0, y: 0, z: 1 };

/** The three orthogonal views about a bearing; in first-angle projection the side is seen from the left (ISO 128-3). */
export function orthogonalViews(bearing: number): Readonly<Record<ViewName, View>> {
  const ahead = bearingVector(bearing);
  const right = bearingVector(bearing + Math.PI / 2);
  const back = bearingVector(bearing + Math.PI);
  return {
    front: { name: 'front', right, up: UP, title: `Front, looking ${bearingText(bearing)}` },
    side: { name: 'side', right: back, up: UP, title: `Side, looking ${bearingText(bearing + Math.PI / 2)}` },
    plan: { name: 'plan', right, up: ahead, title: bearing === 0 ? 'Plan, north at the top' : 'Plan' },
  };
}

/** `north`, `east`, or `017°`. */
function bearingText(bearing: number): string {
  const degrees = (Math.round((bearing * 180) / Math.PI) + 360) % 360;
  const exact = Math.abs(Math.sin(2 * bearing)) < 1e-6;
  return exact && degrees % 90 === 0 ? ['north', 'east', 'south', 'west'][degrees / 90]! : `${String(degrees).padStart(3, '0')}°`;
}

/** A point as the view shows it [m]: x to the right, y down. */
export const project = (view: View, p: SpacePoint): Vector => ({ x: dot(p, view.right), y: -dot(p, view.up) });

/** Drawn length of a piece over its true length. */
export function trueness(view: View, p: Piece): number {
  const step = minus(p.to, p.from);
  return Math.hypot(dot(step, view.right), dot(step, view.up)) / norm(step);
}
