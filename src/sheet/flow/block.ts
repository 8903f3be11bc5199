import type { Pen } from './pen.ts';

/** A piece of a sheet that is never cut, in millimetres. */
export interface Block {
  readonly width: number;
  readonly height: number;
  /** between it and what stands above it on the page */
  readonly above: number;
  /** stays on the page of what follows */
  readonly withNext?: true;
  /** begins a page */
  readonly newPage?: true;
  /** painted once more above it where it is the first of its page: the head of a table */
  readonly head?: Block;
  /** @param x, y - its upper left corner on the page */
  paint(pen: Pen, x: number, y: number): void;
}
