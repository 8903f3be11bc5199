import type { Vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';

/** A mark whose points have gone elsewhere; circles, arcs and texts keep their size and do not turn. */
export function markAt(m: Mark, where: (v: Vector) => Vector): Mark {
  switch (m.kind) {
    case 'line':
      return { ...m, from: where(m.from), to: where(m.to) };
    case 'polyline':
    case 'area':
      return { ...m, points: m.points.map(where) };
    case 'circle':
    case 'arc':
      return { ...m, centre: where(m.centre) };
    case 'text':
      return { ...m, at: where(m.at) };
    default:
      throw new RangeError(`Parts are not drawn with marks of kind ${m.kind}.`);
  }
}
