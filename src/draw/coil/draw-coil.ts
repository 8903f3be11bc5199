import type { AerialDescription, TankDescription } from '#engine';
import { DRAWING_SCALES } from '../aerial/drawing-scale.ts';
import { lengthText } from '../aerial/length-text.ts';
import { scaleBar } from '../aerial/scale-bar.ts';
import { drawingSize } from '../plane/checked-size.ts';
import { type Extent, extentOf } from '../plane/extent.ts';
import { vector } from '../plane/vector.ts';
import { svgDocument } from '../svg/document.ts';
import { type Mark, outline } from '../svg/mark.ts';
import type { Theme } from '../svg/palette.ts';
import { textBlock } from '../svg/text-block.ts';
import { textWidth } from '../svg/text-width.ts';
import { endView } from './end-view.ts';
import { sideView } from './side-view.ts';
import { sizeWords } from './size-words.ts';
import { stepsOf, windingSteps } from './winding-steps.ts';
import { frameWinding, tankWindings, type Wound, windingLength } from './wound.ts';

export interface CoilDrawingOptions {
  readonly title?: string;
  readonly note?: string;
  /** of the sheet [mm]; wider where what is written needs it */
  readonly width?: number;
  /** room for the views, top to bottom [mm] */
  readonly viewHeight?: number;
  /** how to wind it, as lines under the drawing; shown where left out */
  readonly steps?: boolean;
  readonly theme?: Theme;
  readonly id?: string;
}

const WIDTH = 180;
const VIEW_HEIGHT = 110;
const NARROWEST = 80;
const MARGIN = 5;
const BETWEEN = 10;
const HEADING = 6;
const HEADING_SIZE = 2.8;
const SIDE_HEADING = 'from the side, cold end on the left';
const END_HEADING = 'from the cold end';
/** A coil drawn smaller across than this is not made smaller still to find room for what is written [mm]. */
const SMALLEST = 16;
const MOST_WIDTHS = 2;
/** Nothing is drawn larger than this many times its size: it is enough to see the wire. */
const LARGEST_SCALE = 20;

/**
 * The tank's coil with its links to scale, as SVG text: from the side and from its cold end, with dimensions and how to wind it.
 *
 * @returns null where the coil is given by its electrical values
 * @throws GivenError for options that cannot be
 */
export function drawCoil(tank: TankDescription, options: CoilDrawingOptions = {}): string | null {
  const windings = tankWindings(tank);
  return windings && drawWindings(windings, windingSteps(tank)!, { title: 'Coil', ...options });
}

/** The frame of a loop aerial to scale, as SVG text; null for an aerial that is not wound in turns. */
export function drawFrame(aerial: AerialDescription, options: CoilDrawingOptions = {}): string | null {
  const frame = frameWinding(aerial);
  return frame && drawWindings([frame], stepsOf(frame), { title: 'Frame aerial', ...options });
}

interface Views {
  readonly scale: number;
  readonly side: readonly Mark[];
  readonly end: readonly Mark[];
  readonly thinned: boolean;
  readonly sideExtent: Extent;
  readonly endExtent: Extent;
}

