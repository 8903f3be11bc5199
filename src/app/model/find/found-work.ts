import { isObject } from '../drawer/own-drawer.ts';
import type { Work } from '../keeper.ts';

type Plain = Readonly<Record<string, unknown>>;

/** What of a document is the set, and what it stands in. */
const OF_SET = ['aerial', 'tank', 'detector', 'phones'];
const AROUND = ['place', 'ear', 'programme', 'drawer'];

/** A set file that was found, as work of its own: with the place and the drawer it was found for. */
export function foundWork(text: string, name: string): Work {
  return { document: { ...(JSON.parse(text) as Plain), name, notes: '' }, files: {} };
}

/** The document with the set in it replaced by one that was found; place, listener and drawer stay as they are written. */
export function withFound(document: unknown, text: string, name: string): unknown {
  const found = JSON.parse(text) as Plain;
  const before = isObject(document) ? document : {};
  const set = Object.fromEntries(OF_SET.filter((key) => found[key] !== undefined).map((key) => [key, found[key]]));
  const kept = Object.fromEntries(AROUND.filter((key) => before[key] !== undefined).map((key) => [key, before[key]]));
  return { version: found.version, name, ...set, ...kept };
}

/** All of a document that a search goes by, as text: what else is changed makes no difference to what was found. */
export function searchedPart(document: unknown, files: Readonly<Record<string, string>>): string {
  const given = isObject(document) ? document : {};
  const around = JSON.stringify(AROUND.map((key) => given[key] ?? null));
  const named = Object.entries(files).filter(([name]) => around.includes(JSON.stringify(name)));
  return JSON.stringify([around, named.sort(([a], [b]) => (a < b ? -1 : 1))]);
}
