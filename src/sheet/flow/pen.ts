import type { Face } from '../pdf/type.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** How a path is drawn: colours as `#rrggbb`, lengths in millimetres. */
export interface Look {
  readonly stroke?: string | undefined;
  readonly width?: number | undefined;
  readonly dash?: readonly number[] | undefined;
  readonly round?: boolean | undefined;
  readonly fill?: string | undefined;
}

export interface TextLook {
  readonly size: number;
  readonly colour: string;
  readonly face?: Face;
  readonly anchor?: 'start' | 'middle' | 'end';
  /** [rad], clockwise */
  readonly angle?: number;
  readonly underlined?: boolean;
}

/** Draws on one page, in millimetres from its upper left corner down. */
export interface Pen {
  /** Draws everything `work` draws moved by (x, y) and then `scale` times as large. */
  at(x: number, y: number, scale: number, work: () => void): void;
  polyline(points: readonly Point[], look: Look, closed?: boolean): void;
  circle(centre: Point, radius: number, look: Look): void;
  /** The upper half of a circle. */
  halfCircle(centre: Point, radius: number, look: Look): void;
  /** @throws RangeError for a character that cannot be printed */
  text(text: string, at: Point, look: TextLook): void;
}

/** Line under a text, below its base line, and its thickness [ems]. */
export const UNDERLINE = 0.12;
export const UNDERLINE_WIDTH = 0.06;
