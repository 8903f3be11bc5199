import type { Piece } from './conductors.ts';
import { project, type View } from './view.ts';

/** Two places nearer than this are one [m]. */
const SAME = 1e-5;

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** What a view shows, as text: two views of one text show the same picture or its mirror image. */
export function pictureOf(view: View, pieces: readonly Piece[]): { readonly text: string; readonly symmetric: boolean } {
  const seen = pieces.map((p) => [project(view, p.from), project(view, p.to)] as const);
  const ends = seen.flat();
  const left = Math.min(...ends.map((p) => p.x));
  const right = Math.max(...ends.map((p) => p.x));
  const top = Math.min(...ends.map((p) => p.y));
  const write = (across: (x: number) => number) =>
    seen
      .map((both) =>
        both
          .map(({ x, y }) => `${Math.round(across(x) / SAME)},${Math.round((y - top) / SAME)}`)
          .sort(byText)
          .join(' '),
      )
      .sort(byText)
      .join(';');
  const [plain, mirrored] = [write((x) => x - left), write((x) => right - x)];
  return { text: [plain, mirrored].sort(byText)[0]!, symmetric: plain === mirrored };
}
