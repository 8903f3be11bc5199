import { type core, safeParse } from 'zod/mini';
import type { Place } from '#engine';
import { LIBRARY, PART_CATEGORIES, type Part } from '#parts';
import { nearestWord, showGiven } from '#units';
import { assembleAerial } from './assemble/aerial.ts';
import { assembleDetector } from './assemble/detector.ts';
import { assembleEar } from './assemble/ear.ts';
import { assemblePhones } from './assemble/phones.ts';
import { assemblePlace } from './assemble/place.ts';
import { assembleTank } from './assemble/tank.ts';
import { wiresPath } from './assemble/wires-path.ts';
import { checkAerial } from './checks/aerial.ts';
import { checkDetector } from './checks/detector.ts';
import { checkEar } from './checks/ear.ts';
import { checkPhones } from './checks/phones.ts';
import { checkPlace } from './checks/place.ts';
import { checkTank } from './checks/tank.ts';
import { namedWires } from './checks/wires.ts';
import { complain } from './forms/complaints.ts';
import { placeForm } from './forms/place-form.ts';
import { drawerFileForm, type SetForm, setForm } from './forms/set-form.ts';
import { type Mark, type Path, Positions } from './json/positions.ts';
import type { JsonObject } from './json/scan.ts';
import { CHAIN, type MigrationChain } from './migrate.ts';
import { type Problem, type Report, readPath, showPath } from './problem.ts';
import { type Context, note } from './resolve/context.ts';
import { type Assembled, assembleFiles, isObject } from './resolve/files.ts';
import { type NamedPart, resolveParts, SLOTS } from './resolve/parts.ts';
import { resolveTables } from './resolve/tables.ts';
import type { DrawerFile, Outcome, ReadOptions, SetFile, Source, UsedPart } from './set-file.ts';
import { bandsOf, checkPart } from './shelf.ts';

/**
 * Reads a set file with everything it refers to.
 *
 * Nothing is thrown for anything the text may hold: what cannot be used comes back as problems, each with its line.
 *
 * @param text - the file
 * @param chain - versions that can be read; another than the one of this release only in tests
 */
export function readSetFile(
  text: string,
  options: ReadOptions = {},
  chain: MigrationChain = CHAIN,
): Outcome<{ readonly value: SetFile; readonly parts: readonly UsedPart[]; readonly source: Source }> {
  const context = begin(options, chain);
  const assembled = assembleFiles(context, text, null);
  if (!assembled) return fail(context);
  const { sections } = assembled;
  const named = resolveParts(context, sections, assembled.drawers, LIBRARY);
  resolveTables(context, sections);
  const report = reporter(context, sections);
  const form = readForm(context, setForm, sections, [], report);
  checkDrawer(sections, report);
  if (!form || context.problems.length > 0) return fail(context);
  checkSet(form, report);
  if (context.problems.length > 0) return fail(context);
  return { ok: true, value: assembleSet(form), parts: named.map(usedPart), source: sourceOf(context, sections, form.aerial) };
}

/** Reads the place of a file and nothing else: the file need not hold a set. */
export function readPlaceFile(text: string, options: ReadOptions = {}): Outcome<{ readonly value: Place; readonly source: Source }> {
  const context = begin(options, CHAIN);
  const assembled: Assembled | null = assembleFiles(context, text, null);
  if (!assembled) return fail(context);
  const { sections } = assembled;
  resolveTables(context, { ...sections, detector: undefined });
  const report = reporter(context, sections);
  const form = readForm(context, placeForm, sections.place, ['place'], report);
  if (!form || context.problems.length > 0) return fail(context);
  checkPlace(form, report);
  if (context.problems.length > 0) return fail(context);
  return { ok: true, value: assemblePlace(form), source: sourceOf(context, sections) };
}

/** Reads place, listener and drawer of a file: it need not hold a set, and what it says of one is left aside. */
export function readDrawerFile(text: string, options: ReadOptions = {}): Outcome<{ readonly value: DrawerFile; readonly source: Source }> {
  const context = begin(options, CHAIN);
  const assembled: Assembled | null = assembleFiles(context, text, null);
  if (!assembled) return fail(context);
  const { sections } = assembled;
  resolveTables(context, { ...sections, detector: undefined });
  const report = reporter(context, sections);
  const wanted = Object.keys(drawerFileForm._zod.def.shape).filter((key) => sections[key] !== undefined);
  const given = Object.fromEntries(wanted.map((key) => [key, sections[key]])) as JsonObject;
  const form = readForm(context, drawerFileForm, given, [], report);
  checkDrawer(sections, report);
  if (!form || context.problems.length > 0) return fail(context);
  checkPlace(form.place, report);
  checkEar(form.ear, report);
  if (context.problems.length > 0) return fail(context);
  const { name, place, ear, programme, drawer } = form;
  return {
    ok: true,
    value: { name, place: assemblePlace(place), ear: assembleEar(ear), programme, drawer },
    source: sourceOf(context, sections),
  };
}

