import { vector } from '../plane/vector.ts';
import type { Mark } from './mark.ts';
import type { Role } from './palette.ts';
import { wrapText } from './text-width.ts';

export interface Paragraph {
  readonly text: string;
  readonly size: number;
  readonly fill: Role;
  readonly kind: string;
}

const LEADING = 1.45;

/** Paragraphs one under the other from (0, 0) down, wrapped to a width; `height` is what they take. */
export function textBlock(paragraphs: readonly Paragraph[], width: number): { readonly marks: readonly Mark[]; readonly height: number } {
  let y = 0;
  const marks = paragraphs.flatMap(({ text, size, fill, kind }) =>
    wrapText(text, size, width).map((line): Mark => {
      y += size * LEADING;
      return { kind: 'text', at: vector(0, y - 0.45 * size), text: line, size, anchor: 'start', angle: 0, fill, labels: { text: kind } };
    }),
  );
  return { marks, height: y };
}
