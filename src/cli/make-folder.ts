import { mkdirSync } from 'node:fs';
import { BadFile } from './bad-file.ts';

/** Makes a folder, and those above it, where it is not there. */
export function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch (e) {
    throw new BadFile(
      `${folder}: the folder cannot be made (${(e as NodeJS.ErrnoException).code})\n  Give a folder that can be written to.`,
    );
  }
}
