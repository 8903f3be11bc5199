/** A place in a file, counted from 1; `file` is null for the text that was handed in, else the name it was asked for by. */
export interface Mark {
  readonly file: string | null;
  readonly line: number;
  readonly column: number;
}

/** Keys and numbers from the outermost value inwards. */
export type Path = readonly (string | number)[];

interface Marks {
  readonly self: Mark;
  readonly entries: Map<string, { readonly key: Mark; readonly value: Mark }>;
}

/**
 * Remembers where every object, list and entry of a file stood, so that a complaint about a value can name its line.
 *
 * Objects carry their marks by identity: they may be moved into other objects, or given to other files, and still know where they are from.
 */
export class Positions {
  private readonly marks = new WeakMap<object, Marks>();

  begin(value: object, self: Mark): void {
    this.marks.set(value, { self, entries: new Map() });
  }

  entry(owner: object, key: string | number, keyMark: Mark, valueMark: Mark): void {
    this.marks.get(owner)?.entries.set(String(key), { key: keyMark, value: valueMark });
  }

  /** Where an object begins, if it came from a file. */
  of(value: unknown): Mark | null {
    return typeof value === 'object' && value !== null ? (this.marks.get(value)?.self ?? null) : null;
  }

  /** Gives a copy of an object the marks of its first origin; entries of later origins are added, and the last one wins. */
  inherit(copy: object, ...origins: readonly object[]): void {
    const [first] = origins;
    const known = first && this.marks.get(first);
    if (!known) return;
    const entries = new Map<string, { readonly key: Mark; readonly value: Mark }>();
    for (const origin of origins) for (const [key, mark] of this.marks.get(origin)?.entries ?? []) entries.set(key, mark);
    this.marks.set(copy, { self: known.self, entries });
  }

  /** The mark of an entry of an object; null if it did not come from a file. */
  entryOf(owner: object, key: string | number): { readonly key: Mark; readonly value: Mark } | null {
    return this.marks.get(owner)?.entries.get(String(key)) ?? null;
  }

  /** The mark of the value at a path, or of the innermost thing around it that came from a file. `at` says whether the key is meant, or what it holds. */
  locate(root: unknown, path: Path, at: 'key' | 'value' = 'value'): Mark | null {
    let mark = this.of(root);
    let here: unknown = root;
    for (const [i, key] of path.entries()) {
      if (typeof here !== 'object' || here === null) break;
      const entry = this.entryOf(here, key);
      if (entry) mark = at === 'key' && i === path.length - 1 ? entry.key : entry.value;
      here = (here as Record<string | number, unknown>)[key];
    }
    return mark;
  }
}
