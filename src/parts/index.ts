/** The library of generic parts: what each is, its values as a person writes them, how far they may be out, and where they are from. */
import capacitors from './capacitors.json' with { type: 'json' };
import detectors from './detectors.json' with { type: 'json' };
import earpieces from './earpieces.json' with { type: 'json' };
import transformers from './transformers.json' with { type: 'json' };
import wires from './wires.json' with { type: 'json' };

/** A part of the library or of a person's drawer. `values` has the keys and values of the section of a set file it goes into. */
export interface Part {
  readonly title?: string | undefined;
  readonly values: Readonly<Record<string, unknown>>;
  /** likely range of a value, low and high */
  readonly band?: Readonly<Record<string, readonly [string | number, string | number]>> | undefined;
  readonly source?: string | undefined;
  /** whether the values are an estimate */
  readonly estimate?: boolean | undefined;
}

export const PART_CATEGORIES = ['detectors', 'earpieces', 'transformers', 'capacitors', 'wires'] as const;
export type PartCategory = (typeof PART_CATEGORIES)[number];

/** Parts by category and name. */
export type Parts = Readonly<Record<PartCategory, Readonly<Record<string, Part>>>>;

// the band of a JSON file is a list to the compiler, and a pair by the test that loads every part
export const LIBRARY = { detectors, earpieces, transformers, capacitors, wires } as unknown as Parts;

/** The first parts take the place of later ones with the same name. */
export function mergeParts(...shelves: readonly Partial<Parts>[]): Parts {
  const merged = (category: PartCategory): Record<string, Part> =>
    Object.assign({}, ...shelves.map((s) => s[category] ?? {}).reverse()) as Record<string, Part>;
  return {
    detectors: merged('detectors'),
    earpieces: merged('earpieces'),
    transformers: merged('transformers'),
    capacitors: merged('capacitors'),
    wires: merged('wires'),
  };
}
