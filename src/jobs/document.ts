import type { Shelf } from '#find';
import type { Problem, SetFile, UsedPart } from '#set-file';

/** A set file as text, with the texts it may refer to by the names that stand in it. */
export interface Document {
  readonly text: string;
  readonly files?: Readonly<Record<string, string>>;
  /** what it comes to, where it has been read before: a thread that is given this need not be able to read */
  readonly ahead?: ReadAhead | undefined;
}

/** A document read without fault, as plain data. */
export interface ReadAhead {
  readonly file: SetFile;
  readonly parts: readonly UsedPart[];
  /** parts that changes may swap in */
  readonly shelf: Shelf;
}

/** A document with all that it refers to, and with what it comes to. */
export interface KnownDocument extends Document {
  readonly files: Readonly<Record<string, string>>;
  readonly ahead: ReadAhead;
}

/** What a document comes to, or why it cannot be used. */
export type Answer<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly Problem[] };

/** Hands out the files of a document by name, and throws where one was not handed in. */
export const readerOf =
  ({ files = {} }: Document) =>
  (name: string): string => {
    if (Object.hasOwn(files, name)) return files[name]!;
    throw new Error('it was not handed in');
  };
