import { BLEED, type Paper, roomHeight, roomWidth, turned } from '../pdf/paper.ts';
import type { Type } from '../pdf/type.ts';
import { paintSvg, svgSize } from '../svg/paint-svg.ts';
import { readSvg, type SvgElement } from '../svg/read-svg.ts';
import type { Block } from './block.ts';
import { paragraph, QUIET } from './words.ts';

/** For a heading over it on the same page. */
const HEADROOM = 22;
/** Down to this a drawing is rather made smaller than the page turned: its smallest type can still be read. */
const READABLE = 0.75;

/** Room that a drawing asks for, and how it is put there: part of its own margin lies in that of the page. */
function framed(root: SvgElement, scale: number): Block {
  const { width, height } = svgSize(root);
  return {
    width: width * scale - 2 * BLEED,
    height: height * scale - 2 * BLEED,
    above: 3,
    floats: true,
    paint: (pen, x, y) => pen.at(x - BLEED, y - BLEED, scale, () => paintSvg(root, pen)),
  };
}

/** A drawing true to its millimetres, on a turned page where it must be; null where it fits no page. */
export function drawing(svg: string, paper: Paper): Block | null {
  const block = framed(readSvg(svg), 1);
  const fits = (p: Paper): boolean => block.width <= roomWidth(p) + 1e-6 && block.height <= roomHeight(p) - HEADROOM;
  // only a drawing that is too wide has its page turned
  return fits(paper) || (block.width > roomWidth(paper) && fits(turned(paper))) ? block : null;
}

/** A drawing that need not be true to scale: made smaller where it must be, and then says by how much. */
export function scaledDrawing(svg: string, paper: Paper, type: Type): readonly Block[] {
  const root = readSvg(svg);
  const size = svgSize(root);
  const factor = (p: Paper): number =>
    Math.min(1, (roomWidth(p) + 2 * BLEED) / size.width, (roomHeight(p) + 2 * BLEED - HEADROOM - 6) / size.height);
  const upright = factor(paper);
  const onto = upright >= READABLE || upright >= factor(turned(paper)) ? paper : turned(paper);
  // rounded down, so that what is written is what is drawn
  const scale = Math.floor(factor(onto) * 100) / 100;
  const block = framed(root, scale);
  // a page is turned for a block that is wider than an upright one
  const wide = onto === paper ? block : { ...block, width: Math.max(block.width, roomWidth(paper) + 1) };
  if (scale === 1) return [wide];
  return [
    { ...wide, withNext: true },
    ...paragraph(`Drawn ${scale} times its full size, to fit the paper.`, roomWidth(paper), type, { size: 2.8, colour: QUIET }),
  ];
}
