import { placeDimension } from '../placing/dimension.ts';
import { WEIGHT } from '../placing/occupied.ts';
import { corners, type Extent } from '../plane/extent.ts';
import { vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import { feedOf } from './content.ts';
import type { OnPaper } from './on-paper.ts';
import { earthMarks, groundMarks } from './symbols.ts';

/** A ground further below than this [mm] is drawn nearer, the height broken. */
const FAR = 45;
const NEAR = 14;
const OVERHANG = 10;

/**
 * The ground below a structure, and the height of the feed where that is to be said here.
 *
 * @param structure - room the wires take
 * @param height - of the feed, as text
 */
export function drawGround(paper: OnPaper, structure: Extent, height: string | null): readonly Mark[] {
  const { content, node, point, occupied } = paper;
  const trueLevel = point({ x: 0, y: 0, z: 0 }).y;
  const broken = trueLevel - structure.bottom > Math.max(FAR, 0.8 * (structure.bottom - structure.top));
  const y = broken ? structure.bottom + NEAR : trueLevel;
  const [left, right] = [structure.left - OVERHANG, structure.right + OVERHANG];
  occupied.addLine(vector(left, y), vector(right, y), WEIGHT.conductor);
  const marks: Mark[] = [...groundMarks(left, right, y, broken)];
  content.layout.nodes.forEach((n, i) => {
    if (n.grounded) marks.push(...earthMarks(node(i)));
  });
  if (height === null) return marks;
  const feed = node(feedOf(content).node);
  const dimension = {
    from: vector(feed.x, y),
    to: feed,
    along: vector(0, -1),
    text: height,
    broken,
    towards: vector(-1, 0),
    beyond: corners(structure),
    labels: { dimension: 'height' },
  };
  return [...marks, ...placeDimension(dimension, occupied).draw()];
}
