import { type Vector, vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import { textWidth, wrapText } from '../svg/text-width.ts';

/** What stands beside a symbol. */
export interface PartLabel {
  readonly lines: readonly string[];
  readonly width: number;
  readonly height: number;
}

const SIZE = 2.8;
const LEADING = 3.9;
/** Longer lines are broken [mm]. */
const LONGEST = 36;

/** Each text begins a line of its own. */
export function partLabel(...texts: readonly string[]): PartLabel {
  const lines = texts.flatMap((t) => wrapText(t, SIZE, LONGEST));
  return { lines, width: Math.max(0, ...lines.map((l) => textWidth(l, SIZE))), height: lines.length * LEADING };
}

/** Text lines; `at` is the middle of the side named by `anchor`, or of the lower edge for `above`, of the upper edge for `below`. */
export function labelMarks(label: PartLabel, at: Vector, place: 'right' | 'left' | 'above' | 'below', part: string): readonly Mark[] {
  const top = place === 'above' ? at.y - label.height : place === 'below' ? at.y : at.y - label.height / 2;
  const anchor = place === 'right' ? 'start' : place === 'left' ? 'end' : 'middle';
  return label.lines.map(
    (text, i): Mark => ({
      kind: 'text',
      at: vector(at.x, top + i * LEADING + 0.5 * LEADING + 0.36 * SIZE),
      text,
      size: SIZE,
      anchor,
      angle: 0,
      fill: 'ink',
      labels: { names: part },
    }),
  );
}
