import type { SetDescription } from '#engine';
import { extentOf } from '../plane/extent.ts';
import { vector } from '../plane/vector.ts';
import { svgDocument } from '../svg/document.ts';
import { outline } from '../svg/mark.ts';
import type { Theme } from '../svg/palette.ts';
import { textBlock } from '../svg/text-block.ts';
import { circuitWords } from './circuit-words.ts';
import { CircuitLayout } from './layout.ts';
import type { KnownValues } from './part-labels.ts';

export interface SchematicOptions extends KnownValues {
  readonly title?: string;
  readonly note?: string;
  readonly theme?: Theme;
  readonly id?: string;
}

const MARGIN = 5;
const NARROWEST = 80;

/**
 * The circuit of a set, as SVG text: symbols after IEC 60617 in plain form with their values, joined as the engine's network joins them. What
 * only the model knows (losses, strays, the inductance of wires) is left out. As wide as it must be.
 */
export function drawSchematic(set: SetDescription, options: SchematicOptions = {}): string {
  const marks = new CircuitLayout(set, options).sheet.marks();
  const extent = extentOf(marks.flatMap(outline))!;
  const title = options.title ?? 'Circuit';
  const width = Math.max(NARROWEST, extent.right - extent.left + 2 * MARGIN);
  const head = textBlock([{ text: title, size: 4.4, fill: 'ink', kind: 'title' }], width - 2 * MARGIN);
  const framed = marks.some((m) => m.labels?.sign === 'frame');
  const foot = textBlock(
    [
      ...(framed ? [{ text: 'All places with the frame sign are joined.', size: 2.8, fill: 'quiet', kind: 'key' } as const] : []),
      ...(options.note === undefined ? [] : [{ text: options.note, size: 2.8, fill: 'quiet', kind: 'note' } as const]),
    ],
    width - 2 * MARGIN,
  );
  const top = MARGIN + head.height + 3;
  const footTop = top + extent.bottom - extent.top + 4;
  return svgDocument({
    width,
    height: footTop + foot.height + MARGIN,
    title,
    description: circuitWords(set, options),
    groups: [
      { marks: head.marks, shift: vector(MARGIN, MARGIN) },
      { marks, shift: vector(MARGIN - extent.left, top - extent.top), labels: { part: 'circuit' } },
      { marks: foot.marks, shift: vector(MARGIN, footTop) },
    ],
    theme: options.theme ?? 'auto',
    id: options.id,
  });
}
