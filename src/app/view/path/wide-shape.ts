import { type Drop, type Fall, type Post, scaleOf } from './fall.ts';

/** One stage in the picture: its column, and where the wire runs in it. */
export interface Column {
  readonly post: Post;
  readonly left: number;
  readonly right: number;
  /** the stairs of the wire, each at its x from one height to another */
  readonly stairs: readonly { readonly drop: Drop; readonly x: number; readonly from: number; readonly to: number }[];
  /** where the stage's own drawing is: between the last stair and the right edge */
  readonly from: number;
  readonly middle: number;
  /** height of the wire there */
  readonly y: number;
}

export interface WideShape {
  readonly columns: readonly Column[];
  /** height of the surface of silence */
  readonly silence: number;
  readonly width: number;
  readonly height: number;
}

/** Room above the wire for the drawings that stand on it, and below it for its text [px]. */
const ABOVE = 92;
const BELOW = 76;
const STAIR = 62;
const FIRST = 10;

/** The path across a wide page: stages from left to right, decibels downwards. */
export function wideShape(fall: Fall, width: number, height: number): WideShape {
  const { top, bottom, silence } = scaleOf(fall);
  const y = (lost: number): number => ABOVE + ((lost - top) / (bottom - top)) * (height - ABOVE - BELOW);
  const shares = columnShares(fall);
  const unit = width / shares.reduce((sum, share) => sum + share, 0);
  let right = 0;
  const columns = fall.posts.map((post, k): Column => {
    const left = right;
    const each = unit * shares[k]!;
    right += each;
    const stairs = post.drops.map((drop, i) => ({ drop, x: left + FIRST + i * STAIR, from: y(drop.from), to: y(drop.to) }));
    const from = stairs.length > 0 ? stairs.at(-1)!.x + STAIR - 6 : left;
    return { post, left, right, stairs, from, middle: (Math.max(from, left + each * 0.2) + left + each) / 2, y: y(post.lost) };
  });
  return { columns, silence: y(silence), width, height };
}

/** Widths of the columns by that of a plain one: a stage with several drops needs more room. */
export const columnShares = ({ posts }: Fall): readonly number[] => posts.map((post) => 1 + 0.3 * Math.max(0, post.drops.length - 1));

/** A calm water line from side to side. */
export function waterLine(y: number, width: number): string {
  const wave = 48;
  const n = Math.ceil(width / wave);
  return `M0,${y.toFixed(1)}${Array.from({ length: n }, () => `q${wave / 4},-5 ${wave / 2},0t${wave / 2},0`).join('')}`;
}
