import type { TankDescription } from '#engine';
import { lengthText } from '../aerial/length-text.ts';
import { drawingSize } from '../plane/checked-size.ts';
import { vector } from '../plane/vector.ts';
import { svgDocument } from '../svg/document.ts';
import type { Mark } from '../svg/mark.ts';
import type { Theme } from '../svg/palette.ts';
import { type Paragraph, textBlock } from '../svg/text-block.ts';
import { turnsWords } from './turns-words.ts';
import { tankWindings, type Wound, windingLength } from './wound.ts';

export interface JigOptions {
  /** the widest and the highest a drawing may be [mm] */
  readonly width?: number;
  readonly height?: number;
  readonly theme?: Theme;
  readonly id?: string;
}

/** A strip to wrap round the former, in one drawing or in several to be joined; or why there is none. */
export type Jig = { readonly pieces: readonly string[] } | { readonly none: string };

const WIDTH = 180;
const HEIGHT = 230;
const MARGIN = 5;
const NARROWEST = 80;
/** Beyond the wire at either end, and to be glued under the seam [mm]. */
const BORDER = 3;
const TAB = 6;
/** Turns that leave less between them than this part of the wire's thickness are wound close, as the winding steps have it. */
const CLOSE = 0.15;
/** Wire thinner than this is a line [mm]. */
const BAND = 0.5;
/** A tap so near to the left seam has its letter beside the strip [mm]. */
const BESIDE = 1.5;
const LETTERS = 'ABCDEFGH';

/**
 * A strip true to size that carries the way of the wire, as SVG text: wrapped round the former with its seams together, the lines make one
 * screw, right-handed as in the drawing of the coil. Taps are marked on it.
 *
 * @returns null where the coil is given by its electrical values
 */
export function drawJig(tank: TankDescription, options: JigOptions = {}): Jig | null {
  const coil = tankWindings(tank)?.[0];
  if (!coil) return null;
  const width = drawingSize('options.width', options.width ?? WIDTH, NARROWEST);
  const height = drawingSize('options.height', options.height ?? HEIGHT, NARROWEST);
  if (coil.turns <= 1) return { none: 'One turn has no distance to keep: no strip is needed.' };
  if (coil.pitch - coil.wireDiameter < CLOSE * coil.wireDiameter) return { none: 'The turns lie close: no strip is needed.' };
  const around = Math.PI * coil.innerDiameter * 1e3;
  const high = 1e3 * windingLength(coil) + 2 * BORDER;
  const room = width - 2 * MARGIN - TAB;
  const count = Math.ceil(around / room - 1e-9);
  const words = [wordsOf(coil, around, count), coil.taps.map((t, i) => tapWords(coil, t.turns, t.roles, i)).join(' ')].filter(
    (t) => t !== '',
  );
  const pieces = Array.from({ length: count }, (_, k) =>
    piece(coil, { from: (k * around) / count, to: ((k + 1) * around) / count, high, around, k, count }, words, options),
  );
  if (pieces.some((p) => p.height > height))
    return { none: `The strip would be ${lengthText(high / 1e3)} high, and does not fit: mark the former with a rule.` };
  return { pieces: pieces.map((p) => p.svg) };
}

interface Part {
  readonly from: number;
  readonly to: number;
  readonly high: number;
  readonly around: number;
  readonly k: number;
  readonly count: number;
}

function piece(coil: Wound, part: Part, words: readonly string[], options: JigOptions): { readonly svg: string; readonly height: number } {
  const { from, to, high, k, count } = part;
  const wide = to - from;
  const last = k === count - 1;
  const sheetWidth = options.width ?? WIDTH;
  const title = `Strip for winding${count > 1 ? `, piece ${k + 1} of ${count}` : ''}`;
  const quiet = (text: string): Paragraph => ({ text, size: 2.5, fill: 'quiet', kind: 'key' });
  const head = textBlock([{ text: title, size: 4.4, fill: 'ink', kind: 'title' }], sheetWidth - 2 * MARGIN);
  const foot = textBlock(k === 0 ? words.map(quiet) : [], sheetWidth - 2 * MARGIN);
  const top = MARGIN + head.height + 3;
  const letters = coil.taps.length > 0 ? 4 : 0;
  const footTop = top + high + letters + 4;
  const sheetHeight = footTop + foot.height + MARGIN;
  const svg = svgDocument({
    width: sheetWidth,
    height: sheetHeight,
    title,
    description: words.join(' '),
    groups: [
      { marks: head.marks, shift: vector(MARGIN, MARGIN) },
      { marks: [...wireMarks(coil, part), ...edges(wide, high, last)], shift: vector(MARGIN, top), labels: { part: 'strip', piece: k } },
      { marks: foot.marks, shift: vector(MARGIN, footTop) },
    ],
    theme: options.theme ?? 'auto',
    id: options.id,
  });
  return { svg, height: sheetHeight };
}

