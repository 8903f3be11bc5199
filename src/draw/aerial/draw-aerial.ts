import type { SpacePoint, WireStructure } from '#engine';
import { drawingSize } from '../plane/checked-size.ts';
import { type Extent, extentOf } from '../plane/extent.ts';
import { type Vector, vector } from '../plane/vector.ts';
import { type Group, svgDocument } from '../svg/document.ts';
import type { Theme } from '../svg/palette.ts';
import { type Paragraph, textBlock } from '../svg/text-block.ts';
import { type Body, type Content, contentOf, feedOf } from './content.ts';
import { type Cut, cutText, cuttingList } from './cutting-list.ts';
import { type DrawnView, drawView } from './draw-view.ts';
import { DRAWING_SCALES, scaleText } from './drawing-scale.ts';
import { lengthText } from './length-text.ts';
import { scaleBar } from './scale-bar.ts';
import type { ViewName } from './view.ts';
import { MOST_GROUPS, overallSizes, type ViewTask, viewTasks } from './view-tasks.ts';

export interface AerialDrawingOptions {
  readonly title?: string;
  readonly note?: string;
  /** of the sheet [mm]; as high as it must be */
  readonly width?: number;
  /** room for the views, top to bottom [mm] */
  readonly viewHeight?: number;
  /** wires that stand for a metal case or the like: drawn thin, not in the list */
  readonly bodies?: readonly Body[];
  readonly theme?: Theme;
  /** begins the names of elements in the file; needed only where one page shows the same drawing twice */
  readonly id?: string;
}

/** A4 less its margins. */
const WIDTH = 180;
const VIEW_HEIGHT = 200;
const NARROWEST = 80;
const MARGIN = 5;
/** Dimensions may come nearer to the edge than text blocks. */
const VIEW_MARGIN = 3;
const BETWEEN = 8;
/** A structure drawn smaller than this [mm] is not made smaller still to make room for its dimensions. */
const SMALLEST = 25;

/**
 * An aerial to scale, as SVG text: the views that say something, every straight length once, what to cut.
 *
 * The picture is in millimetres of paper at one of the scales rules are made for: printed unscaled it can be measured.
 *
 * @throws GivenError where the wires of the structure cannot be, or an option
 */
export function drawAerial(structure: WireStructure, options: AerialDrawingOptions = {}): string {
  const width = drawingSize('options.width', options.width ?? WIDTH, NARROWEST);
  const viewHeight = drawingSize('options.viewHeight', options.viewHeight ?? VIEW_HEIGHT, NARROWEST);
  const content = contentOf(structure, options.bodies ?? []);
  const tasks = viewTasks(content);
  const { scale, placed, extent } = largestScale(content, tasks, width - 2 * VIEW_MARGIN, viewHeight);
  const cuts = cuttingList(content.conductors);
  const title = options.title ?? 'Aerial';
  const sheetWidth = Math.max(width, extent.right - extent.left + 2 * VIEW_MARGIN);
  const inner = sheetWidth - 2 * MARGIN;

  const head = textBlock(
    [
      { text: title, size: 5, fill: 'ink', kind: 'title' },
      {
        text: `Scale ${scaleText(scale)} when printed ${lengthText(sheetWidth / 1e3)} wide.${overallText(content)}`,
        size: 2.8,
        fill: 'quiet',
        kind: 'scale',
      },
    ],
    inner,
  );
  const below = textBlock(footText(content, cuts, options.note), inner);
  const viewsTop = MARGIN + head.height + BETWEEN;
  const barTop = viewsTop + (extent.bottom - extent.top) + BETWEEN;
  const belowTop = barTop + 9;
  const indent = MARGIN + (inner - (extent.right - extent.left)) / 2;
  const views: Group[] = placed.map(({ name, drawn, origin }) => ({
    marks: drawn.marks,
    shift: vector(indent - extent.left + origin.x, viewsTop - extent.top + origin.y),
    labels: { view: name, scale },
  }));
  return svgDocument({
    width: sheetWidth,
    height: belowTop + below.height + MARGIN,
    title,
    description: description(content, tasks, cuts, scale),
    groups: [
      { marks: head.marks, shift: vector(MARGIN, MARGIN) },
      ...views,
      { marks: scaleBar(scale * 1e3), shift: vector(MARGIN + 2, barTop), labels: { part: 'scale-bar' } },
      { marks: below.marks, shift: vector(MARGIN, belowTop) },
    ],
    theme: options.theme ?? 'auto',
    id: options.id,
  });
}

interface Fitted {
  readonly scale: number;
  readonly placed: readonly { readonly name: ViewName; readonly drawn: DrawnView; readonly origin: Vector }[];
  readonly extent: Extent;
}

