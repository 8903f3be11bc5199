import { vector } from '../plane/vector.ts';
import { type Group, svgDocument } from '../svg/document.ts';
import type { Mark } from '../svg/mark.ts';
import type { Theme } from '../svg/palette.ts';
import { type Paragraph, textBlock } from '../svg/text-block.ts';

/** What every plot may be asked for. */
export interface PlotOptions {
  readonly title: string;
  readonly note?: string;
  /** of the sheet [mm] */
  readonly width?: number;
  readonly theme?: Theme;
  readonly id?: string;
}

/** Width of a sheet unless asked for otherwise, and what is left free at its edges [mm]. */
export const WIDTH = 180;
export const MARGIN = 5;

/** Room between the title and what is plotted [mm]. */
const BELOW_TITLE = 4;

/** Marks about a zero of their own, and the room they take up and down from it [mm]. */
export interface Piece {
  readonly marks: readonly Mark[];
  readonly top: number;
  readonly bottom: number;
}

interface PlotParts {
  /** of the sheet [mm] */
  readonly width: number;
  /** read out in place of the picture */
  readonly description: string;
  /** lines under the title */
  readonly subtitle?: readonly Paragraph[];
  readonly plot: Piece & {
    /** of its zero from the margin [mm] */
    readonly left: number;
    readonly labels?: Group['labels'];
  };
  /** under the plot, `above` below it, and `below` before the words at the foot [mm] */
  readonly key?: { readonly marks: readonly Mark[]; readonly height: number; readonly above: number; readonly below: number };
  /** lines at the foot, over the note, and what is free above them where there is no key [mm] */
  readonly foot?: readonly Paragraph[];
  readonly aboveFoot?: number;
}

/** A plot as a sheet: title, plot, key and words one under the other. */
export function plotSheet(options: PlotOptions, parts: PlotParts): string {
  const { width, plot, key, foot = [] } = parts;
  const inner = width - 2 * MARGIN;
  const head = textBlock([{ text: options.title, size: 4.4, fill: 'ink', kind: 'title' }, ...(parts.subtitle ?? [])], inner);
  const note: readonly Paragraph[] = options.note === undefined ? [] : [{ text: options.note, size: 2.8, fill: 'quiet', kind: 'note' }];
  const below = textBlock([...foot, ...note], inner);
  const plotTop = MARGIN + head.height + BELOW_TITLE;
  const plotEnd = plotTop + plot.bottom - plot.top;
  const keyTop = plotEnd + (key?.above ?? 0);
  const belowTop = key ? keyTop + key.height + key.below : plotEnd + (parts.aboveFoot ?? 0);
  return svgDocument({
    width,
    height: belowTop + below.height + MARGIN,
    title: options.title,
    description: parts.description,
    groups: [
      { marks: head.marks, shift: vector(MARGIN, MARGIN) },
      { marks: plot.marks, shift: vector(MARGIN + plot.left, plotTop - plot.top), labels: { part: 'plot', ...plot.labels } },
      ...(key ? [{ marks: key.marks, shift: vector(MARGIN, keyTop) }] : []),
      { marks: below.marks, shift: vector(MARGIN, belowTop) },
    ],
    theme: options.theme ?? 'auto',
    id: options.id,
  });
}