function begin(options: ReadOptions, chain: MigrationChain): Context {
  return { positions: new Positions(), problems: [], chain, read: options.read ?? null, files: [], unresolved: [] };
}

/** The problems in the order in which a person meets them. */
function fail(context: Context): { readonly ok: false; readonly problems: readonly Problem[] } {
  const problems = context.problems.toSorted(
    (a, b) =>
      Number(a.file !== null) - Number(b.file !== null) ||
      (a.file ?? '').localeCompare(b.file ?? '') ||
      a.line - b.line ||
      a.column - b.column,
  );
  return { ok: false, problems };
}

/** Notes problems of what is there at its value, of what is not there at what should hold it, and of foreign keys at the key. */
function reporter(context: Context, sections: JsonObject): Report {
  return (path, given, why, mend) => note(context, sections, path, why === 'there is no such key here' ? 'key' : 'value', given, why, mend);
}

function readForm<T extends core.$ZodType>(context: Context, schema: T, value: unknown, base: Path, report: Report): core.output<T> | null {
  const given = isObject(value) && base.length === 0 ? withoutFileKeys(value) : value;
  const parsed = safeParse(schema, given);
  if (parsed.success) return parsed.data;
  const told = context.unresolved.map(showPath);
  const news = parsed.error.issues.filter((issue) => {
    const path = showPath([...base, ...(issue.path as Path)]);
    return !told.some((t) => path === t || path.startsWith(`${t}.`) || path.startsWith(`${t}[`));
  });
  complain(schema, given, news, base, report, alsoKnown);
  return null;
}

/** What concerns the file and not the set; foreign keys beside them have been complained of. */
function withoutFileKeys(sections: JsonObject): JsonObject {
  return Object.fromEntries(Object.entries(sections).filter(([key]) => Object.hasOwn(setForm._zod.def.shape, key)));
}

const PART_SLOTS = new Set(SLOTS.map((s) => s.path.join('.')));

/** Keys that stand for a file or a part, and are gone when a form is read. */
function alsoKnown(path: Path): readonly string[] {
  if (PART_SLOTS.has(path.join('.'))) return ['part'];
  return path.length === 1 && (path[0] === 'place' || path[0] === 'drawer') ? ['file'] : [];
}

/** Parts of the user's own are looked into whether they are used or not. */
function checkDrawer({ drawer }: JsonObject, report: Report): void {
  if (!isObject(drawer)) return;
  for (const category of PART_CATEGORIES) {
    const shelf = drawer[category];
    if (!isObject(shelf)) continue;
    for (const [name, part] of Object.entries(shelf))
      if (isObject(part) && isObject(part.values) && (part.band === undefined || isObject(part.band)))
        checkPart(category, part as unknown as Part, ['drawer', category, name], report);
  }
  if (!Array.isArray(drawer.fromLibrary)) return;
  const known = PART_CATEGORIES.flatMap((category) => Object.keys(LIBRARY[category]));
  drawer.fromLibrary.forEach((name, i) => {
    if (typeof name !== 'string' || known.includes(name)) return;
    const near = nearestWord(name, known);
    report(
      ['drawer', 'fromLibrary', i],
      showGiven(name),
      'the library has no such part',
      near ? `Did you mean "${near}"?` : `Known: ${known.join(', ')}.`,
    );
  });
}

function checkSet(form: SetForm, report: Report): void {
  if (form.place) checkPlace(form.place, report);
  checkAerial(form.aerial, form.place?.site.height, report);
  checkTank(form.tank, form.aerial.kind === 'coil', report);
  checkDetector(form.detector, ['detector'], report);
  checkPhones(form.phones, report);
  checkEar(form.ear, report);
}

function assembleSet(form: SetForm): SetFile {
  return {
    name: form.name,
    notes: form.notes,
    ...(form.place && { place: assemblePlace(form.place) }),
    aerial: assembleAerial(form.aerial, form.place?.site.height),
    tank: assembleTank(form.tank),
    detector: assembleDetector(form.detector),
    phones: assemblePhones(form.phones),
    ear: assembleEar(form.ear),
    programme: form.programme,
    drawer: form.drawer,
  };
}

function usedPart({ path, category, name, part }: NamedPart): UsedPart {
  return {
    path,
    name,
    title: part.title ?? name,
    source: part.source ?? "the user's own part",
    estimate: part.estimate ?? false,
    band: bandsOf(category, part),
  };
}

function sourceOf(context: Context, sections: JsonObject, aerial?: SetForm['aerial']): Source {
  return {
    files: context.files,
    locate(path): Mark {
      const given = readPath(path);
      // the engine groups what a file lists flat: `stations[0].position.distance`
      const keys = (aerial?.kind === 'wires' ? wiresPath(given, namedWires(aerial)) : given).filter(
        (key, i, all) => !(all[1] === 'stations' && i === 3 && (key === 'position' || key === 'modulation')),
      );
      return context.positions.locate(sections, keys) ?? { file: null, line: 1, column: 1 };
    },
  };
}
