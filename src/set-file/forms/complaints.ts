import * as z from 'zod/mini';
import { nearestWord, readQuantity, showGiven } from '#units';
import type { Path } from '../json/positions.ts';
import { type Report, showPath } from '../problem.ts';
import { dimensionOf } from './quantity.ts';
import { bare, chosenForm, definition, fixedWords, keysOf, schemaAt, valueAt, wordsUnder } from './walk.ts';

type Issue = z.core.$ZodIssue;
export type AlsoKnown = (path: Path) => readonly string[];

/**
 * Turns the issues of a form into complaints a person can act on.
 *
 * @param extra - keys known at a path that were taken out before the form was read, such as `part`
 */
export function complain(
  form: z.core.$ZodType,
  value: unknown,
  issues: readonly Issue[],
  base: Path,
  report: Report,
  extra: AlsoKnown,
): void {
  const misspelt = misspeltKeys(form, value, issues, extra);
  for (const issue of issues) if (!misspelt.has(showPath(issue.path as Path))) complainOf(form, value, issue, base, report, extra);
}

/** Paths of keys that are missing only because they stand there misspelt: the complaint about the misspelling is enough. */
function misspeltKeys(form: z.core.$ZodType, value: unknown, issues: readonly Issue[], extra: AlsoKnown): ReadonlySet<string> {
  const meant = new Set<string>();
  for (const issue of issues) {
    if (issue.code !== 'unrecognized_keys') continue;
    const path = issue.path as Path;
    const owner = valueAt(value, path);
    const known = knownKeys(schemaAt(form, value, path), owner, extra(path));
    for (const key of issue.keys) {
      const near = nearestWord(key, known);
      if (near && valueAt(owner, [near]) === undefined) meant.add(showPath([...path, near]));
    }
  }
  return meant;
}

function knownKeys(schema: z.core.$ZodType | null, owner: unknown, extra: readonly string[]): readonly string[] {
  return schema === null ? extra : [...keysOf(schema, owner), ...extra];
}

function complainOf(form: z.core.$ZodType, value: unknown, issue: Issue, base: Path, report: Report, extra: AlsoKnown): void {
  // where the discriminating word is wrong the path ends in its key, and the forms are those of its owner
  const inside = (issue.code === 'invalid_union' && issue.discriminator !== undefined ? issue.path.slice(0, -1) : issue.path) as Path;
  const path = [...base, ...inside];
  const given = valueAt(value, inside);
  const found = schemaAt(form, value, inside);
  const schema = found && bare(found);
  if (given === undefined && issue.code !== 'unrecognized_keys') {
    report(path, 'nothing', 'it is missing', schema ? `Give ${describe(schema)}` : 'Give it.');
    return;
  }
  const dimension = schema && dimensionOf(schema);
  if (dimension) {
    const { params } = issue as { params?: { given?: string; why?: string; mend?: string } };
    const refusal = params?.why ? params : readQuantity(given, dimension);
    if ('why' in refusal) report(path, refusal.given!, refusal.why!, refusal.mend!);
    return;
  }
  switch (issue.code) {
    case 'unrecognized_keys':
      for (const key of issue.keys)
        report([...path, key], JSON.stringify(key.slice(0, 60)), 'there is no such key here', whichKey(key, schema, given, extra(path)));
      return;
    case 'invalid_union':
      complainOfUnion(schema, given, issue, path, report, extra);
      return;
    case 'too_small':
      report(path, showGiven(given), 'there is too little of it', schema ? `Give ${describe(schema)}` : 'Give more.');
      return;
    case 'too_big':
      report(path, showGiven(given), 'it is too long', `Shorten it to ${issue.maximum} characters.`);
      return;
    default:
      report(path, showGiven(given), wrongKind(schema), whatToGive(schema, given, issue.message));
  }
}

function whatToGive(schema: z.core.$ZodType | null, given: unknown, otherwise: string): string {
  if (!schema) return otherwise;
  const words = fixedWords(schema);
  return words.length > 0 && typeof given === 'string' ? whichWord(given, words.map(String)) : `Give ${describe(schema)}`;
}

