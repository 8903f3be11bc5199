import type { Answer, Document } from '#jobs';
import type { JobContext } from '#rpc';
import { sheetCode } from '#set-file';
import { buildSheet, type PaperName, type SheetInput, type SheetPage, sheetPages } from '#sheet';
import { offBench } from '../../jobs/bench.ts';

/** A sheet as it is asked for. */
export interface SheetGiven {
  readonly document: Document;
  /** index of the station it is built for */
  readonly station: number;
  readonly paper: PaperName;
}

/** What the thread for sheets can do. */
export const sheetJobs = {
  /** The pages as pictures. */
  pages: (given: SheetGiven): Promise<Answer<readonly SheetPage[]>> => made(given, sheetPages),
  /** The bytes of the PDF file. */
  file: (given: SheetGiven, context: JobContext): Promise<Answer<Uint8Array<ArrayBuffer>>> =>
    made(given, async (input) => {
      const bytes = new Uint8Array(await buildSheet(input));
      context.transfer(bytes.buffer);
      return bytes;
    }),
};

export type SheetJobs = typeof sheetJobs;

const made = <T>({ document, station, paper }: SheetGiven, make: (input: SheetInput) => Promise<T>): Promise<Answer<T>> =>
  offBench(document, async ({ file, parts, situation: { place } }) =>
    make({
      file: { ...file, place },
      parts,
      station: Math.min(station, place.stations.length - 1),
      paper,
      code: await sheetCode({ document: JSON.parse(document.text), files: document.files ?? {} }),
    }),
  );
