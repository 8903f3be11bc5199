import type { Path } from './json/positions.ts';

/** Something in a file that cannot be used: where it stands, what was given, why it cannot be, how to mend it. */
export interface Problem {
  /** dotted: `tank.coil.turns`, `place.stations[0].frequency`; empty for the file as a whole */
  readonly path: string;
  /** null for the text that was handed in, else the file it refers to */
  readonly file: string | null;
  /** counted from 1 */
  readonly line: number;
  readonly column: number;
  readonly given: string;
  readonly why: string;
  readonly mend: string;
}

/** Notes a problem at a path; where it stands in the file is found from the path. */
export type Report = (path: Path, given: string, why: string, mend: string) => void;

/** `tank.coil.turns`, `place.stations[0].name`, `drawer.detectors["my diode"]`. */
export function showPath(path: Path): string {
  let text = '';
  for (const key of path) {
    if (typeof key === 'number') text += `[${key}]`;
    else if (/^[\p{L}\p{N}_-]{1,60}$/u.test(key)) text += text === '' ? key : `.${key}`;
    else text += `[${JSON.stringify(key.slice(0, 40))}]`;
  }
  return text;
}

/** The keys of a path written with dots and brackets. */
export function readPath(text: string): Path {
  return Array.from(text.matchAll(/\["((?:[^"\\]|\\.)*)"\]|\[(\d+)\]|([^.[\]]+)/g), (m) =>
    m[2] !== undefined
      ? Number(m[2])
      : m[1] !== undefined
        ? (JSON.parse(`"${m[1]}"`) as string)
        : /^\d+$/.test(m[3]!)
          ? Number(m[3])
          : m[3]!,
  );
}
