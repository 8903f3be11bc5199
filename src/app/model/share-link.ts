import { LONGEST_FILE, type Problem, readSetFile, shareCode, unpacked } from '#set-file';
import { readHostileJson } from './hostile-json.ts';
import type { Work } from './keeper.ts';
import { isShared, MARK } from './share-mark.ts';

/** Longer links are cut by programs that hand them on [characters]. */
export const LONGEST_LINK = 16_000;

export type Shared =
  | { readonly ok: true; readonly work: Work }
  | { readonly ok: false; readonly why: string; readonly mend: string; readonly problems: readonly Problem[] };

/**
 * A document with the files it refers to, as the fragment of a link; null where it would be too long to be handed on.
 *
 * The fragment is never sent to a server: who gets the link has the set, no one else.
 */
export async function shareFragment(work: Work): Promise<string | null> {
  const fragment = await shareCode(work);
  return fragment.length <= LONGEST_LINK ? fragment : null;
}

/** Reads the fragment of a link, which may be from anyone: nothing in it is trusted, and it is taken only if it is a set file without a fault. */
export async function readShared(fragment: string): Promise<Shared> {
  // copied off a build sheet it comes in groups and lines
  const whole = fragment.replace(/%20|\s/g, '');
  const coded = whole.replace(/^#/, '').slice(MARK.length);
  if (!isShared(whole) || !/^[A-Za-z0-9_-]+$/.test(coded)) return refused('it was cut short or changed on its way');
  if (coded.length > LONGEST_LINK) return refused('it is longer than any link made here');
  let text: string;
  try {
    const plain = await unpacked(coded, LONGEST_FILE);
    if (plain === null) return refused('what it unpacks to is larger than any set file');
    text = plain;
  } catch {
    return refused('it was cut short or changed on its way');
  }
  const json = readHostileJson(text);
  if (!json.ok) return refused(json.why);
  const work = workOf(json.value);
  if (!work) return refused('it holds something else than a set');
  const read = readSetFile(JSON.stringify(work.document), { read: (name) => fileOf(work.files, name) });
  if (!read.ok) return { ...refused('the set in it has faults'), problems: read.problems };
  return { ok: true, work };
}

const refused = (why: string): Shared & { readonly ok: false } => ({
  ok: false,
  why: `The link cannot be used: ${why}.`,
  mend: 'Ask for it once more, or for the set as a file.',
  problems: [],
});

function workOf(value: unknown): Work | null {
  if (typeof value !== 'object' || value === null || !('document' in value) || !('files' in value)) return null;
  const { document, files } = value;
  if (typeof document !== 'object' || document === null || typeof files !== 'object' || files === null) return null;
  if (Object.values(files).some((text) => typeof text !== 'string')) return null;
  return { document, files: files as Record<string, string> };
}

function fileOf(files: Readonly<Record<string, string>>, name: string): string {
  if (Object.hasOwn(files, name)) return files[name]!;
  throw new Error('it was not handed in');
}