function drawWindings(
  windings: readonly Wound[],
  steps: readonly string[],
  options: CoilDrawingOptions & { readonly title: string },
): string {
  const width = drawingSize('options.width', options.width ?? WIDTH, NARROWEST);
  const views = largest(windings, width - 2 * MARGIN, drawingSize('options.viewHeight', options.viewHeight ?? VIEW_HEIGHT, NARROWEST));
  const { scale, sideExtent: s, endExtent: e } = views;
  const viewsWidth = s.right - s.left + BETWEEN + (e.right - e.left);
  const sheetWidth = Math.max(width, viewsWidth + 2 * MARGIN);
  const inner = sheetWidth - 2 * MARGIN;
  const head = textBlock(
    [
      { text: options.title, size: 5, fill: 'ink', kind: 'title' },
      { text: `Drawn ${sizeWords(scale)} when printed ${lengthText(sheetWidth / 1e3)} wide.`, size: 2.8, fill: 'quiet', kind: 'scale' },
    ],
    inner,
  );
  const foot = textBlock(
    [
      ...(views.thinned ? [{ text: 'Fewer turns are drawn than wound.', size: 2.8, fill: 'quiet', kind: 'left-out' } as const] : []),
      ...(options.steps === false
        ? []
        : steps.map((text, i) => ({ text: `${i + 1}. ${text}`, size: 3, fill: 'ink', kind: 'step' }) as const)),
      ...(options.note === undefined ? [] : [{ text: options.note, size: 2.8, fill: 'quiet', kind: 'note' } as const]),
    ],
    inner,
  );
  const top = MARGIN + head.height + HEADING + 4;
  // both views at the height of the axis
  const above = Math.max(-s.top, -e.top);
  const below = Math.max(s.bottom, e.bottom);
  const axis = top + above;
  const left = MARGIN + (inner - viewsWidth) / 2;
  const sideShift = vector(left - s.left, axis);
  const endShift = vector(left + s.right - s.left + BETWEEN - e.left, axis);
  const barTop = axis + below + 6;
  const footTop = barTop + 10;
  const heading = (x: number, text: string): Mark => ({
    kind: 'text',
    at: vector(x, top - 3),
    text,
    size: HEADING_SIZE,
    anchor: 'middle',
    angle: 0,
    fill: 'quiet',
    labels: { view: 'heading' },
  });
  return svgDocument({
    width: sheetWidth,
    height: footTop + foot.height + MARGIN,
    title: options.title,
    description: `${windings.length > 1 ? 'Coil and links' : options.title}, drawn ${sizeWords(scale)}, from the side and from the cold end. ${steps.join(' ')}`,
    groups: [
      { marks: head.marks, shift: vector(MARGIN, MARGIN) },
      {
        marks: [heading(left + (s.right - s.left) / 2, SIDE_HEADING), heading(endShift.x + (e.left + e.right) / 2, END_HEADING)],
        shift: vector(0, 0),
      },
      { marks: views.side, shift: sideShift, labels: { view: 'side', scale } },
      { marks: views.end, shift: endShift, labels: { view: 'end', scale } },
      { marks: scaleBar(scale * 1e3), shift: vector(MARGIN + 2, barTop), labels: { part: 'scale-bar' } },
      { marks: foot.marks, shift: vector(MARGIN, footTop) },
    ],
    theme: options.theme ?? 'auto',
    id: options.id,
  });
}

/** Both views at the largest scale that leaves room for them. */
function largest(windings: readonly Wound[], width: number, height: number): Views {
  const across = 1e3 * Math.max(...windings.map((w) => w.innerDiameter + 2 * w.wireDiameter));
  const possible = DRAWING_SCALES.filter((s) => s <= LARGEST_SCALE && s * across <= height && s * across > SMALLEST);
  for (const scale of possible) {
    const views = viewsAt(windings, scale);
    const { sideExtent: s, endExtent: e } = views;
    if (s.right - s.left + BETWEEN + e.right - e.left <= width && Math.max(s.bottom, e.bottom) - Math.min(s.top, e.top) <= height)
      return views;
  }
  // smaller still the wire would be lost: the sheet is made wider instead, up to a point
  const smaller = DRAWING_SCALES.filter((s) => s <= (possible.at(-1) ?? 1));
  const length = 1e3 * Math.max(...windings.map(windingLength));
  const scale = smaller.find((s) => s * length <= MOST_WIDTHS * width && s * across <= height) ?? DRAWING_SCALES.at(-1)!;
  return viewsAt(windings, scale);
}

function viewsAt(windings: readonly Wound[], scale: number): Views {
  const side = sideView(windings, scale * 1e3);
  const end = endView(windings[0]!, scale * 1e3);
  return {
    scale,
    side: side.marks,
    end,
    thinned: side.thinned,
    sideExtent: withHeading(side.marks, SIDE_HEADING),
    endExtent: withHeading(end, END_HEADING),
  };
}

/** Room of a view, at least as wide as the words over it. */
function withHeading(marks: readonly Mark[], heading: string): Extent {
  const e = extentOf(marks.flatMap(outline))!;
  const [middle, half] = [(e.left + e.right) / 2, textWidth(heading, HEADING_SIZE) / 2];
  return { ...e, left: Math.min(e.left, middle - half), right: Math.max(e.right, middle + half) };
}
