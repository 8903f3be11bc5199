import { readFileSync, statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { GivenError, type Place } from '#engine';
import { LONGEST_FILE, type Problem, readPlaceFile, readSetFile, type SetFile, type Source, type UsedPart } from '#set-file';
import { givenProblem, problemText } from '#tell';
import { BadFile } from './bad-file.ts';

/** A set file with all it refers to. */
export interface Loaded extends SetFile {
  readonly file: string;
  readonly parts: readonly UsedPart[];
  readonly source: Source;
}

/** Reads a set file; problems become one message, each with line, reason and mend. */
export function load(file: string): Loaded {
  const result = readSetFile(readText(file), { read: reader(file) });
  if (!result.ok) throw refused(file, result.problems);
  return { ...result.value, file, parts: result.parts, source: result.source };
}

/** Reads only the place of a file, which need not hold a set. */
export function loadPlace(file: string): { readonly place: Place; readonly file: string; readonly source: Source } {
  const result = readPlaceFile(readText(file), { read: reader(file) });
  if (!result.ok) throw refused(file, result.problems);
  return { place: result.value, file, source: result.source };
}

/** What the engine refuses, told with its line in the file. */
export function checked<T>(loaded: Pick<Loaded, 'file' | 'source'>, work: () => T): T {
  try {
    return work();
  } catch (e) {
    if (!(e instanceof GivenError)) throw e;
    throw refused(loaded.file, [givenProblem(e, loaded.source)]);
  }
}

export const reader = (file: string) => (path: string) => readText(resolve(dirname(resolve(file)), path));
export const refused = (file: string, problems: readonly Problem[]): BadFile =>
  new BadFile(problems.map((p) => problemText(p, file)).join('\n\n'));

export function readText(path: string): string {
  let size: number;
  try {
    size = statSync(path).size;
    if (size <= LONGEST_FILE) return readFileSync(path, 'utf8');
  } catch (e) {
    const code = (e as NodeJS.ErrnoException).code;
    const why =
      code === 'ENOENT'
        ? 'there is no such file'
        : code === 'EISDIR'
          ? 'it is a folder'
          : code === 'EACCES'
            ? 'it may not be read'
            : String(code);
    throw new BadFile(`${path}: ${why}\n  Give the path of a set file; the folder "examples" has some.`);
  }
  throw new BadFile(
    `${path} has ${(size / 1e6).toFixed(0)} MB: a set file has at most ${LONGEST_FILE / 1e6} MB\n  Is it another kind of file?`,
  );
}
