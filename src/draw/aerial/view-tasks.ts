import type { SpacePoint } from '#engine';
import { type Vector, vector } from '../plane/vector.ts';
import { chooseViews, TRUE } from './choose-views.ts';
import type { Piece } from './conductors.ts';
import { bodyWires, type Content, feedOf } from './content.ts';
import { countedText, lengthText } from './length-text.ts';
import { principalBearing } from './principal-bearing.ts';
import { dot, minus, norm, unitStep } from './space.ts';
import { orthogonalViews, trueness, type View } from './view.ts';

/** A length to be dimensioned in a view: it may be shown at any one of several places. */
export interface DimensionTask {
  readonly choices: readonly { readonly from: SpacePoint; readonly to: SpacePoint }[];
  /** unit vector it is measured along; from `from` to `to` where left out */
  readonly direction?: SpacePoint;
  readonly text: string;
  readonly foreshortened?: boolean;
  readonly towards?: Vector;
  /** the line stands clear of the whole structure */
  readonly outside?: boolean;
  readonly labels: Readonly<Record<string, string | number>>;
}

/** What one view has to show beside the wires. */
export interface ViewTask {
  readonly view: View;
  /** words over it */
  readonly heading: string;
  /** in the order they are placed: the nearest to the conductors first */
  readonly dimensions: readonly DimensionTask[];
  readonly boom: boolean;
  /** whether feed, loads, turns and bodies are named here */
  readonly labels: boolean;
  /** height of the feed above the ground, where it is dimensioned here */
  readonly height: string | null;
}

/** More places than this for one dimension are not tried. */
const MOST_CHOICES = 8;
/** More dimensions than this make no drawing clearer: the list has them all. */
export const MOST_GROUPS = 24;

/** Shares out what is to be shown among the views: every length once, where it is seen in true size. */
export function viewTasks(content: Content): readonly ViewTask[] {
  const views = chooseViews(orthogonalViews(bearingOf(content)), content.pieces, content.groups);
  const dimensions = views.map((): DimensionTask[] => []);
  const best = (size: (v: View) => number): number => {
    const sizes = views.map(size);
    const first = sizes.findIndex((s) => s > TRUE);
    return first >= 0 ? first : sizes.indexOf(Math.max(...sizes));
  };
  for (const group of content.groups.slice(0, MOST_GROUPS)) {
    const shown = best((v) => Math.max(...group.map((p) => trueness(v, p))));
    dimensions[shown]!.push(pieceTask(group, views[shown]!));
  }
  for (const task of [...tapTasks(content), ...rowTasks(content)]) {
    dimensions[best((v) => sizeIn(v, directionOf(task)))]!.push(task);
  }
  const given = [...dimensions].map((list) => list.length);
  overallTasks(content, views).forEach((tasks, i) => {
    dimensions[i]!.push(...tasks);
  });
  const elevation = views.findIndex((v) => v.name !== 'plan');
  const height = content.layout.nodes[feedOf(content).node]!.z;
  const grounded = content.structure.ground.kind !== 'free-space';
  return views.map((view, i) => ({
    view,
    heading: views.length > 1 || view.name === 'plan' ? view.title : view.title.replace(/^\w+, l/, 'L'),
    dimensions: [
      ...dimensions[i]!.slice(0, given[i]).sort((a, b) => shownLength(view, a) - shownLength(view, b)),
      ...dimensions[i]!.slice(given[i]),
    ],
    boom: content.row !== null && sizeIn(view, content.row.direction) > TRUE,
    labels: i === 0,
    height: grounded && i === elevation && height > 0 && !standsOnGround(content, height) ? lengthText(height) : null,
  }));
}

/** Straight wires say which way to look; the sides of turns only where there are no others. */
function bearingOf({ pieces, turns }: Content): number {
  const round = new Set(turns.flatMap((t) => t.pieces));
  const straight = pieces.filter((p) => !round.has(p) && Math.hypot(p.to.x - p.from.x, p.to.y - p.from.y) > 1e-3 * p.length);
  return principalBearing(straight.length > 0 ? straight : pieces);
}

const sizeIn = (v: View, direction: SpacePoint): number => Math.hypot(dot(direction, v.right), dot(direction, v.up));

function shownLength(view: View, task: DimensionTask): number {
  const { from, to } = task.choices[0]!;
  return norm(minus(to, from)) * sizeIn(view, directionOf(task));
}

const directionOf = (task: DimensionTask): SpacePoint => task.direction ?? unitStep(task.choices[0]!.from, task.choices[0]!.to);

/** A piece from the feed straight down to the ground says the height already. */
function standsOnGround(content: Content, height: number): boolean {
  return content.pieces.some((p) => Math.abs(p.length - height) < 1e-5 && Math.abs(Math.abs(p.to.z - p.from.z) - height) < 1e-5);
}

function pieceTask(group: readonly Piece[], view: View): DimensionTask {
  const shown = [...group].sort((a, b) => trueness(view, b) - trueness(view, a));
  const most = trueness(view, shown[0]!);
  const equally = shown.filter((p) => trueness(view, p) > most - 1e-6).slice(0, MOST_CHOICES);
  return {
    choices: equally,
    text: countedText(group.length, lengthText(group[0]!.length)),
    foreshortened: most < TRUE,
    labels: { dimension: 'piece' },
  };
}

