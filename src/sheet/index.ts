/** The build sheet: a set on paper, true to scale. Load it when it is asked for: with it comes the library that writes PDF files. */
export { buildSheet, type SheetInput } from './build-sheet.ts';
export { PAPERS, type PaperName } from './pdf/paper.ts';
