import { type Vector, vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import { labelMarks, type PartLabel } from './label.ts';
import { leadMark, STROKE } from './symbol.ts';

const LEAD = 3;
const AIR = 2;
const LEAST = 14;

export interface DrawnFeeder {
  readonly marks: readonly Mark[];
  /** terminals on the set's side */
  readonly hot: Vector;
  readonly cold: Vector;
}

/** A line of two wires as a box with four terminals: the aerial's pair on the left, the set's on the right. */
export function feederMarks(label: PartLabel, hot: Vector, cold: Vector): DrawnFeeder {
  const width = Math.max(LEAST, label.width + 2 * AIR);
  const [left, right] = [hot.x + LEAD, hot.x + LEAD + width];
  const [top, bottom] = [hot.y - 3, cold.y + 3];
  const [a, b] = [vector(right + LEAD, hot.y), vector(right + LEAD, cold.y)];
  return {
    marks: [
      leadMark('aerial end of feeder', 'a', hot, vector(left, hot.y)),
      leadMark('aerial end of feeder', 'b', cold, vector(left, cold.y)),
      leadMark('feeder', 'a', a, vector(right, a.y)),
      leadMark('feeder', 'b', b, vector(right, b.y)),
      {
        kind: 'polyline',
        points: [vector(left, top), vector(right, top), vector(right, bottom), vector(left, bottom), vector(left, top)],
        ...STROKE,
      },
      ...labelMarks(label, vector(left + AIR, (top + bottom) / 2), 'right', 'feeder'),
    ],
    hot: a,
    cold: b,
  };
}
