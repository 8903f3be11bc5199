import { base, baseText } from '../base.ts';

/** One file that cannot be used, and the one problem that must come of it. */
export interface Row {
  readonly what: string;
  readonly text: string;
  readonly path: string;
  /** the piece of the text at which the problem must stand, or the end of the text */
  readonly at: string | { readonly offset: number };
  readonly why: RegExp;
  readonly mend: RegExp;
}

/** The base file with values at some paths changed; undefined takes a key away. */
export function changed(
  what: string,
  changes: Readonly<Record<string, unknown>>,
  path: string,
  at: string,
  why: RegExp,
  mend: RegExp,
): Row {
  const draft = base();
  for (const [place, value] of Object.entries(changes)) {
    const keys = place.split('.');
    const owner = keys.slice(0, -1).reduce((o, key) => o[key], draft);
    const key = keys.at(-1)!;
    if (value === undefined) delete owner[key];
    else owner[key] = value;
  }
  return { what, text: JSON.stringify(draft, null, 2), path, at, why, mend };
}

/** The base file with one piece of its text replaced. */
export function edited(
  what: string,
  [from, to]: readonly [string, string],
  path: string,
  at: string | { readonly after: string },
  why: RegExp,
  mend: RegExp,
): Row {
  const text = baseText();
  if (!text.includes(from)) throw new Error(`the base file does not hold ${from}`);
  const next = text.replace(from, to);
  return { what, text: next, path, at: typeof at === 'string' ? at : { offset: next.indexOf(at.after) + at.after.length }, why, mend };
}
