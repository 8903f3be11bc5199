import type { Face, Type } from '../pdf/type.ts';
import type { Block } from './block.ts';

export const INK = '#1c2630';
export const QUIET = '#52616f';
export const FAINT = '#c9d1d8';
export const WARNING = '#b23c17';
/** Distance of the base line from the top of a line, and of one line from the next, in ems. */
const ASCENT = 0.95;
const LEADING = 1.32;
const SIZE = 3.5;

export interface WordsOptions {
  readonly size?: number;
  readonly face?: Face;
  readonly colour?: string;
  readonly above?: number;
  /** a sign before the first line, all lines moved to the right by `indent` */
  readonly sign?: string;
  readonly indent?: number;
  readonly withNext?: true;
}

/** Lines of a text no wider than `width` [mm], broken at spaces; a word too long alone is broken anywhere. */
export function linesOf(text: string, width: number, size: number, face: Face, type: Type): readonly string[] {
  const wide = (t: string): number => type.width(t, face) * size;
  const lines: string[] = [];
  let line = '';
  for (const word of words(text)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (wide(longer) <= width) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const character of word) {
      if (line !== '' && wide(line + character) > width) {
        lines.push(line);
        line = '';
      }
      line += character;
    }
  }
  return line === '' && lines.length > 0 ? lines : [...lines, line];
}

/** Words, a number together with the unit or word behind it. */
function words(text: string): readonly string[] {
  const out: string[] = [];
  for (const word of text.split(/\s+/).filter((w) => w !== '')) {
    const before = out.at(-1);
    if (before !== undefined && /(?:^|\s)[(]?[-+±]?\d[\d.,/]*$/.test(before) && before.length < 14 && /^[A-Za-zµΩ°%²]/.test(word))
      out[out.length - 1] = `${before} ${word}`;
    else out.push(word);
  }
  return out;
}

/** A paragraph; a long one may go over a page between its lines. */
export function paragraph(text: string, width: number, type: Type, options: WordsOptions = {}): readonly Block[] {
  const { size = SIZE, face = 'plain', colour = INK, above = 1.6, sign, indent = 0 } = options;
  const lines = linesOf(text, width - indent, size, face, type);
  return lines.map((line, i) => ({
    width,
    height: size * LEADING,
    above: i === 0 ? above : 0,
    // neither the first line alone at the foot of a page nor the last alone at the head of one
    ...(options.withNext || (lines.length > 1 && (i === 0 || i === lines.length - 2)) ? { withNext: true as const } : {}),
    paint(pen, x, y) {
      if (i === 0 && sign !== undefined) pen.text(sign, { x, y: y + ASCENT * size }, { size, colour, face });
      pen.text(line, { x: x + indent, y: y + ASCENT * size }, { size, colour, face });
    },
  }));
}

/** A heading, with a line over it. */
export function heading(text: string, width: number, type: Type, options: Pick<Block, 'newPage' | 'afterDrawings'> = {}): readonly Block[] {
  const lines = linesOf(text, width, 5, 'bold', type);
  return lines.map((line, i) => ({
    width,
    height: (i === 0 ? 2.2 : 0) + 5 * LEADING,
    above: i === 0 ? 6 : 0,
    withNext: true as const,
    ...(i === 0 ? options : {}),
    paint(pen, x, y) {
      const first = i === 0;
      if (first)
        pen.polyline(
          [
            { x, y },
            { x: x + width, y },
          ],
          { stroke: INK, width: 0.4 },
        );
      pen.text(line, { x, y: y + (first ? 2.2 : 0) + ASCENT * 5 }, { size: 5, colour: INK, face: 'bold' });
    },
  }));
}

export const subheading = (text: string, width: number, type: Type): readonly Block[] =>
  paragraph(text, width, type, { face: 'bold', size: 3.8, above: 3.6, withNext: true });

/** Numbered or dotted lines. */
export function list(
  items: readonly string[],
  width: number,
  type: Type,
  options: { readonly numbered?: true; readonly colour?: string } = {},
): readonly Block[] {
  return items.flatMap((text, i) =>
    paragraph(text, width, type, {
      sign: options.numbered ? `${i + 1}.` : '–',
      indent: options.numbered ? 6.5 : 4,
      ...(options.colour === undefined ? {} : { colour: options.colour }),
    }),
  );
}
