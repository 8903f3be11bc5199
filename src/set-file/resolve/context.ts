import type { Path, Positions } from '../json/positions.ts';
import type { MigrationChain } from '../migrate.ts';
import { type Problem, showPath } from '../problem.ts';

/** What the steps of reading share: where things stood, what went wrong, and how other files are had. */
export interface Context {
  readonly positions: Positions;
  readonly problems: Problem[];
  readonly chain: MigrationChain;
  /** text of another file; throws where there is none */
  readonly read: ((path: string) => string) | null;
  /** files that were read for this one, by the name they were asked for */
  readonly files: string[];
  /** places that could not be filled in and of which a problem tells already: what is missing there is no news */
  readonly unresolved: Path[];
}

/** Notes a problem with something in a document; `root` is the document, `path` leads from it, `shown` stands before it for the reader. */
export function note(context: Context, root: unknown, path: Path, at: 'key' | 'value', given: string, why: string, mend: string): void {
  const mark = context.positions.locate(root, path, at) ?? { file: null, line: 1, column: 1 };
  context.problems.push({ path: showPath(path), ...mark, given, why, mend });
}

/** The way to a file named in another file: beside that one, unless it is absolute. */
export function besides(file: string | null, name: string): string {
  if (file === null || /^([/\\]|[a-zA-Z][a-zA-Z0-9+.-]*:)/.test(name)) return name;
  const folder = /^(.*[/\\])[^/\\]*$/.exec(file)?.[1] ?? '';
  return folder + name;
}

/** Reads another file; notes a problem where it cannot be had. `root` and `path` say where it is named. */
export function readOther(
  context: Context,
  root: unknown,
  path: Path,
  name: string,
): { readonly file: string; readonly text: string } | null {
  const from = context.positions.locate(root, path)?.file ?? null;
  const file = besides(from, name);
  if (!context.read) {
    note(context, root, path, 'value', JSON.stringify(name), 'no other files can be read here', 'Put its contents in place of its name.');
    return null;
  }
  try {
    const text = context.read(file);
    if (typeof text !== 'string') throw new Error('it is no text');
    if (!context.files.includes(file)) context.files.push(file);
    return { file, text };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    note(
      context,
      root,
      path,
      'value',
      JSON.stringify(name),
      `the file cannot be read: ${reason}`,
      'Check its name; it is looked for beside the file that names it.',
    );
    return null;
  }
}
