import { PDFDocument } from '@cantoo/pdf-lib';
import { paintPage, type SheetInput, sheetLayout } from './layout.ts';
import { Type } from './pdf/type.ts';
import { SvgPen } from './svg/svg-pen.ts';

/** A page of a sheet as a picture of its own, a unit to a millimetre. */
export interface SheetPage {
  /** SVG, white paper included; no style, script or outside address in it */
  readonly svg: string;
  /** [mm] */
  readonly width: number;
  readonly height: number;
}

/**
 * The pages that `buildSheet` prints, for a screen: the same layout drawn by another pen. Type is the screen's own, stretched to the width it has on paper.
 *
 * @throws GivenError for a set that cannot be, as the engine says it
 */
export async function sheetPages(input: SheetInput): Promise<readonly SheetPage[]> {
  // only for the widths of its fonts
  const type = await Type.of(await PDFDocument.create({ updateMetadata: false }));
  const layout = sheetLayout(input, type);
  return layout.pages.map(({ paper: { width, height } }, i) => {
    const pen = new SvgPen(type);
    paintPage(layout, i, pen);
    const label = `page ${i + 1} of ${layout.pages.length} of the build sheet`;
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="group" aria-label="${label}"><rect width="${width}" height="${height}" fill="#ffffff"/>${pen.markup}</svg>`;
    return { svg, width, height };
  });
}
