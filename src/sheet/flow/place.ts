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
/** A page of which less than this is used goes on being filled. */
const FULL = 2 / 3;

/**
 * Places blocks one under the other on pages. Blocks that stay together do; a drawing that finds no room goes to the head of the next page, and
 * what follows fills this one. A drawing that is wider than a page has its page turned.
 *
 * @throws RangeError for a block that fits no page
 */
export function place(blocks: readonly Block[], paper: Paper): readonly Page[] {
  const pages = new Pages(paper);
  for (const group of groups(blocks, (b) => b.withNext === true || b.keptWithNext === true)) pages.take(group);
  return pages.finished();
}

type Group = readonly Block[];

class Pages {
  readonly #paper: Paper;
  readonly #pages: { paper: Paper; placed: Placed[] }[] = [];
  /** drawings that wait for the next page, in their order */
  #waiting: Group[] = [];
  #y = 0;

  constructor(paper: Paper) {
    this.#paper = paper;
  }

  finished(): readonly Page[] {
    while (this.#waiting.length > 0) this.#begin();
    return this.#pages;
  }

  take(group: Group): void {
    if (group[0]!.floats) {
      if (this.#pages.length > 0 && this.#waiting.length === 0 && this.#fits(group)) this.#put(group);
      else this.#waiting.push(group);
      return;
    }
    const { newPage, afterDrawings } = group[0]!;
    const begins = newPage || (afterDrawings && this.#waiting.length > 0);
    if (this.#pages.length === 0 || (begins && this.#used() >= FULL)) this.#begin(group);
    while (!this.#fits(group)) {
      if (this.#pages.at(-1)!.placed.length === 0) throw this.#tooLarge(group);
      const parts = groups(group, (b) => b.withNext === true);
      if (this.#used() < FULL && parts.length > 1) {
        for (const part of parts) this.take(part);
        return;
      }
      this.#begin(group);
    }
    this.#put(group);
  }

  /** A new page, headed by the drawings that wait, as far as they find room; turned where the first of them, or else what comes next, must have it. */
  #begin(next?: Group): void {
    const [first] = this.#waiting;
    const wide = widthOf(first ?? next ?? []) > roomWidth(this.#paper) + AIR;
    this.#pages.push({ paper: wide ? turned(this.#paper) : this.#paper, placed: [] });
    this.#y = TOP;
    if (first && !this.#fits(first)) throw this.#tooLarge(first);
    while (this.#waiting.length > 0 && this.#fits(this.#waiting[0]!)) this.#put(this.#waiting.shift()!);
  }

  #tooLarge(group: Group): RangeError {
    return new RangeError(`${widthOf(group)} mm by ${heightOf(group)} mm fits no page of ${this.#paper.name}.`);
  }

  /** Part of the page that is used. */
  #used(): number {
    return (this.#y - TOP) / roomHeight(this.#pages.at(-1)!.paper);
  }

  #fits(group: Group): boolean {
    const { paper, placed } = this.#pages.at(-1)!;
    const above = placed.length > 0 ? group[0]!.above : 0;
    const room = TOP + roomHeight(paper) - this.#y - above - (this.#headFor(group)?.height ?? 0);
    return widthOf(group) <= roomWidth(paper) + AIR && heightOf(group) <= room + AIR;
  }

  /** Head of a table that goes on here from another page; null where none is needed. */
  #headFor(group: Group): Block | null {
    const { head } = group[0]!;
    const before = this.#pages.at(-1)!.placed.at(-1)?.block;
    // a block may be a copy with other wishes; what it paints is the same
    return head && before?.paint !== head.paint && before?.head?.paint !== head.paint ? head : null;
  }

  #put(group: Group): void {
    const { placed } = this.#pages.at(-1)!;
    const head = this.#headFor(group);
    for (const b of head ? [head, ...group] : group) {
      if (placed.length > 0) this.#y += b.above;
      placed.push({ block: b, x: SIDE, y: this.#y });
      this.#y += b.height;
    }
  }
}

const widthOf = (group: Group): number => Math.max(0, ...group.map((b) => b.width));
const heightOf = (group: Group): number => group.reduce((sum, b, i) => sum + b.height + (i === 0 ? 0 : b.above), 0);

/** Blocks that stay on one page, if that is no more than part of one: no line of a short section goes over alone. */
export function together(blocks: readonly Block[], paper: Paper): readonly Block[] {
  const height = blocks.reduce((sum, b) => sum + b.height + b.above, 0);
  if (height > SHORT * roomHeight(paper) || blocks.some((b) => b.floats)) return blocks;
  return blocks.map((b, i) => (i < blocks.length - 1 ? { ...b, keptWithNext: true as const } : b));
}

/** Each block with those that lead to it. */
function groups(blocks: readonly Block[], joined: (b: Block) => boolean): readonly Group[] {
  const out: Block[][] = [];
  let open = false;
  for (const b of blocks) {
    if (open) out.at(-1)!.push(b);
    else out.push([b]);
    open = joined(b);
  }
  return out;
}
