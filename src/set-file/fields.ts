import * as z from 'zod/mini';
import type { PartCategory } from '#parts';
import type { DimensionName } from '#units';
import { dimensionOf, type Range, rangeOf } from './forms/quantity.ts';
import { setForm } from './forms/set-form.ts';
import { bare, chosenForm, definition, fixedWords, schemaAt, valueAt, wordsUnder } from './forms/walk.ts';
import type { Path } from './json/positions.ts';
import { showPath } from './problem.ts';
import { isObject } from './resolve/files.ts';
import { SLOTS } from './resolve/parts.ts';

/** What may stand somewhere in a set file, with what stands there now: what a face needs to let a person edit it. */
export type Field = FieldCommon & FieldKind;

export interface FieldCommon {
  readonly key: string;
  readonly path: Path;
  /** what it is, in the trade's words; empty where the forms say nothing */
  readonly about: string;
  readonly required: boolean;
  /** as it stands in the file; undefined where it is left out */
  readonly given: unknown;
  /** what is taken where it is left out; undefined where nothing is */
  readonly fallback: unknown;
  /** where a part may be named in its place: of which kind, and the one that is */
  readonly part: { readonly category: PartCategory; readonly name: string | null } | null;
}

export type FieldKind =
  /** a number with a unit; `words` are names that stand for one, `forms` other ways to give the same thing */
  | {
      readonly kind: 'quantity';
      readonly dimension: DimensionName;
      readonly range: Range;
      readonly words: readonly string[];
      readonly forms: Forms | null;
    }
  | { readonly kind: 'words'; readonly words: readonly (string | number)[] }
  | { readonly kind: 'text' }
  | { readonly kind: 'flag' }
  | { readonly kind: 'group'; readonly fields: readonly Field[] }
  /** one of several forms, told apart by the word under `by`; the fields are those of the chosen one */
  | ({
      readonly kind: 'forms';
      readonly chosen: string | null;
      readonly fields: readonly Field[];
      /** where a plain quantity will do as well */
      readonly dimension: DimensionName | null;
    } & Forms)
  | { readonly kind: 'list'; readonly items: readonly Field[] }
  /** several shapes that have no word to choose by: written as JSON */
  | { readonly kind: 'free' };

/** Several forms, told apart by the word under a key. */
export interface Forms {
  readonly by: string;
  readonly words: readonly string[];
}

/**
 * Fields under a path of a file as it is written, with parts and other files not put in.
 *
 * @param document - the file as JSON; may be at fault anywhere
 * @param path - of an object in it: `['tank', 'coil']`; null comes back where the forms have no such place
 */
export function fieldAt(document: unknown, path: Path): Field | null {
  const schema = schemaAt(setForm, document, path);
  return schema && fieldOf(schema, path, valueAt(document, path));
}

function fieldOf(schema: z.core.$ZodType, path: Path, given: unknown): Field {
  const inner = bare(schema);
  const slot = SLOTS.find((s) => showPath(s.path) === showPath(path));
  const named = isObject(given) && typeof given.part === 'string' ? given.part : null;
  return {
    key: String(path.at(-1) ?? ''),
    path,
    about: aboutOf(schema),
    required: schema === inner,
    given,
    fallback: fallbackOf(schema),
    part: slot ? { category: slot.category, name: named } : null,
    ...kindOf(inner, path, given),
  };
}

function kindOf(schema: z.core.$ZodType, path: Path, given: unknown): FieldKind {
  const dimension = dimensionOf(schema);
  if (dimension) return { kind: 'quantity', dimension, range: rangeOf(schema) ?? {}, words: [], forms: null };
  const { type, shape, element, options, discriminator } = definition(schema);
  switch (type) {
    case 'object':
      return { kind: 'group', fields: fieldsOf(shape ?? {}, path, given) };
    case 'array':
      return element && Array.isArray(given)
        ? { kind: 'list', items: given.map((v, i) => fieldOf(element, [...path, i], v)) }
        : { kind: 'free' };
    case 'literal':
    case 'enum':
      return { kind: 'words', words: fixedWords(schema) as readonly (string | number)[] };
    case 'string':
      return { kind: 'text' };
    case 'boolean':
      return { kind: 'flag' };
    case 'union':
      return discriminator === undefined ? unionOf(options ?? [], path, given) : formsOf(schema, discriminator, path, given, null);
    default:
      return { kind: 'free' };
  }
}

/** Names beside a quantity, names beside forms, or shapes that differ by what is given. */
function unionOf(options: readonly z.core.$ZodType[], path: Path, given: unknown): FieldKind {
  const bares = options.map(bare);
  const words = bares.flatMap(fixedWords) as readonly string[];
  const quantity = bares.find((o) => dimensionOf(o) !== null);
  const forms = bares.find((o) => definition(o).discriminator !== undefined);
  const list = bares.find((o) => definition(o).type === 'array');
  const object = bares.find((o) => definition(o).type === 'object');
  if (list && Array.isArray(given)) return kindOf(list, path, given);
  const dimension = quantity ? dimensionOf(quantity) : null;
  const by = forms ? definition(forms).discriminator! : '';
  if (forms && (dimension === null || isObject(given))) return formsOf(forms, by, path, given, dimension);
  if (object && isObject(given)) return kindOf(object, path, given);
  if (quantity && dimension)
    return {
      kind: 'quantity',
      dimension,
      range: rangeOf(quantity) ?? {},
      words,
      forms: forms ? { by, words: wordsUnder(forms, by) as readonly string[] } : null,
    };
  return words.length > 0 ? { kind: 'words', words } : { kind: 'free' };
}

function formsOf(schema: z.core.$ZodType, by: string, path: Path, given: unknown, dimension: DimensionName | null): FieldKind {
  const words = wordsUnder(schema, by) as readonly string[];
  // a bare word is short for the form that has no other keys
  const value = typeof given === 'string' ? { [by]: given } : given;
  const form = chosenForm(schema, value);
  const chosen = isObject(value) && typeof value[by] === 'string' && form ? (value[by] as string) : null;
  if (!form) return { kind: 'forms', by, words, chosen, fields: [], dimension };
  const { shape, discriminator } = definition(form);
  const fields = shape
    ? fieldsOf(shape, path, value)
    : discriminator !== undefined
      ? [{ ...fieldOf(form, path, value), key: discriminator, about: 'which of them' }]
      : [];
  return { kind: 'forms', by, words, chosen, fields: fields.filter((f) => f.key !== by), dimension };
}

function fieldsOf(shape: Readonly<Record<string, z.core.$ZodType>>, path: Path, given: unknown): readonly Field[] {
  return Object.entries(shape).map(([key, schema]) => fieldOf(schema, [...path, key], isObject(given) ? given[key] : undefined));
}

function aboutOf(schema: z.core.$ZodType): string {
  for (let s: z.core.$ZodType | undefined = schema; s; s = definition(s).innerType) {
    const description = z.globalRegistry.get(s as z.ZodMiniType)?.description;
    if (description) return description;
    if (!definition(s).innerType) break;
  }
  return '';
}

function fallbackOf(schema: z.core.$ZodType): unknown {
  const def = definition(schema) as { readonly type: string; readonly defaultValue?: unknown };
  return def.type === 'prefault' ? def.defaultValue : undefined;
}
