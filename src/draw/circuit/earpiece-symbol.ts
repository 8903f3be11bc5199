import { type Vector, vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import { leadMark, STROKE } from './symbol.ts';

const HALF = 4;
const DEEP = 3.5;

/** An earpiece: a bar towards the ear, the case behind it; its two terminals at the back. */
export function earpieceMarks(hot: Vector, cold: Vector): { readonly marks: readonly Mark[]; readonly halfWidth: number } {
  const x = hot.x;
  const y = (hot.y + cold.y) / 2;
  const front = x + DEEP;
  return {
    marks: [
      leadMark('earpiece', 'a', hot, vector(x, y - HALF + 1)),
      leadMark('earpiece', 'b', cold, vector(x, y + HALF - 1)),
      {
        kind: 'polyline',
        points: [vector(front, y - HALF + 1), vector(x - 1, y - HALF + 1), vector(x - 1, y + HALF - 1), vector(front, y + HALF - 1)],
        ...STROKE,
      },
      { kind: 'line', from: vector(front, y - HALF), to: vector(front, y + HALF), stroke: 'ink', width: 0.8 },
    ],
    halfWidth: DEEP + 0.4,
  };
}
