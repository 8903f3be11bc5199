import { type Paper, roomHeight, roomWidth, SIDE, TOP, turned } from '../pdf/paper.ts';
import type { Block } from './block.ts';

export interface Placed {
  readonly block: Block;
  readonly x: number;
  readonly y: number;
}

/** A page, upright or turned, with what stands on it. */
export interface Page {
  readonly paper: Paper;
  readonly placed: readonly Placed[];
}

const AIR = 1e-6;
/** A section shorter than this part of a page is kept together. */
const SHORT = 0.45;

/**
 * Places blocks one under the other on pages. A block that is wider than a page has a page of its own, turned; blocks that stay together do.
 *
 * @throws RangeError for a block that fits no page
 */
export function place(blocks: readonly Block[], paper: Paper): readonly Page[] {
  const pages: { paper: Paper; placed: Placed[] }[] = [];
  let y = 0;
  const begin = (on: Paper): { paper: Paper; placed: Placed[] } => {
    const page = { paper: on, placed: [] };
    pages.push(page);
    y = TOP;
    return page;
  };
  const put = (b: Block, on: { placed: Placed[] }): void => {
    if (on.placed.length > 0) y += b.above;
    on.placed.push({ block: b, x: SIDE, y });
    y += b.height;
  };
  for (const group of groups(blocks)) {
    const wide = group.some((b) => b.width > roomWidth(paper) + AIR);
    const on = wide ? turned(paper) : paper;
    const width = Math.max(...group.map((b) => b.width));
    const height = group.reduce((sum, b, i) => sum + b.height + (i === 0 ? 0 : b.above), 0);
    if (width > roomWidth(on) + AIR || height > roomHeight(on) + AIR)
      throw new RangeError(`${width} mm by ${height} mm fits no page of ${on.name}.`);
    const page = pages.at(-1);
    const room = page === undefined ? 0 : TOP + roomHeight(page.paper) - y - (page.placed.length > 0 ? group[0]!.above : 0);
    const fresh = page === undefined || page.paper.width !== on.width || wide || group[0]!.newPage === true || height > room + AIR;
    const target = fresh ? begin(on) : page;
    const { head } = group[0]!;
    if (target.placed.length === 0 && head) put(head, target);
    for (const b of group) put(b, target);
  }
  return pages;
}

/** Blocks that stay on one page, if that is no more than part of one: no line of a short section goes over alone. */
export function together(blocks: readonly Block[], paper: Paper): readonly Block[] {
  const height = blocks.reduce((sum, b) => sum + b.height + b.above, 0);
  if (height > SHORT * roomHeight(paper) || blocks.some((b) => b.width > roomWidth(paper))) return blocks;
  return blocks.map((b, i) => (i < blocks.length - 1 ? { ...b, withNext: true as const } : b));
}

/** Each block with those that lead to it. */
function groups(blocks: readonly Block[]): readonly (readonly Block[])[] {
  const out: Block[][] = [];
  let open = false;
  for (const b of blocks) {
    if (open) out.at(-1)!.push(b);
    else out.push([b]);
    open = b.withNext === true;
  }
  return out;
}
