import { LONGEST_FILE } from '#set-file';
import { readHostileJson } from './hostile-json.ts';
import type { Work } from './keeper.ts';

/** A file that was picked or dropped; a browser's File is one. */
export interface GivenFile {
  readonly name: string;
  readonly size: number;
  text(): Promise<string>;
}

export interface Opened {
  /** the set among them, with those beside it; null where none of them is one */
  readonly work: Work | null;
  /** texts by name, for sets that refer to them */
  readonly files: Readonly<Record<string, string>>;
  /** what the person is told of files that were not taken, and why */
  readonly notices: readonly string[];
}

/** Sections that make a file a set, and not a place or a drawer alone. */
const OF_A_SET = ['set', 'aerial', 'tank', 'detector', 'phones'];

/**
 * Reads files that were picked or dropped together: the first set is opened, the others stand beside it to be referred to by their names.
 *
 * @param known - files that are at hand already; one with the same name is replaced
 */
export async function openFiles(given: readonly GivenFile[], known: Readonly<Record<string, string>> = {}): Promise<Opened> {
  const texts = new Map<string, string>(Object.entries(known));
  const notices: string[] = [];
  let document: unknown = null;
  let opened: string | null = null;
  for (const file of given) {
    const text = await textOf(file);
    if (!text.ok) {
      notices.push(`${file.name} was not opened: ${text.why}.`);
      continue;
    }
    if (!/\.json$/i.test(file.name) && !text.value.trimStart().startsWith('{')) {
      texts.set(file.name, text.value);
      continue;
    }
    const json = readHostileJson(text.value);
    if (!json.ok) {
      notices.push(`${file.name} was not opened: ${json.why}.`);
      continue;
    }
    if (isSet(json.value) && opened === null) {
      document = json.value;
      opened = file.name;
      continue;
    }
    if (isSet(json.value)) notices.push(`${file.name} is a set too: "${opened}" was opened, open this one by itself.`);
    texts.set(file.name, text.value);
  }
  const files = Object.fromEntries(texts);
  if (opened === null && notices.length === 0)
    notices.push('None of these files is a set. They are at hand now for a set that refers to them by name.');
  return { work: opened === null ? null : { document, files }, files, notices };
}

/** Text of a file, or why it is not taken. */
export type GivenText = { readonly ok: true; readonly value: string } | { readonly ok: false; readonly why: string };

export async function textOf(file: GivenFile): Promise<GivenText> {
  if (file.size > LONGEST_FILE)
    return { ok: false, why: `it has ${(file.size / 1e6).toFixed(0)} MB, and a set file at most ${LONGEST_FILE / 1e6}` };
  try {
    const value = await file.text();
    if (value.includes('\u0000')) return { ok: false, why: 'it is not text' };
    return { ok: true, value };
  } catch (e) {
    return { ok: false, why: e instanceof Error ? e.message : String(e) };
  }
}

const isSet = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && OF_A_SET.some((section) => Object.hasOwn(value, section));
