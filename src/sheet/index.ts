/** The build sheet: a set on paper, true to scale. Load it when it is asked for: with it comes the library that writes PDF files. */
export { buildSheet } from './build-sheet.ts';
export type { SheetInput } from './layout.ts';
export { PAPERS, type PaperName } from './pdf/paper.ts';
export { type Received, receivedBy } from './received.ts';
export { type SheetPage, sheetPages } from './sheet-pages.ts';
