import { LIBRARY, PART_CATEGORIES, type PartCategory } from '#parts';
import { type Problem, showPath, writtenDrawer } from '#set-file';
import type { Desk } from '../desk.ts';
import { type Path, withValue } from '../edit.ts';
import { filesAtHand } from '../files-at-hand.ts';

/** A drawer as a file gives it. */
export type DrawerText = NonNullable<ReturnType<typeof writtenDrawer>>;

/** The drawer of the document as it is written, whether it stands in it or in a file it refers to; null where there is none. */
export const drawerOf = (desk: Desk): DrawerText | null => writtenDrawer(desk.text.value, { read: filesAtHand(desk) });

/** The file the document has its drawer from; null where the drawer is its own. */
export function drawerFileOf(document: unknown): string | null {
  const drawer = isObject(document) ? document.drawer : null;
  return isObject(drawer) && 'file' in drawer ? String(drawer.file) : null;
}

/** Edits the drawer where it stands; one from another file becomes the document's own with that. */
export function editDrawer(desk: Desk, path: Path, value: unknown, drag?: string): void {
  const whole = withValue({ drawer: drawerOf(desk) ?? {} }, path, value) as { readonly drawer?: unknown };
  // a drawer that was emptied is still a drawer
  desk.edit(['drawer'], whole.drawer ?? {}, drag);
}

/** Entries of an object in the drawer, such as its capacitors; empty where there is none or it is no object. */
export function entriesOf(drawer: DrawerText, key: string): readonly (readonly [string, unknown])[] {
  const inside = drawer[key];
  return isObject(inside) ? Object.entries(inside) : [];
}

/** A list in the drawer, such as its formers; empty where there is none or it is no list. */
export function listOf(drawer: DrawerText, key: string): readonly unknown[] {
  const inside = drawer[key];
  return Array.isArray(inside) ? (inside as readonly unknown[]) : [];
}

/** Names of parts of the library that the drawer holds, of one category. */
export function fromLibrary(drawer: DrawerText, category: PartCategory): readonly string[] {
  return listOf(drawer, 'fromLibrary').filter((name): name is string => typeof name === 'string' && Object.hasOwn(LIBRARY[category], name));
}

/** The names the drawer has from the library, with one put in or taken out. */
export function ticked(drawer: DrawerText, name: string, into: boolean): readonly unknown[] {
  const others = listOf(drawer, 'fromLibrary').filter((n) => n !== name);
  return into ? [...others, name] : others;
}

/** A name that no part of the category has yet. */
export function freeName(drawer: DrawerText, category: PartCategory, wanted: string): string {
  const taken = new Set([...Object.keys(LIBRARY[category]), ...entriesOf(drawer, category).map(([name]) => name)]);
  let name = wanted;
  for (let n = 2; taken.has(name); n++) name = `${wanted} ${n}`;
  return name;
}

/** The parts of a category with one under another name, in the same order; null where that name is taken or empty. */
export function renamed(drawer: DrawerText, category: PartCategory, from: string, to: string): Readonly<Record<string, unknown>> | null {
  const all = entriesOf(drawer, category);
  if (to === '' || all.some(([name]) => name === to)) return null;
  return Object.fromEntries(all.map(([name, part]) => [name === from ? to : name, part]));
}

/** The parts of a category without one; undefined where it was the last. */
export function without(drawer: DrawerText, category: PartCategory, name: string): Readonly<Record<string, unknown>> | undefined {
  const left = entriesOf(drawer, category).filter(([n]) => n !== name);
  return left.length > 0 ? Object.fromEntries(left) : undefined;
}

/** What is wrong below a path of the document, path and all. */
export function problemsBelow(desk: Desk, path: Path): readonly Problem[] {
  const own = showPath(path);
  return desk.bench.problems.value.filter((p) => p.path === own || p.path.startsWith(`${own}.`) || p.path.startsWith(`${own}[`));
}

/** What a drawer holds, in one line. */
export function summaryOf(drawer: DrawerText): string {
  const counts = [
    ...PART_CATEGORIES.map((c) => {
      const names = new Set([...fromLibrary(drawer, c), ...entriesOf(drawer, c).map(([name]) => name)]);
      return [names.size, NAMES[c]] as const;
    }),
    ...LISTS.map(([key, name]) => [listOf(drawer, key).reduce<number>((sum, item) => sum + countOf(item), 0), name] as const),
  ];
  const there = counts.filter(([n]) => n > 0).map(([n, name]) => `${n} ${n === 1 ? name : `${name}s`}`);
  const garden = isObject(drawer.garden) ? ['a garden for a long wire'] : [];
  const all = [...there, ...garden];
  if (all.length === 0) return 'Nothing is in the drawer yet.';
  const last = all.at(-1)!;
  return `In the drawer: ${all.length === 1 ? last : `${all.slice(0, -1).join(', ')} and ${last}`}.`;
}

const NAMES: Readonly<Record<PartCategory, string>> = {
  capacitors: 'variable capacitor',
  detectors: 'detector',
  earpieces: 'earpiece',
  transformers: 'transformer',
  wires: 'wire',
};
const LISTS = [
  ['formers', 'former'],
  ['rods', 'rod'],
  ['resistors', 'resistor'],
  ['chokes', 'choke'],
  ['fixedCapacitors', 'fixed capacitor'],
] as const;

/** Rods come in several of a kind. */
const countOf = (item: unknown): number => (isObject(item) && typeof item.count === 'number' && item.count >= 1 ? item.count : 1);

export const isObject = (o: unknown): o is Readonly<Record<string, unknown>> => typeof o === 'object' && o !== null && !Array.isArray(o);
