import { vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import { textWidth } from '../svg/text-width.ts';

const SIZE = 2.8;
const ROW = 4.2;
const AIR = 2.5;

/** Upright lines through a plot, each with its label above it like a flag. */
export interface Flags {
  readonly marks: readonly Mark[];
  /** height the labels take above the plot [mm] */
  readonly height: number;
}

/** How far labels run beyond the right edge of a plot of this width [mm]. */
export const flagOverrun = (flags: readonly { readonly at: number; readonly label: string }[], width: number): number =>
  Math.max(0, ...flags.map((f) => f.at * width + 1 + textWidth(f.label, SIZE) - width));

/**
 * A label stands above all those to its right that its text would run into, so that no line crosses a text.
 *
 * @param flags - place as a fraction of the width
 */
export function drawFlags(
  flags: readonly { readonly at: number; readonly label: string }[],
  left: number,
  width: number,
  top: number,
  bottom: number,
): Flags {
  const placed: { readonly x: number; readonly row: number; readonly label: string }[] = [];
  for (const f of [...flags].sort((a, b) => b.at - a.at)) {
    const x = left + f.at * width;
    const reach = x + 1 + textWidth(f.label, SIZE) + AIR;
    const row = Math.max(-1, ...placed.filter((p) => p.x < reach).map((p) => p.row)) + 1;
    placed.push({ x, row, label: f.label });
  }
  const marks = placed.flatMap(({ x, row, label }): readonly Mark[] => {
    const y = top - 1.4 - row * ROW;
    return [
      { kind: 'line', from: vector(x, bottom), to: vector(x, y - 0.8 * SIZE), stroke: 'accent', width: 0.25 },
      { kind: 'text', at: vector(x + 1, y), text: label, size: SIZE, anchor: 'start', angle: 0, fill: 'accent', labels: { flag: 'text' } },
    ];
  });
  return { marks, height: placed.length === 0 ? 0 : 1.4 + ROW * (Math.max(...placed.map((p) => p.row)) + 1) };
}
