import * as z from 'zod/mini';
import { DIMENSIONS, type DimensionName, readQuantity, showGiven, writeExact, writeForPeople } from '#units';

/** Least and greatest value that can be, in SI units; `above` where the end itself cannot be. */
export interface Range {
  readonly min?: number;
  readonly above?: number;
  readonly max?: number;
  readonly whole?: boolean;
}

type QuantitySchema = z.ZodMiniCodec<z.ZodMiniUnion<readonly [z.ZodMiniString<string>, z.ZodMiniNumber<number>]>, z.ZodMiniNumber<number>>;

const DIMENSION_OF = new WeakMap<object, DimensionName>();
const RANGE_OF = new WeakMap<object, Range>();

/** The dimension of a schema made by `quantity`; null for any other. */
export function dimensionOf(schema: object): DimensionName | null {
  return DIMENSION_OF.get(schema) ?? null;
}

/** What a schema made by `quantity` accepts; null for any other. */
export function rangeOf(schema: object): Range | null {
  return RANGE_OF.get(schema) ?? null;
}

/**
 * A field that holds a quantity: read as a person writes it or as a number in SI units, written so that it reads back exactly.
 *
 * @param what - what the field means, in the trade's words; with unit and range it becomes the description in the JSON Schema
 */
export function quantity(name: DimensionName, range: Range, what: string): QuantitySchema {
  const { symbol } = DIMENSIONS[name];
  const examples = examplesWithin(name, range);
  const plain = z.number().check(z.meta(plainMeta(name, range)));
  const schema = z
    // examples are of what is written, and belong to that side
    .codec(z.union([z.string(), plain]).check(z.meta({ examples })), z.number(), {
      decode: (given, context) => {
        const reading = readQuantity(given, name);
        const refusal = reading.ok ? outside(given, reading.value, name, range) : reading;
        if (reading.ok && !refusal) return reading.value;
        context.issues.push({ code: 'custom', input: given, params: { ...refusal }, message: refusal!.why });
        return z.NEVER;
      },
      // pure numbers are plain in JSON too, but for minus zero, which JSON.stringify would lose
      encode: (value) => (symbol === '' && !Object.is(value, -0) ? value : writeExact(value, name)),
    })
    .check(z.meta({ description: `${what}${symbol === '' ? '' : ` [${symbol}]`}; ${rangeWords(name, range)}`, examples }));
  DIMENSION_OF.set(schema, name);
  RANGE_OF.set(schema, range);
  return schema;
}

/** Examples of the dimension that could stand in this field. */
function examplesWithin(name: DimensionName, range: Range): string[] {
  const { examples } = DIMENSIONS[name];
  const fitting = examples.filter((example) => {
    const reading = readQuantity(example, name);
    return reading.ok && !outside(example, reading.value, name, range);
  });
  return fitting.length > 0 ? fitting : [...examples];
}

/** What an editor should know of the plain number; angles are written as text only, a bare 45 could be radians. */
function plainMeta(name: DimensionName, range: Range): Record<string, unknown> {
  const { symbol } = DIMENSIONS[name];
  if (symbol === 'rad') return { const: 0 };
  return {
    ...(symbol === '' ? {} : { description: `in ${symbol}` }),
    ...(range.min === undefined ? {} : { minimum: range.min }),
    ...(range.above === undefined ? {} : { exclusiveMinimum: range.above }),
    ...(range.max === undefined ? {} : { maximum: range.max }),
  };
}

function rangeWords(name: DimensionName, { min, above, max, whole }: Range): string {
  const show = (x: number): string => (x === 0 && DIMENSIONS[name].symbol !== 'K' ? '0' : writeForPeople(x, name));
  const low = min !== undefined ? `from ${show(min)}` : above !== undefined ? `above ${show(above)}` : '';
  const high = max === undefined ? '' : `${min !== undefined ? ' to' : low === '' ? 'up to' : ', up to'} ${show(max)}`;
  return `${whole ? 'a whole number ' : ''}${low}${high}` || 'any value';
}

function outside(given: unknown, value: number, name: DimensionName, range: Range): { given: string; why: string; mend: string } | null {
  const { min = Number.NEGATIVE_INFINITY, above = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = range;
  const { symbol, examples } = DIMENSIONS[name];
  const shown = typeof given === 'number' ? `${given} ${symbol}`.trim() : showGiven(given);
  if (value >= min && value > above && value <= max && !(range.whole && !Number.isInteger(value))) return null;
  const plainNumber =
    typeof given === 'number' && symbol !== '' ? ` A plain number is taken in ${symbol}; write a unit, as in "${examples[0]}".` : '';
  return {
    given: shown,
    why: range.whole && !Number.isInteger(value) ? 'it is not a whole number' : 'it lies outside what can be',
    mend: `Give a value ${rangeWords(name, range)}.${plainNumber}`,
  };
}

/** A value to take where the file gives none, written as a person would; it stands in the JSON Schema. */
export function withDefault<T extends z.core.$ZodType>(schema: T, value: z.core.input<T>): z.ZodMiniPrefault<T> {
  return z.prefault(schema, value as never);
}

/** Says what a field is, for the JSON Schema and for complaints. */
export function about<T extends z.ZodMiniType>(schema: T, description: string, ...examples: unknown[]): T {
  const described = schema.check(z.meta(examples.length > 0 ? { description, examples } : { description })) as T;
  const dimension = dimensionOf(schema);
  if (dimension) {
    DIMENSION_OF.set(described, dimension);
    RANGE_OF.set(described, rangeOf(schema) ?? {});
  }
  return described;
}