/** Of several forms, complains about the one that was meant. */
function complainOfUnion(
  schema: z.core.$ZodType | null,
  given: unknown,
  issue: Extract<Issue, { code: 'invalid_union' }>,
  path: Path,
  report: Report,
  extra: AlsoKnown,
): void {
  const { options = [], discriminator } = schema ? definition(schema) : { options: [] };
  const chosen = schema && chosenForm(schema, given);
  if (chosen && definition(chosen).discriminator !== undefined) {
    complainOfUnion(chosen, given, issue, path, report, extra);
    return;
  }
  if (schema && discriminator !== undefined && !chosen) {
    complainOfKind(schema, discriminator, given, path, report);
    return;
  }
  const words = options.flatMap(fixedWords).map(String);
  if (words.length > 0 && typeof given === 'string' && /^\p{L}/u.test(given)) {
    const near = nearestWord(given, words);
    const otherwise = schema ? `, or ${describe(schema)}` : '.';
    report(
      path,
      showGiven(given),
      'it is none of the words known here',
      near ? `Did you mean "${near}"?` : `Write ${words.join(', ')}${otherwise}`,
    );
    return;
  }
  const branches = issue.errors.map((errors, i) => ({ errors, option: options[i], cost: costOf(errors) }));
  const best = branches.reduce<(typeof branches)[number] | null>((a, b) => (a === null || b.cost < a.cost ? b : a), null);
  if (!best?.option || !Number.isFinite(best.cost)) {
    report(path, showGiven(given), wrongKind(schema), whatToGive(schema, given, issue.message));
    return;
  }
  complain(best.option, given, best.errors as readonly Issue[], path, report, extra);
}

/** How far a form is from what was given: infinite where it is of another kind altogether. */
function costOf(errors: readonly z.core.$ZodIssue[]): number {
  let cost = 0;
  for (const e of errors) {
    if (e.path.length === 0 && (e.code === 'invalid_type' || e.code === 'invalid_value')) return Number.POSITIVE_INFINITY;
    cost += e.code === 'unrecognized_keys' ? 2 * e.keys.length : 1;
  }
  return cost;
}

/** The discriminating word is missing, or none of those known. */
function complainOfKind(schema: z.core.$ZodType, key: string, given: unknown, path: Path, report: Report): void {
  const words = [...new Set(wordsUnder(schema, key).map(String))];
  if (typeof given !== 'object' || given === null || Array.isArray(given)) {
    report(path, showGiven(given), wrongKind(schema), `Give ${describe(schema)}`);
    return;
  }
  const word = (given as Record<string, unknown>)[key];
  report(
    [...path, key],
    showGiven(word),
    word === undefined ? 'it is missing' : 'it is none of the kinds known here',
    whichWord(word, words),
  );
}

function wrongKind(schema: z.core.$ZodType | null): string {
  if (schema && fixedWords(schema).length > 0) return 'it is none of the words known here';
  switch (schema && definition(schema).type) {
    case 'string':
      return 'text in quotation marks is wanted here';
    case 'array':
    case 'tuple':
      return 'a list in square brackets is wanted here';
    case 'object':
    case 'record':
      return 'a group of keys in braces is wanted here';
    case 'boolean':
      return 'true or false is wanted here';
    default:
      return 'it is not of a kind that is wanted here';
  }
}

function whichKey(key: string, schema: z.core.$ZodType | null, given: unknown, extra: readonly string[]): string {
  const known = knownKeys(schema, given, extra);
  const near = nearestWord(key, known);
  return near ? `Did you mean "${near}"?` : `Known here: ${[...new Set(known)].join(', ')}.`;
}

function whichWord(word: unknown, words: readonly string[]): string {
  const near = typeof word === 'string' ? nearestWord(word, words) : null;
  return near ? `Did you mean "${near}"?` : `Write one of: ${words.join(', ')}.`;
}

/** What is wanted, with an example where one is known. */
function describe(schema: z.core.$ZodType): string {
  const words = fixedWords(schema);
  if (words.length > 0) return `one of: ${words.join(', ')}.`;
  const { description, examples } = (z.globalRegistry.get(schema) ?? {}) as { description?: string; examples?: unknown[] };
  const what = description ?? `the keys ${keysOf(schema, undefined).join(', ')}`;
  return examples?.[0] === undefined ? `${what}.` : `${JSON.stringify(examples[0])} or the like: ${what}.`;
}
