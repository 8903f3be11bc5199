import { Positions } from './json/positions.ts';
import type { JsonObject } from './json/scan.ts';
import { CHAIN } from './migrate.ts';
import { besides, type Context } from './resolve/context.ts';
import { assembleFiles, isObject } from './resolve/files.ts';
import type { ReadOptions } from './set-file.ts';

/**
 * The drawer of a file as it is written, with the file it may be in put in its place: what a person edits where it is to become the document's own.
 *
 * @returns null where the file has none, or the other file cannot be had; what is wrong with its values is not looked at
 */
export function writtenDrawer(text: string, { read }: ReadOptions = {}): JsonObject | null {
  const context: Context = { positions: new Positions(), problems: [], chain: CHAIN, read: read ?? null, files: [], unresolved: [] };
  const drawer = assembleFiles(context, text, null)?.sections.drawer;
  if (!isObject(drawer) || 'file' in drawer) return null;
  const from = context.positions.of(drawer)?.file ?? null;
  if (from === null || !isObject(drawer.detectors)) return drawer;
  // curves are looked for beside the file that names them, and that is another one now
  const detectors = Object.entries(drawer.detectors).map(([name, part]) => [name, isObject(part) ? withCurveOf(part, from) : part]);
  return { ...drawer, detectors: Object.fromEntries(detectors) as JsonObject };
}

function withCurveOf(part: JsonObject, from: string): JsonObject {
  const { values } = part;
  if (!isObject(values) || typeof values.csv !== 'string') return part;
  return { ...part, values: { ...values, csv: besides(from, values.csv) } };
}