/** How far along a conductor something is joined to its middle. */
function tapTasks({ conductors, joints, layout }: Content): readonly DimensionTask[] {
  return conductors
    .flatMap((c) => c.pieces)
    .flatMap((p) =>
      joints.flatMap((n): DimensionTask[] => {
        const at = layout.nodes[n]!;
        const [before, after] = [norm(minus(at, p.from)), norm(minus(at, p.to))];
        const within = Math.abs(before + after - p.length) < 1e-9 * p.length && before > 1e-6 && after > 1e-6;
        if (!within) return [];
        const [from, length] = before <= after ? [p.from, before] : [p.to, after];
        return [{ choices: [{ from, to: at }], text: lengthText(length), labels: { dimension: 'joint' } }];
      }),
    );
}

/** From element to element, and the whole boom where there are more than two. */
function rowTasks({ row }: Content): readonly DimensionTask[] {
  if (!row) return [];
  const { elements } = row;
  const step = (i: number, j: number, dimension: string): DimensionTask => {
    const [a, b] = [elements[i]!, elements[j]!];
    const length = norm(minus(b.middle, a.middle));
    // measured at the tips on one side or the other, on the way along the boom
    const tips = [a.from, a.to].map((tip) => {
      const other = [b.from, b.to].reduce((p, q) => (norm(minus(q, tip)) < norm(minus(p, tip)) ? q : p));
      return { from: tip, to: other };
    });
    return { choices: tips, direction: row.direction, outside: true, text: lengthText(length), labels: { dimension } };
  };
  const steps = Array.from({ length: elements.length - 1 }, (_, i) => step(i, i + 1, 'spacing'));
  return elements.length > 2 ? [...steps, step(0, elements.length - 1, 'boom')] : steps;
}

/** Width, depth and height over all, each once, where no other dimension says the same. */
function overallTasks(content: Content, views: readonly View[]): readonly (readonly DimensionTask[])[] {
  const done = new Set<string>();
  return views.map((view) => {
    const tasks: DimensionTask[] = [];
    const axes = [
      { axis: view.right, towards: vector(0, 1) },
      { axis: view.up, towards: vector(-1, 0) },
    ];
    for (const { axis, towards } of axes) {
      if (done.has(axisName(axis))) continue;
      done.add(axisName(axis));
      const { least, most, size } = extremes(content, axis);
      if (size < 1e-6 || saidAlready(content, axis, size) || onTurns(content, axis, least, most)) continue;
      tasks.push({
        choices: [{ from: least, to: most }],
        direction: axis,
        towards,
        outside: true,
        text: lengthText(size),
        labels: { dimension: 'overall' },
      });
    }
    return tasks;
  });
}

/** Width, depth and height in the directions of the views; what turns reach to is left out. */
export function overallSizes(content: Content): readonly { readonly size: number; readonly word: string }[] {
  const { front, plan } = orthogonalViews(bearingOf(content));
  const axes = [
    { axis: front.right, word: 'wide' },
    { axis: plan.up, word: 'deep' },
    { axis: front.up, word: 'high' },
  ];
  return axes.flatMap(({ axis, word }) => {
    const { least, most, size } = extremes(content, axis);
    return size < 1e-6 || onTurns(content, axis, least, most) ? [] : [{ size, word }];
  });
}

function extremes({ pieces }: Content, axis: SpacePoint) {
  const ends = pieces.flatMap((p) => [p.from, p.to]);
  const least = ends.reduce((a, b) => (dot(b, axis) < dot(a, axis) - 1e-9 ? b : a));
  const most = ends.reduce((a, b) => (dot(b, axis) > dot(a, axis) + 1e-9 ? b : a));
  return { least, most, size: dot(minus(most, least), axis) };
}

/** A name for an axis, the same whichever way round. */
const axisName = (axis: SpacePoint): string => [axis.x, axis.y, axis.z].map((c) => Math.abs(Math.round(c * 1e6))).join(' ');

function saidAlready({ pieces, row, groups, bodies }: Content, axis: SpacePoint, size: number): boolean {
  const dimensioned = new Set(groups.flat());
  const inBody = bodyWires(bodies);
  const same = (length: number, direction: SpacePoint) => Math.abs(length - size) < 1e-5 && Math.abs(dot(direction, axis)) > 1 - 1e-6;
  if (row && same(norm(minus(row.elements.at(-1)!.middle, row.elements[0]!.middle)), row.direction)) return true;
  return pieces.some((p) => (dimensioned.has(p) || p.wires.every((w) => inBody.has(w))) && same(p.length, unitStep(p.from, p.to)));
}

/** Both extremes lie on turns, whose diameter is given, so that the size of the polygon would only confuse. */
function onTurns({ turns }: Content, axis: SpacePoint, least: SpacePoint, most: SpacePoint): boolean {
  const ends = turns.flatMap((t) => t.pieces.flatMap((p) => [p.from, p.to]));
  const reaches = (p: SpacePoint) => ends.some((e) => Math.abs(dot(minus(e, p), axis)) < 1e-9);
  return turns.length > 0 && reaches(least) && reaches(most);
}