/** The cold end is at the lower edge; the wire rises to the right. */
function wireMarks(coil: Wound, { from, to, high, around }: Part): readonly Mark[] {
  const pitch = coil.pitch * 1e3;
  const wire = coil.wireDiameter * 1e3;
  const place = (turns: number, along: number) => vector(along - from, high - BORDER - turns * pitch);
  const marks: Mark[] = [];
  const lines: Mark[] = [];
  for (let turn = 0; turn < coil.turns - 1e-9; turn++) {
    const [first, end] = [turn + from / around, Math.min(coil.turns, turn + to / around)];
    if (end <= first + 1e-9) continue;
    const ends = [place(first, from), place(end, (end - turn) * around)] as const;
    if (wire >= BAND) marks.push({ kind: 'line', from: ends[0], to: ends[1], stroke: 'faint', width: wire });
    lines.push({ kind: 'line', from: ends[0], to: ends[1], stroke: 'ink', width: 0.2, labels: { turn } });
  }
  coil.taps.forEach((t, i) => {
    const share = t.turns - Math.floor(t.turns + 1e-9);
    const along = share * around;
    if (along < from - 1e-9 || along >= to - 1e-9) return;
    const at = place(t.turns, along);
    lines.push({ kind: 'circle', centre: at, radius: 1, stroke: 'accent', width: 0.3, labels: { tap: i } });
    // at the seam the letter stands beside the strip, elsewhere below it
    const beside = at.x < BESIDE;
    if (!beside)
      lines.push({
        kind: 'line',
        from: vector(at.x, at.y + 1),
        to: vector(at.x, high + 0.8),
        stroke: 'accent',
        width: 0.2,
        dash: [0.8, 0.6],
      });
    lines.push({
      kind: 'text',
      at: beside ? vector(at.x - 2.6, at.y + 1) : vector(at.x + letterShift(coil, i, around), high + 3.6),
      text: LETTERS[i] ?? '?',
      size: 2.8,
      anchor: 'middle',
      angle: 0,
      fill: 'accent',
      labels: { tap: i },
    });
  });
  const [begins, ends] = [place(0, 0), place(coil.turns, (coil.turns % 1) * around)];
  const dots = [begins, ends].filter((at) => at.x >= -1e-9 && at.x < (to - from) * (1 - 1e-9));
  return [
    ...marks,
    ...lines,
    ...dots.map(
      (centre): Mark => ({ kind: 'circle', centre, radius: 0.7, fill: 'ink', stroke: 'ink', width: 0.1, labels: { wire: 'end' } }),
    ),
  ];
}

/** Letters of taps that stand over one another go apart. */
function letterShift(coil: Wound, i: number, around: number): number {
  const at = (k: number): number => (coil.taps[k]!.turns % 1) * around;
  const before = Array.from({ length: i }, (_, k) => k).filter((k) => Math.abs(at(k) - at(i)) < 2.6).length;
  return before * 2.8;
}

/** To cut along, and the seams: the left one comes to lie on the right one. */
function edges(wide: number, high: number, last: boolean): readonly Mark[] {
  const seam = (x: number): Mark => ({
    kind: 'line',
    from: vector(x, 0),
    to: vector(x, high),
    stroke: 'ink',
    width: 0.25,
    labels: { seam: x === 0 ? 'left' : 'right' },
  });
  const tab = [vector(wide, 0), vector(wide + TAB, 0), vector(wide + TAB, high), vector(wide, high)];
  const word = (text: string, x: number): Mark => ({
    kind: 'text',
    at: vector(x, high / 2),
    text,
    size: 2.2,
    anchor: 'middle',
    angle: -Math.PI / 2,
    fill: 'quiet',
  });
  return [
    { kind: 'line', from: vector(0, 0), to: vector(wide, 0), stroke: 'ink', width: 0.25 },
    { kind: 'line', from: vector(0, high), to: vector(wide, high), stroke: 'ink', width: 0.25, labels: { edge: 'cold' } },
    seam(0),
    seam(wide),
    { kind: 'polyline', points: tab, stroke: 'quiet', width: 0.2, dash: [1, 0.8] },
    ...(high >= 12 ? [word(last ? 'glue under' : 'join', wide + TAB / 2 + 0.8)] : []),
  ];
}

function wordsOf(coil: Wound, around: number, count: number): string {
  const join = count > 1 ? `Join the ${count} pieces at their seams, in order. ` : '';
  return (
    `${join}Cut out, wrap round ${lengthText(coil.innerDiameter)} with the print outside, left seam onto right seam: ${lengthText(around / 1e3)} from seam to seam. ` +
    `The lower edge is the cold end. Lay the wire along the lines, from the lower dot to the upper one. ` +
    'Paper of 0.1 mm makes the former 0.2 mm thicker; the seams then stay 0.3 mm apart.'
  );
}

function tapWords(coil: Wound, turns: number, roles: readonly string[], i: number): string {
  const share = turns - Math.floor(turns + 1e-9);
  const along = share * Math.PI * coil.innerDiameter;
  return `${LETTERS[i]}: tap for the ${roles.join(' and the ')}, ${turnsWords(turns)} from the cold end${share < 1e-6 ? ', at the seam' : `, ${lengthText(along)} from the left seam`}.`;
}
