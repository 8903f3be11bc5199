import { GivenError } from '#engine';
import { vector } from '../plane/vector.ts';
import { svgDocument } from '../svg/document.ts';
import type { Mark } from '../svg/mark.ts';
import type { Theme } from '../svg/palette.ts';

export interface RulerOptions {
  /** [mm], whole centimetres */
  readonly length?: number;
  /** runs upward in place of to the right */
  readonly upright?: boolean;
  readonly theme?: Theme;
  readonly id?: string;
}

const LENGTH = 100;
/** Lengths of the marks for millimetres, fives and tens [mm]; thickness of a mark, by which the ruler is longer than it says. */
const MARKS = [1.2, 1.9, 2.8] as const;
const THICKNESS = 0.15;
const SIZE = 2.2;
const MARGIN = 2;
const DEPTH = 7;

/** A ruler to check a print with, as SVG text: from the middle of its first mark to that of its last it is as long as it says. */
export function drawRuler(options: RulerOptions = {}): string {
  const length = options.length ?? LENGTH;
  if (!(Number.isInteger(length / 10) && length >= 10 && length <= 1000))
    throw new GivenError('options.length', `${length} mm`, 'a ruler is whole centimetres long', 'Give 10 to 1000 mm, in tens.');
  const upright = options.upright ?? false;
  const at = (along: number, across: number) =>
    upright ? vector(MARGIN + across, MARGIN + length - along) : vector(MARGIN + along, MARGIN + across);
  const marks: Mark[] = [{ kind: 'line', from: at(0, 0), to: at(length, 0), stroke: 'ink', width: THICKNESS, labels: { part: 'edge' } }];
  for (let mm = 0; mm <= length; mm++) {
    const depth = mm % 10 === 0 ? MARKS[2] : mm % 5 === 0 ? MARKS[1] : MARKS[0];
    marks.push({ kind: 'line', from: at(mm, 0), to: at(mm, depth), stroke: 'ink', width: THICKNESS, labels: { millimetre: mm } });
    if (mm % 10 === 0)
      marks.push({
        kind: 'text',
        at: upright ? vector(MARGIN + MARKS[2] + 0.6, MARGIN + length - mm + 0.36 * SIZE) : at(mm, MARKS[2] + 2.2),
        text: mm === length && !upright ? `${mm} mm` : `${mm}`,
        size: SIZE,
        anchor: upright ? 'start' : 'middle',
        angle: 0,
        fill: 'ink',
        labels: { number: mm },
      });
  }
  const [along, across] = [length + 2 * MARGIN + 4, MARGIN + DEPTH + (upright ? 4 : 0)];
  return svgDocument({
    width: upright ? across : along,
    height: upright ? along : across,
    title: `Ruler of ${length} mm`,
    description: `A ruler of ${length} mm in millimetres, to check that a print is true to scale.`,
    groups: [{ marks, shift: vector(0, 0), labels: { part: 'ruler' } }],
    theme: options.theme ?? 'auto',
    id: options.id,
  });
}
