import { writeFileSync } from 'node:fs';
import { BadFile } from './bad-file.ts';

/** Writes a file and says so beside the answer, on the error channel, so that JSON stays JSON. */
export function writeText(path: string, text: string): void {
  try {
    writeFileSync(path, text);
  } catch (e) {
    throw new BadFile(`${path}: it cannot be written (${(e as NodeJS.ErrnoException).code})\n  Give a path in a folder that is there.`);
  }
  console.error(`written: ${path}`);
}
