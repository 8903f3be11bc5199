import type * as z from 'zod/mini';
import type { DimensionName } from '#units';
import type { Path } from '../json/positions.ts';
import { dimensionOf } from './quantity.ts';

/** What the walk needs of a schema; the kinds are those that the forms here are made of. */
interface Definition {
  readonly type: string;
  readonly innerType?: z.core.$ZodType;
  readonly shape?: Readonly<Record<string, z.core.$ZodType>>;
  readonly element?: z.core.$ZodType;
  readonly valueType?: z.core.$ZodType;
  readonly items?: readonly z.core.$ZodType[];
  readonly options?: readonly z.core.$ZodType[];
  readonly discriminator?: string;
  readonly values?: readonly unknown[];
  readonly entries?: Readonly<Record<string, string>>;
}

export function definition(schema: z.core.$ZodType): Definition {
  return schema._zod.def as unknown as Definition;
}

/** The schema without what only says that it may be absent. */
export function bare(schema: z.core.$ZodType): z.core.$ZodType {
  const { type, innerType } = definition(schema);
  return innerType && (type === 'optional' || type === 'prefault') ? bare(innerType) : schema;
}

/** Words that a schema of fixed words accepts; empty for any other. */
export function fixedWords(schema: z.core.$ZodType): readonly unknown[] {
  const { type, values, entries } = definition(bare(schema));
  return type === 'literal' ? (values ?? []) : type === 'enum' ? Object.values(entries ?? {}) : [];
}

/** The one of several forms that a value means to be, by the word under its discriminating key; null if it is none of them. */
export function chosenForm(schema: z.core.$ZodType, value: unknown): z.core.$ZodType | null {
  const { discriminator, options } = definition(schema);
  if (discriminator === undefined || typeof value !== 'object' || value === null) return null;
  const word = (value as Record<string, unknown>)[discriminator];
  return options?.find((option) => wordsUnder(option, discriminator).includes(word)) ?? null;
}

/** Words that a form, or the forms of which it is a choice, accept under a key. */
export function wordsUnder(form: z.core.$ZodType, key: string): readonly unknown[] {
  const { shape, options } = definition(form);
  return shape ? fixedWords(shape[key] ?? form) : (options ?? []).flatMap((option) => wordsUnder(option, key));
}

/** The schema of an entry of a value; null if there is none. */
export function schemaOfEntry(schema: z.core.$ZodType, value: unknown, key: string | number): z.core.$ZodType | null {
  const inner = bare(schema);
  const { type, shape, element, valueType, items, options, discriminator } = definition(inner);
  switch (type) {
    case 'object':
      return shape && Object.hasOwn(shape, key) ? shape[key]! : null;
    case 'array':
      return element ?? null;
    case 'record':
      return valueType ?? null;
    case 'tuple':
      return items?.[Number(key)] ?? null;
    case 'union': {
      if (discriminator !== undefined) {
        const form = chosenForm(inner, value);
        return form && schemaOfEntry(form, value, key);
      }
      for (const option of options ?? []) {
        const found = schemaOfEntry(option, value, key);
        if (found) return found;
      }
      return null;
    }
    default:
      return null;
  }
}

/** The schema of what stands at a path of a value; null if no form has such a place. */
export function schemaAt(schema: z.core.$ZodType, value: unknown, path: Path): z.core.$ZodType | null {
  let here: z.core.$ZodType | null = schema;
  let inside = value;
  for (const key of path) {
    if (!here) return null;
    here = schemaOfEntry(here, inside, key);
    inside = typeof inside === 'object' && inside !== null ? (inside as Record<string | number, unknown>)[key] : undefined;
  }
  return here;
}

/** The keys that an object may have here. */
export function keysOf(schema: z.core.$ZodType, value: unknown): readonly string[] {
  const inner = bare(schema);
  const { shape, options } = definition(inner);
  if (shape) return Object.keys(shape);
  const form = chosenForm(inner, value);
  if (form) return keysOf(form, value);
  return (options ?? []).flatMap((option) => keysOf(option, value));
}

/** The dimension of a field that holds a quantity, or a name in its place; null for any other. */
export function dimensionWithin(schema: z.core.$ZodType): DimensionName | null {
  const inner = bare(schema);
  return (
    dimensionOf(inner) ??
    definition(inner)
      .options?.map(dimensionOf)
      .find((d) => d !== null) ??
    null
  );
}

/** What stands at a path of a value; undefined where nothing does. */
export function valueAt(document: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (v, key) => (typeof v === 'object' && v !== null && Object.hasOwn(v, key) ? (v as Record<string | number, unknown>)[key] : undefined),
    document,
  );
}
