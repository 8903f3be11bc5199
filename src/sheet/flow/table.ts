import type { Face, Type } from '../pdf/type.ts';
import type { Block } from './block.ts';
import { FAINT, INK, linesOf, QUIET } from './words.ts';

export interface Column {
  readonly head: string;
  readonly align: 'left' | 'right';
}

const SIZE = 3.2;
const LEADING = 1.3;
const ASCENT = 0.95;
const PAD = 0.9;
const GAP = 4;

/**
 * A table; a row is never cut, and the head stands again on every page. Columns take what they need; where that is too much, those of words
 * are broken into lines.
 */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[], width: number, type: Type): readonly Block[] {
  if (rows.length === 0) return [];
  const widths = columnWidths(columns, rows, width, type);
  const lefts = widths.map((_, i) => widths.slice(0, i).reduce((sum, w) => sum + w + GAP, 0));
  const used = lefts.at(-1)! + widths.at(-1)!;
  const row = (cells: readonly string[], face: Face, colour: string, above: number): Block => {
    const lines = cells.map((c, i) => linesOf(c, widths[i]! + 0.01, SIZE, face, type));
    const height = Math.max(...lines.map((l) => l.length)) * SIZE * LEADING + 2 * PAD;
    return {
      width,
      height,
      above,
      paint(pen, x, y) {
        lines.forEach((list, i) => {
          const right = columns[i]!.align === 'right';
          const at = x + lefts[i]! + (right ? widths[i]! : 0);
          list.forEach((line, k) => {
            const base = y + PAD + (k * LEADING + ASCENT) * SIZE;
            pen.text(line, { x: at, y: base }, { size: SIZE, colour, face, anchor: right ? 'end' : 'start' });
          });
        });
        pen.polyline(
          [
            { x, y: y + height },
            { x: x + used, y: y + height },
          ],
          { stroke: FAINT, width: 0.2 },
        );
      },
    };
  };
  const head = row(
    columns.map((c) => c.head),
    'plain',
    QUIET,
    2,
  );
  // neither the first row alone at the foot of a page nor the last alone at the head of one
  const leads = (i: number): boolean => rows.length > 1 && (i === 0 || i === rows.length - 2);
  return [
    { ...head, withNext: true },
    ...rows.map((cells, i) => ({ ...row(cells, 'plain', INK, 0), head, ...(leads(i) ? { withNext: true as const } : {}) })),
  ];
}

function columnWidths(columns: readonly Column[], rows: readonly (readonly string[])[], width: number, type: Type): readonly number[] {
  const room = width - GAP * (columns.length - 1);
  const natural = columns.map((c, i) => Math.max(...[c.head, ...rows.map((r) => r[i]!)].map((t) => type.width(t, 'plain') * SIZE)) + 0.1);
  const least = columns.map((c, i) =>
    Math.min(natural[i]!, c.align === 'right' ? 32 : Math.max(14, Math.min(natural[i]!, room / columns.length / 1.6))),
  );
  const spare = room - least.reduce((a, b) => a + b, 0);
  const wanted = natural.reduce((sum, n, i) => sum + n - least[i]!, 0);
  const share = wanted <= spare ? 1 : spare / wanted;
  return least.map((l, i) => l + share * (natural[i]! - l));
}
