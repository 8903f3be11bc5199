/** Reading documents and the library of parts: in a file of its own, since documents that were read ahead do without. */
import type { Shelf } from '#find';
import { LIBRARY, mergeParts } from '#parts';
import { type Drawer, readSetFile, shelfOf } from '#set-file';
import { type Document, type KnownDocument, readerOf } from './document.ts';

export const read = (document: Document): ReturnType<typeof readSetFile> => readSetFile(document.text, { read: readerOf(document) });

/** The parts of a drawer and those that come along, as changes may swap them in. */
export function shelfWith(drawer: Drawer): Shelf {
  const { wires, ...shelf } = shelfOf(mergeParts(drawer, LIBRARY));
  return shelf;
}

/**
 * A document with the files it refers to and with what it comes to.
 *
 * @param fileOf - text of a file by the name that stands in the document
 * @throws Error where the document has a fault
 */
export function readAhead(text: string, fileOf: (name: string) => string): KnownDocument {
  const result = readSetFile(text, { read: fileOf });
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.path}: ${p.why}`).join('; '));
  const { value, parts, source } = result;
  const files = Object.fromEntries(source.files.map((name) => [name, fileOf(name)]));
  return { text, files, ahead: { file: value, parts, shelf: shelfWith(value.drawer) } };
}
