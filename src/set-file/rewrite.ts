import { readSetFile } from './read-set-file.ts';
import { isObject } from './resolve/files.ts';
import { SLOTS } from './resolve/parts.ts';
import type { ReadOptions, SetFile } from './set-file.ts';
import { writeSetFile } from './write-set-file.ts';

type Json = Record<string, unknown>;

/**
 * Puts a changed set into the file it was read from: only what changed is written anew, all else stays as the person wrote it, parts by name and other
 * files included.
 *
 * @param text - the file; must be one that can be read
 * @param after - what it is to say
 * @param names - parts that may have been put in: where one says the same, its name is written and not its values
 * @throws Error if the text cannot be read
 */
export function rewriteSetFile(text: string, after: SetFile, names: readonly string[] = [], options: ReadOptions = {}): string {
  const before = readSetFile(text, options);
  if (!before.ok) throw new Error('only a file that can be read can be rewritten');
  const written = writeSetFile(after);
  const document = JSON.parse(text) as Json;
  const whole = merge(document, JSON.parse(writeSetFile(before.value)) as Json, JSON.parse(written) as Json);
  const same = (candidate: Json): boolean => {
    const read = readSetFile(JSON.stringify(candidate), options);
    return read.ok && writeSetFile(read.value) === written;
  };
  const named = SLOTS.filter(({ path }) => !equal(at(document, path), at(whole, path))).reduce((best, { path }) => {
    const found = names.map((part) => withAt(best, path, { part })).find(same);
    return found ?? best;
  }, whole);
  return `${JSON.stringify(named, null, 2)}\n`;
}

/** The document with what differs between the two whole writings. */
function merge(document: Json, before: Json, after: Json): Json {
  const out: Json = {};
  for (const key of new Set([...Object.keys(document), ...Object.keys(after)])) {
    const [own, old, now] = [document[key], before[key], after[key]];
    if (equal(old, now)) {
      if (own !== undefined) out[key] = own;
    } else if (now === undefined) {
      // it was taken out
    } else out[key] = isObject(own) && isObject(old) && isObject(now) && alike(own, now) ? merge(own, old, now) : now;
  }
  return out;
}

/** Whether one object is the other with some values changed: not a reference, and of the same form. */
const alike = (own: Json, now: Json): boolean =>
  !('part' in own) && !('file' in own) && ['kind', 'shape'].every((k) => own[k] === undefined || own[k] === now[k]);

const equal = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

const at = (o: unknown, path: readonly string[]): unknown => path.reduce<unknown>((v, k) => (isObject(v) ? v[k] : undefined), o);

function withAt(o: Json, path: readonly string[], value: unknown): Json {
  const [key, ...rest] = path;
  if (key === undefined) return o;
  const inside = o[key];
  return { ...o, [key]: rest.length === 0 ? value : withAt(isObject(inside) ? inside : {}, rest, value) };
}
