import { lengthText } from '../aerial/length-text.ts';
import { scaleBar } from '../aerial/scale-bar.ts';
import { checkedSize } from '../plane/checked-size.ts';
import { extentOf } from '../plane/extent.ts';
import { vector } from '../plane/vector.ts';
import { svgDocument } from '../svg/document.ts';
import { type Mark, outline } from '../svg/mark.ts';
import type { Theme } from '../svg/palette.ts';
import { type Paragraph, textBlock } from '../svg/text-block.ts';
import { dialMarks } from './dial-marks.ts';
import { type DialScale, type PointerSense, travelOf } from './dial-scale.ts';
import { stationMarks } from './dial-stations.ts';
import { dialDescription, keyWords, onDial } from './dial-words.ts';

export interface DialOptions {
  readonly title?: string;
  readonly note?: string;
  /** of the arc that carries the frequencies [mm] */
  readonly radius?: number;
  /** diameter of the hole for the shaft [mm] */
  readonly shaftHole?: number;
  /** what the frequency does as the pointer goes clockwise */
  readonly clockwise?: PointerSense;
  readonly theme?: Theme;
  readonly id?: string;
}

const RADIUS = 60;
const SMALLEST = 30;
const ROOM = 'the dial has to hold its marks';
const SHAFT_HOLE = 6.5;
const MARGIN = 5;
const NARROWEST = 100;
/** A dial that turns further than this would run over its own beginning [rad]. */
const FARTHEST = (2 * Math.PI * 350) / 360;

/**
 * A dial scale to be printed true to size, as SVG text: an arc with round frequencies and degrees, and the user's stations around it. The
 * middle of its travel is at the top.
 *
 * @returns null for a capacitor that turns nearly once round or more: drawDialStrip shows that
 * @throws GivenError for a dial or options that cannot be
 */
export function drawDial(scale: DialScale, options: DialOptions = {}): string | null {
  const sense = options.clockwise ?? 'rising';
  const radius = checkedSize('options.radius', options.radius ?? RADIUS, SMALLEST, 500, ROOM);
  const hole = checkedSize('options.shaftHole', options.shaftHole ?? SHAFT_HOLE, 0, radius / 2, ROOM);
  const travel = travelOf(scale, sense);
  if (scale.rotation > FARTHEST) return null;
  const stations = onDial(scale, travel).here;
  const marks: Mark[] = [...dialMarks(scale, travel, radius, hole), ...stationMarks(scale, stations, travel, radius)];
  const extent = extentOf(marks.flatMap(outline))!;
  const sheetWidth = Math.max(NARROWEST, extent.right - extent.left + 2 * MARGIN);
  const inner = sheetWidth - 2 * MARGIN;
  const title = options.title ?? 'Dial';
  const quiet = (text: string, kind: string): Paragraph => ({ text, size: 2.8, fill: 'quiet', kind });
  const head = textBlock([{ text: title, size: 4.4, fill: 'ink', kind: 'title' }], inner);
  const foot = textBlock(
    [
      quiet(`True to size where the bar above is as long as it says; the arc has a radius of ${lengthText(radius / 1e3)}.`, 'size'),
      ...keyWords(scale, travel).map((text) => quiet(text, 'key')),
      ...(options.note === undefined ? [] : [quiet(options.note, 'note')]),
    ],
    inner,
  );
  const dialTop = MARGIN + head.height + 3;
  const barTop = dialTop + extent.bottom - extent.top + 5;
  const footTop = barTop + 9;
  return svgDocument({
    width: sheetWidth,
    height: footTop + foot.height + MARGIN,
    title,
    description: `Dial scale, radius ${lengthText(radius / 1e3)}. ${dialDescription(scale, travel, sense, 'clockwise')}`,
    groups: [
      { marks: head.marks, shift: vector(MARGIN, MARGIN) },
      {
        marks,
        shift: vector((sheetWidth - (extent.right - extent.left)) / 2 - extent.left, dialTop - extent.top),
        labels: { part: 'dial', radius },
      },
      { marks: scaleBar(1e3), shift: vector(MARGIN + 2, barTop), labels: { part: 'scale-bar' } },
      { marks: foot.marks, shift: vector(MARGIN, footTop) },
    ],
    theme: options.theme ?? 'auto',
    id: options.id,
  });
}
