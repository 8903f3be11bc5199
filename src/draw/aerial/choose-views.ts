import type { SpacePoint } from '#engine';
import type { Piece } from './conductors.ts';
import { pictureOf } from './picture.ts';
import { dot } from './space.ts';
import { trueness, type View, type ViewName } from './view.ts';

/** Shallower than this part of the whole, or thinner than the wires, a structure has no third dimension to show. */
const SHALLOW = 0.01;
/** A piece drawn at this part of its length or more is drawn in true length. */
export const TRUE = 0.999;

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
export function chooseViews(
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
  const first = pictureOf(chief, pieces).text;
  const repeats = (v: View) => (pictureOf(v, pieces).text === first ? 1 : 0);
  const [second, third] = ranked
    .slice(1)
    .sort((a, b) => repeats(a) - repeats(b) || news([chief], b) - news([chief], a) || seen(b) - seen(a)) as [View, View];
  return news([chief, second], third) > 0 ? [chief, second, third] : [chief, second];
}
