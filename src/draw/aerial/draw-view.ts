import type { SpacePoint } from '#engine';
import { placeDimension } from '../placing/dimension.ts';
import { Occupied } from '../placing/occupied.ts';
import { corners, type Extent, extentOf } from '../plane/extent.ts';
import { add, middle, subtract, unit, vector } from '../plane/vector.ts';
import { type Mark, outline } from '../svg/mark.ts';
import { textWidth } from '../svg/text-width.ts';
import type { Content } from './content.ts';
import { drawBoom, drawConductors } from './draw-conductors.ts';
import { drawGround } from './draw-ground.ts';
import { drawBodies, drawFeed, drawLoads, drawTurns } from './draw-labels.ts';
import { type OnPaper, onPaper } from './on-paper.ts';
import { northMarks } from './symbols.ts';
import { project } from './view.ts';
import type { DimensionTask, ViewTask } from './view-tasks.ts';

const TITLE_SIZE = 3.4;

/** A view drawn: marks about the structure's reference point, and the room they take. */
export interface DrawnView {
  readonly marks: readonly Mark[];
  readonly extent: Extent;
}

/**
 * @param perMetre - millimetres of paper for a metre
 * @param reference - the point of the structure that all views put at (0, 0)
 */
export function drawView(content: Content, task: ViewTask, perMetre: number, reference: SpacePoint): DrawnView {
  const paper = onPaper(content, task.view, perMetre, reference, new Occupied());
  const structure = extentOf(content.structure.wires.flatMap((w) => [paper.point(w.from), paper.point(w.to)]))!;
  const grounded = content.structure.ground.kind !== 'free-space' && task.view.name !== 'plan';
  const marks = [
    ...(task.boom ? drawBoom(paper) : []),
    ...drawConductors(paper),
    ...(grounded ? drawGround(paper, structure, task.height) : []),
    ...task.dimensions.flatMap((d) => drawDimension(paper, d, structure)),
    ...(task.labels ? [...drawLoads(paper), ...drawTurns(paper), ...drawBodies(paper)] : []),
    ...drawFeed(paper, task.labels),
  ];
  return titled(marks, task, structure);
}

/** A dimension at the handiest of the places where it can be shown, by choice on the outer side. */
function drawDimension({ view, point, occupied }: OnPaper, d: DimensionTask, structure: Extent): readonly Mark[] {
  const centre = vector((structure.left + structure.right) / 2, (structure.top + structure.bottom) / 2);
  const beyond = d.outside ? corners(structure) : [];
  return d.choices
    .map((choice) => {
      const [from, to] = [point(choice.from), point(choice.to)];
      const along = unit(d.direction ? project(view, d.direction) : subtract(to, from));
      const towards = d.towards ?? subtract(middle(from, to), centre);
      return placeDimension({ ...d, from, to, along, towards, beyond }, occupied);
    })
    .reduce((best, next) => (next.price < best.price ? next : best))
    .draw();
}

/** Puts the view's name above everything else in it, with the north arrow in a plan. */
function titled(marks: readonly Mark[], task: ViewTask, structure: Extent): DrawnView {
  const inner = extentOf([...marks.flatMap(outline), vector(structure.left, structure.top)])!;
  const { view } = task;
  const north = view.name === 'plan' ? unit(project(view, { x: 0, y: 1, z: 0 })) : null;
  const at = vector(inner.left, inner.top - (north ? 6.5 : 4));
  const heading: Mark = {
    kind: 'text',
    at,
    text: task.heading,
    size: TITLE_SIZE,
    anchor: 'start',
    angle: 0,
    fill: 'quiet',
    labels: { heading: view.name },
  };
  const all = [...marks, heading, ...(north ? northMarks(add(at, vector(textWidth(task.heading, TITLE_SIZE) + 8, -1)), north) : [])];
  return { marks: all, extent: extentOf(all.flatMap(outline))! };
}
