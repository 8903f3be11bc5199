import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import type { SearchState } from '#find';
import { BadFile } from '../bad-file.ts';
import { readText } from '../load.ts';
import { writeText } from '../write-text.ts';

/** What a search is kept as: of which question, where it stood, and a sum that tells whether either was changed. */
interface Kept {
  readonly search: 1;
  readonly of: string;
  readonly sum: string;
  readonly state: SearchState;
}

const digest = (value: unknown): string => createHash('sha256').update(JSON.stringify(value)).digest('hex');

/** A mark of a question: the same for the same drawer, place, listener and wishes. */
export const questionMark = (asked: unknown): string => digest(asked);

/**
 * Where a search stood that was kept; null where the file is not there yet.
 *
 * @throws BadFile for another file, one that was changed or cut short, or one of another question
 */
export function takeUp(file: string, of: string): SearchState | null {
  if (!existsSync(file)) return null;
  let kept: Partial<Kept>;
  try {
    kept = Object(JSON.parse(readText(file)));
  } catch (e) {
    if (e instanceof BadFile) throw e;
    throw new BadFile(`${file}: it is no search that was kept, or was cut short\n  Give another file name to begin anew.`);
  }
  if (kept.search !== 1 || !kept.state || kept.sum !== digest([kept.of, kept.state]))
    throw new BadFile(`${file}: it is no search that was kept, or was changed since\n  Give another file name to begin anew.`);
  if (kept.of !== of)
    throw new BadFile(
      `${file}: this search is of another drawer, place or wish (aim, stations, band, seed)\n  Ask the same to go on with it, or give another file name to begin anew.`,
    );
  return kept.state;
}

export function keep(file: string, of: string, state: SearchState): void {
  const kept: Kept = { search: 1, of, sum: digest([of, state]), state };
  writeText(file, `${JSON.stringify(kept)}\n`);
}
