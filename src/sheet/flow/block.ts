import type { Pen } from './pen.ts';

/** A piece of a sheet that is never cut, in millimetres. */
export interface Block {
  readonly width: number;
  readonly height: number;
  /** between it and what stands above it on the page */
  readonly above: number;
  /** stays on the page of what follows */
  readonly withNext?: true;
  /** the same, unless much of a page would stay empty */
  readonly keptWithNext?: true;
  /** begins a page, unless much of the one before would stay empty */
  readonly newPage?: true;
  /** drawings that wait come before it, unless much of its page would stay empty */
  readonly afterDrawings?: true;
  /** a drawing: where it finds no room, what follows goes before it */
  readonly floats?: true;
  /** painted once more above it where it is the first of its page: the head of a table */
  readonly head?: Block;
  /** @param x, y - its upper left corner on the page */
  paint(pen: Pen, x: number, y: number): void;
}
