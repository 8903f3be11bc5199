import { writtenDrawer } from '#set-file';
import type { Desk } from '../desk.ts';
import { filesAtHand } from '../files-at-hand.ts';
import { readHostileJson } from '../hostile-json.ts';
import { type GivenFile, textOf } from '../open-files.ts';
import { placeOf } from '../own-place.ts';
import { shippedFiles } from '../shipped.ts';
import { type DrawerText, drawerOf, isObject } from './own-drawer.ts';

/** A drawer from a file, or why it is not taken. */
export type OpenedDrawer = { readonly ok: true } | { readonly ok: false; readonly why: string };

/** The drawer that comes along, of an invented builder. */
const DEMO = 'drawer.json';

/** The drawer as a file of its own, with the place and the listener, so that the command line can search it. */
export function savedDrawer(desk: Desk): { readonly name: string; readonly text: string } {
  const document = isObject(desk.value.value) ? desk.value.value : {};
  const { ear, programme } = document;
  const place = placeOf(desk);
  const file = {
    version: 1,
    name: 'Drawer',
    ...(place && { place }),
    ...(ear !== undefined && { ear }),
    ...(programme !== undefined && { programme }),
    drawer: drawerOf(desk) ?? {},
  };
  return { name: 'drawer.json', text: `${JSON.stringify(file, null, 2)}\n` };
}

/** Takes the drawer of a file that was picked, and nothing else of it; the one that was there can be had back by undo. */
export async function openDrawer(desk: Desk, file: GivenFile): Promise<OpenedDrawer> {
  const text = await textOf(file);
  if (!text.ok) return { ok: false, why: `${file.name} was not opened: ${text.why}.` };
  const json = readHostileJson(text.value);
  if (!json.ok) return { ok: false, why: `${file.name} was not opened: ${json.why}.` };
  const drawer = writtenDrawer(text.value, { read: filesAtHand(desk) });
  if (!drawer) return { ok: false, why: `${file.name} has no drawer in it. A drawer file has "drawer": { ... }.` };
  desk.edit(['drawer'], drawer);
  return { ok: true };
}

/** Takes the drawer that comes along. */
export async function takeDemo(desk: Desk): Promise<OpenedDrawer> {
  const files = await shippedFiles().catch((e: Error) => e);
  if (files instanceof Error) return { ok: false, why: `The demo drawer could not be loaded: ${files.message}.` };
  const { drawer } = JSON.parse(files[DEMO]!) as { readonly drawer: DrawerText };
  desk.edit(['drawer'], drawer);
  return { ok: true };
}

/** Takes the parts of the set on the bench. */
export async function takePartsOfSet(desk: Desk): Promise<OpenedDrawer> {
  const answer = await desk.bench.ask('drawer', 'drawerOfSet', desk.bench.document.value);
  if (!answer) return { ok: false, why: 'The parts of the set could not be read just now. Try again.' };
  if (!answer.ok) return { ok: false, why: `The set cannot be read as it stands: ${answer.problems[0]?.path} ${answer.problems[0]?.why}.` };
  desk.edit(['drawer'], answer.value);
  return { ok: true };
}
