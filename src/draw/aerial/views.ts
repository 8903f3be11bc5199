import type { SpacePoint } from '#engine';
import type { Vector } from '../plane/vector.ts';
import type { Piece } from './conductors.ts';
import { dot, minus, norm } from './space.ts';

export type ViewName = 'front' | 'side' | 'plan';

/** A way of looking: unit vectors that run to the right and upwards on the paper, and away from the eye. */
export interface View {
  readonly name: ViewName;
  readonly right: SpacePoint;
  readonly up: SpacePoint;
  readonly away: SpacePoint;
  /** words over the picture */
  readonly title: string;
}

/** Shallower than this part of the whole, or thinner than the wires, a structure has no third dimension to show. */
const SHALLOW = 0.01;
const TRUE = 0.999;

const bearingVector = (bearing: number): SpacePoint => ({ x: Math.sin(bearing), y: Math.cos(bearing), z: 0 });
const UP: SpacePoint = { x: 0, y: 0, z: 1 };

/**
 * Bearing the front view looks towards [rad]: of all directions the wires take on the level, the one along or across which most of them lie; within
 * 45 degrees of north.
 */
export function principalBearing(pieces: readonly Piece[]): number {
  const level = pieces.map((p) => {
    const step = minus(p.to, p.from);
    return { run: Math.hypot(step.x, step.y), bearing: Math.atan2(step.x, step.y) };
  });
  const quarter = Math.PI / 2;
  const longest = Math.max(...level.map((l) => l.run));
  let best = { run: 0, bearing: 0 };
  for (const candidate of level) {
    if (candidate.run < 1e-6 * longest) continue;
    const bearing = candidate.bearing - quarter * Math.round(candidate.bearing / quarter);
    const run = level.reduce((sum, l) => {
      const off = l.bearing - bearing - quarter * Math.round((l.bearing - bearing) / quarter);
      return Math.abs(off) < 1e-3 ? sum + l.run : sum;
    }, 0);
    const nearer = Math.abs(bearing) < Math.abs(best.bearing) - 1e-9;
    if (run > best.run * (1 + 1e-6) || (run > best.run * (1 - 1e-6) && nearer)) best = { run, bearing };
  }
  return Math.abs(best.bearing) < 1e-9 ? 0 : best.bearing;
}

/** The three orthogonal views about a bearing; in first-angle projection the side is seen from the left (ISO 128-3). */
export function orthogonalViews(bearing: number): Readonly<Record<ViewName, View>> {
  const ahead = bearingVector(bearing);
  const right = bearingVector(bearing + Math.PI / 2);
  const back = bearingVector(bearing + Math.PI);
  const down = { x: 0, y: 0, z: -1 };
  return {
    front: { name: 'front', right, up: UP, away: ahead, title: `Front, looking ${bearingText(bearing)}` },
    side: { name: 'side', right: back, up: UP, away: right, title: `Side, looking ${bearingText(bearing + Math.PI / 2)}` },
    plan: { name: 'plan', right, up: ahead, away: down, title: bearing === 0 ? 'Plan, north at the top' : 'Plan' },
  };
}

/** `north`, `east`, or `017°`. */
export function bearingText(bearing: number): string {
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

const sizeAlong = (pieces: readonly Piece[], axis: SpacePoint): number => {
  const at = pieces.flatMap((p) => [dot(p.from, axis), dot(p.to, axis)]);
  return Math.max(...at) - Math.min(...at);
};

/**
 * The views that say something, the chief one first.
 *
 * First the view in which the structure covers most, then the one that shows in true length most of what the first does not, one that
 * repeats the first only if there is no other; and the third only if it shows in true length what neither did. A flat structure has one view.
 *
 * @param groups - pieces of equal length, of which one in true length is enough
 */
export function choose(
  views: Readonly<Record<ViewName, View>>,
  pieces: readonly Piece[],
  groups: readonly (readonly Piece[])[],
): readonly View[] {
  const { front, side, plan } = views;
  const [wide, deep, high] = [front.right, plan.up, front.up].map((axis) => sizeAlong(pieces, axis));
  const shallow = Math.max(SHALLOW * Math.max(wide!, deep!, high!), 1.5 * Math.max(...pieces.map((p) => p.diameter)));
  const covered = (v: View) => {
    const [across, tall] = v === front ? [wide!, high!] : v === side ? [deep!, high!] : [wide!, deep!];
    return Math.max(across, shallow) * Math.max(tall, shallow);
  };
  const ranked = [front, side, plan].sort((a, b) => covered(b) - covered(a));
  const chief = ranked[0]!;
  const flat = [wide!, deep!, high!].some((size) => size <= shallow);
  if (flat) return [chief];
  const shows = (chosen: readonly View[], group: readonly Piece[]) => chosen.some((v) => group.some((p) => trueness(v, p) > TRUE));
  const news = (chosen: readonly View[], v: View) =>
    groups.reduce((sum, g) => (!shows(chosen, g) && shows([v], g) ? sum + g[0]!.length : sum), 0);
  const seen = (v: View) => pieces.reduce((sum, p) => sum + p.length * trueness(v, p), 0);
  const picture = (v: View) => pictureOf(v, pieces);
  const repeats = (v: View) => (picture(v) === picture(chief) ? 1 : 0);
  const [second, third] = ranked
    .slice(1)
    .sort((a, b) => repeats(a) - repeats(b) || news([chief], b) - news([chief], a) || seen(b) - seen(a)) as [View, View];
  return news([chief, second], third) > 0 ? [chief, second, third] : [chief, second];
}

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** What is seen, mirrored or not, as text: two views of one text show the same picture. */
function pictureOf(view: View, pieces: readonly Piece[]): string {
  const ends = pieces.flatMap((p) => [project(view, p.from), project(view, p.to)]);
  const left = Math.min(...ends.map((p) => p.x));
  const right = Math.max(...ends.map((p) => p.x));
  const top = Math.min(...ends.map((p) => p.y));
  const write = (mirrored: boolean) =>
    pieces
      .map((p) =>
        [p.from, p.to]
          .map((end) => project(view, end))
          .map(({ x, y }) => `${Math.round((mirrored ? right - x : x - left) * 1e5)},${Math.round((y - top) * 1e5)}`)
          .sort(byText)
          .join(' '),
      )
      .sort(byText)
      .join(';');
  return [write(false), write(true)].sort(byText)[0]!;
}
