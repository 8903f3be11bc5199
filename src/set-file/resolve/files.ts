import { nearestWord, showGiven } from '#units';
import type { Path } from '../json/positions.ts';
import { type JsonObject, scanJson } from '../json/scan.ts';
import { migrate } from '../migrate.ts';
import { showPath } from '../problem.ts';
import { type Context, note, readOther } from './context.ts';

/** The keys of a file, in the order in which they are written. */
export const FILE_KEYS = [
  'version',
  'name',
  'notes',
  'set',
  'place',
  'aerial',
  'tank',
  'detector',
  'phones',
  'ear',
  'programme',
  'drawer',
] as const;
/** What `"set": { "file": ... }` supplies; a section given beside it takes the place of the other file's. */
const FROM_SET = ['name', 'aerial', 'tank', 'detector', 'phones'] as const;
/** Files that refer to files that refer to files need not go deeper. */
const DEEPEST = 8;

/** A document with its references to other files replaced by what they hold; drawers in the order in which they are searched. */
export interface Assembled {
  readonly sections: JsonObject;
  readonly drawers: readonly JsonObject[];
}

/** Reads a file and the files it refers to. Null where a problem was noted that leaves nothing to read. */
export function assembleFiles(context: Context, text: string, file: string | null, trail: readonly string[] = []): Assembled | null {
  const document = loadDocument(context, text, file);
  if (!document) return null;
  const sections: JsonObject = { ...document };
  const drawers: JsonObject[] = [];
  context.positions.inherit(sections, document);
  refuseUnknownKeys(context, document);
  if (document.drawer !== undefined) {
    const drawer = isReference(document.drawer) ? other(context, document, 'drawer', trail)?.sections.drawer : document.drawer;
    if (isObject(drawer)) drawers.push(drawer);
    put(context, sections, 'drawer', drawer);
  }
  if (isReference(document.place)) {
    const place = other(context, document, 'place', trail)?.sections.place;
    if (place === undefined) context.unresolved.push(['place']);
    put(context, sections, 'place', place);
  }
  if (document.set !== undefined) {
    const base = other(context, document, 'set', trail);
    delete sections.set;
    if (base) {
      for (const key of FROM_SET)
        if (document[key] === undefined && base.sections[key] !== undefined) put(context, sections, key, base.sections[key]);
      drawers.push(...base.drawers);
    } else context.unresolved.push(...FROM_SET.filter((key) => document[key] === undefined).map((key) => [key]));
  }
  return { sections, drawers };
}

function put(context: Context, sections: JsonObject, key: string, value: unknown): void {
  if (value === undefined) {
    delete sections[key];
    return;
  }
  sections[key] = value;
  const mark = context.positions.of(value);
  if (mark) context.positions.entry(sections, key, mark, mark);
}

export function isObject(value: unknown): value is JsonObject {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isReference(value: unknown): boolean {
  return isObject(value) && 'file' in value;
}

/** Scans a text, brings it up to the current version, and makes sure that it is an object. */
function loadDocument(context: Context, text: string, file: string | null): JsonObject | null {
  const scanned = scanJson(text, file, context.positions);
  if ('why' in scanned) {
    const { path, mark, given, why, mend } = scanned;
    context.problems.push({ path: showPath(path), ...mark, given, why, mend });
    return null;
  }
  if (!isObject(scanned.value)) {
    context.problems.push({
      path: '',
      file,
      line: 1,
      column: 1,
      given: showGiven(scanned.value),
      why: 'a set file is a group of keys in braces',
      mend: 'Begin with { "version": 1, ...',
    });
    return null;
  }
  const migrated = migrate(scanned.value, context.chain, context.positions);
  if ('why' in migrated) {
    note(context, scanned.value, ['version'], 'value', showGiven(migrated.given), migrated.why, migrated.mend);
    return null;
  }
  return migrated.document;
}

function refuseUnknownKeys(context: Context, document: JsonObject): void {
  for (const key of Object.keys(document)) {
    if ((FILE_KEYS as readonly string[]).includes(key)) continue;
    const near = nearestWord(key, FILE_KEYS);
    const mend = near ? `Did you mean "${near}"?` : `Known here: ${FILE_KEYS.join(', ')}.`;
    if (near && document[near] === undefined) context.unresolved.push([near]);
    note(context, document, [key], 'key', JSON.stringify(key.slice(0, 60)), 'there is no such key here', mend);
  }
}

/** The file that `"key": { "file": ... }` names; null where a problem was noted. */
function other(context: Context, document: JsonObject, key: 'set' | 'place' | 'drawer', trail: readonly string[]): Assembled | null {
  const reference = document[key];
  const path: Path = [key, 'file'];
  if (!isObject(reference) || typeof reference.file !== 'string' || reference.file === '') {
    const given = isObject(reference) ? reference.file : reference;
    note(
      context,
      document,
      isObject(reference) ? path : [key],
      'value',
      showGiven(given),
      'the name of a file is wanted here',
      `Write "${key}": { "file": "other.json" }.`,
    );
    return null;
  }
  for (const extra of Object.keys(reference))
    if (extra !== 'file')
      note(
        context,
        document,
        [key, extra],
        'key',
        JSON.stringify(extra.slice(0, 60)),
        'nothing can stand beside "file"',
        `Delete it, or write ${key} out in full.`,
      );
  const got = readOther(context, document, path, reference.file);
  if (!got) return null;
  if (trail.includes(got.file)) {
    note(
      context,
      document,
      path,
      'value',
      JSON.stringify(reference.file),
      `the files refer to each other in a circle: ${[...trail, got.file].join(' > ')}`,
      'Break the circle.',
    );
    return null;
  }
  if (trail.length >= DEEPEST) {
    note(
      context,
      document,
      path,
      'value',
      JSON.stringify(reference.file),
      `files refer to files more than ${DEEPEST} deep`,
      'Refer to the last of them straight away.',
    );
    return null;
  }
  const before = context.problems.length;
  const assembled = assembleFiles(context, got.text, got.file, [...trail, got.file]);
  if (!assembled || context.problems.length > before) return null;
  const holds =
    key === 'set' ? FROM_SET.some((k) => k !== 'name' && assembled.sections[k] !== undefined) : assembled.sections[key] !== undefined;
  if (!holds) {
    note(
      context,
      document,
      path,
      'value',
      JSON.stringify(reference.file),
      key === 'set' ? 'that file holds no part of a set' : `that file holds no ${key}`,
      'Name another file.',
    );
    return null;
  }
  return assembled;
}
