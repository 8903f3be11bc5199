import { LONGEST_FILE, type Problem, readSetFile } from '#set-file';
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
export async function shareFragment({ document, files }: Work): Promise<string | null> {
  const text = JSON.stringify(document);
  const read = readSetFile(text, { read: (name) => fileOf(files, name) });
  const used = read.ok ? read.source.files : Object.keys(files).filter((name) => text.includes(JSON.stringify(name)));
  const payload = JSON.stringify({ document, files: Object.fromEntries(used.map((name) => [name, files[name]])) });
  const packed = await through(new CompressionStream('deflate-raw'), new TextEncoder().encode(payload), Number.POSITIVE_INFINITY);
  const fragment = `${MARK}${base64url(packed!)}`;
  return fragment.length <= LONGEST_LINK ? fragment : null;
}

/** Reads the fragment of a link, which may be from anyone: nothing in it is trusted, and it is taken only if it is a set file without a fault. */
export async function readShared(fragment: string): Promise<Shared> {
  const coded = fragment.replace(/^#/, '').slice(MARK.length);
  if (!isShared(fragment) || !/^[A-Za-z0-9_-]+$/.test(coded)) return refused('it was cut short or changed on its way');
  if (coded.length > LONGEST_LINK) return refused('it is longer than any link made here');
  let text: string;
  try {
    const plain = await through(new DecompressionStream('deflate-raw'), bytes(coded), LONGEST_FILE);
    if (!plain) return refused('what it unpacks to is larger than any set file');
    text = new TextDecoder('utf-8', { fatal: true }).decode(plain);
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

/** All that comes out of a stream, or null as soon as it is more than a limit [bytes]. */
async function through(
  stream: { readonly readable: ReadableStream<Uint8Array>; readonly writable: WritableStream<BufferSource> },
  input: Uint8Array<ArrayBuffer>,
  limit: number,
): Promise<Uint8Array<ArrayBuffer> | null> {
  const writer = stream.writable.getWriter();
  // a fault in the input comes out at the reading end as well, where it is met
  void writer.write(input).catch(() => {});
  void writer.close().catch(() => {});
  const reader = stream.readable.getReader();
  const chunks: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > limit) {
      await reader.cancel().catch(() => {});
      return null;
    }
    chunks.push(value);
  }
  const out = new Uint8Array(length);
  let at = 0;
  for (const chunk of chunks) {
    out.set(chunk, at);
    at += chunk.length;
  }
  return out;
}

function base64url(data: Uint8Array): string {
  let binary = '';
  for (const byte of data) binary += String.fromCharCode(byte);
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

const bytes = (coded: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(coded.replaceAll('-', '+').replaceAll('_', '/')), (c) => c.charCodeAt(0));