/** The largest scale at which the views with their dimensions find room. */
function largestScale(content: Content, tasks: readonly ViewTask[], width: number, height: number): Fitted {
  const points = content.pieces.flatMap((p) => [p.from, p.to]);
  const axes = ['x', 'y', 'z'] as const;
  const [least, most] = [Math.min, Math.max].map((pick) => axes.map((a) => pick(...points.map((p) => p[a]))));
  const reference: SpacePoint = { x: (least![0]! + most![0]!) / 2, y: (least![1]! + most![1]!) / 2, z: (least![2]! + most![2]!) / 2 };
  const size = Math.max(...axes.map((_, i) => most![i]! - least![i]!)) * 1e3;
  const possible = DRAWING_SCALES.filter((s) => s * size < Math.hypot(width, height) && s * size > SMALLEST);
  const scales = possible.length > 0 ? possible : [DRAWING_SCALES.at(-1)!];
  for (const scale of scales) {
    const fitted = arrange(tasks, content, scale, reference);
    const { extent } = fitted;
    const last = scale === scales.at(-1);
    if (last || (extent.right - extent.left <= width && extent.bottom - extent.top <= height)) return fitted;
  }
  throw new RangeError('There is at least one scale to draw at.');
}

/** First-angle arrangement: side beside the front at the same height, plan below it; two views without a front stand one below the other. */
function arrange(tasks: readonly ViewTask[], content: Content, scale: number, reference: SpacePoint): Fitted {
  const drawn = tasks.map((task) => ({ name: task.view.name, drawn: drawView(content, task, scale * 1e3, reference) }));
  const front = drawn.find((d) => d.name === 'front') ?? drawn[0]!;
  const placed = drawn.map((d) => {
    if (d === front) return { ...d, origin: vector(0, 0) };
    const beside = d.name === 'side' && front.name === 'front';
    const right = Math.max(...drawn.filter((o) => o.name !== 'side' || o === front).map((o) => o.drawn.extent.right));
    const below = Math.max(...drawn.filter((o) => o.name !== 'plan' || o === front).map((o) => o.drawn.extent.bottom));
    return { ...d, origin: beside ? vector(right + BETWEEN - d.drawn.extent.left, 0) : vector(0, below + BETWEEN - d.drawn.extent.top) };
  });
  const extent = extentOf(
    placed.flatMap(({ drawn: { extent: e }, origin: o }) => [vector(e.left + o.x, e.top + o.y), vector(e.right + o.x, e.bottom + o.y)]),
  )!;
  return { scale, placed, extent };
}

function overallText(content: Content): string {
  const words = overallSizes(content).map(({ size, word }) => `${lengthText(size)} ${word}`);
  return words.length === 0 ? '' : ` Over all ${words.join(', ')}.`;
}

function groundWords(content: Content): string {
  const { ground } = content.structure;
  const height = content.layout.nodes[feedOf(content).node]!.z;
  if (ground.kind === 'free-space') return '';
  const what = ground.kind === 'perfect' ? 'a perfectly conducting ground' : 'real ground';
  return height > 0 ? `The feed is ${lengthText(height)} above ${what}.` : `The feed stands on ${what}.`;
}

function footText(content: Content, cuts: readonly Cut[], note: string | undefined): readonly Paragraph[] {
  const line = (text: string, kind: string): Paragraph => ({ text, size: 3, fill: 'ink', kind });
  const quiet = (text: string, kind: string): Paragraph => ({ text, size: 2.8, fill: 'quiet', kind });
  const ground = groundWords(content);
  return [
    quiet('To cut, without what the joints need:', 'list-head'),
    ...cuts.map((c) => line(cutText(c), 'cut')),
    ...content.bodies.map((b) => line(b.label, 'cut')),
    ...(content.groups.length > MOST_GROUPS ? [quiet('Only the longest are dimensioned.', 'left-out')] : []),
    ...(ground === '' ? [] : [quiet(ground, 'ground')]),
    ...(note === undefined ? [] : [quiet(note, 'note')]),
  ];
}

/** The drawing in words, for those who do not see it. */
function description(content: Content, tasks: readonly ViewTask[], cuts: readonly Cut[], scale: number): string {
  const views = tasks.map((t) => t.heading.toLowerCase()).join('; ');
  const list = [...cuts.map(cutText), ...content.bodies.map((b) => b.label)].join('; ');
  const row = content.row ? ` ${content.row.elements.length} elements stand in a row along a boom.` : '';
  const ground = groundWords(content);
  return `Drawing to scale ${scaleText(scale)}. Views: ${views}. To cut: ${list}.${row}${overallText(content)}${ground === '' ? '' : ` ${ground}`}`;
}
