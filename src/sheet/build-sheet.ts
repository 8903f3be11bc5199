import { PDFDocument, PrintScaling } from '@cantoo/pdf-lib';
import { paintPage, type SheetInput, sheetLayout } from './layout.ts';
import { PdfPen, POINTS } from './pdf/pdf-pen.ts';
import { Type } from './pdf/type.ts';

/** The file is the same whenever it is made: dates say nothing. */
const NO_TIME = new Date(0);

/**
 * Everything needed at the bench on paper, as a PDF file, true to scale: circuit, wiring, parts, coil, aerial, order of assembly, dial, trimming.
 *
 * The same input gives the same bytes.
 *
 * @throws GivenError for a set that cannot be, as the engine says it
 */
export async function buildSheet(input: SheetInput): Promise<Uint8Array> {
  const doc = await PDFDocument.create({ updateMetadata: false });
  const type = await Type.of(doc);
  const layout = sheetLayout(input, type);
  layout.pages.forEach(({ paper }, i) => {
    const page = doc.addPage([paper.width * POINTS, paper.height * POINTS]);
    paintPage(layout, i, new PdfPen(page, paper.height, type));
  });
  doc.setTitle(layout.title);
  doc.setProducer('Earshot');
  doc.setCreator('Earshot');
  doc.setCreationDate(NO_TIME);
  doc.setModificationDate(NO_TIME);
  doc.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  return doc.save();
}
