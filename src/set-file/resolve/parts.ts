import { PART_CATEGORIES, type Part, type PartCategory, type Parts } from '#parts';
import { nearestWord, showGiven } from '#units';
import type { Path } from '../json/positions.ts';
import type { JsonObject } from '../json/scan.ts';
import { showPath } from '../problem.ts';
import { type Context, note } from './context.ts';
import { isObject } from './files.ts';

/** A place in a set file where a part may be named in place of its values. */
interface Slot {
  readonly path: readonly string[];
  readonly category: PartCategory;
}

export const SLOTS: readonly Slot[] = [
  { path: ['detector'], category: 'detectors' },
  { path: ['phones', 'earpiece'], category: 'earpieces' },
  { path: ['phones', 'transformer'], category: 'transformers' },
  { path: ['tank', 'capacitor'], category: 'capacitors' },
  { path: ['tank', 'coil', 'wire'], category: 'wires' },
];

/** What a wire gives to the coil that is wound of it. */
export const WIRE_VALUES: readonly string[] = ['wireDiameter', 'metal', 'surfaceFactor'];

/** A part that was named, before its band is read. */
export interface NamedPart {
  readonly path: string;
  readonly category: PartCategory;
  readonly name: string;
  readonly part: Part;
}

/** The ways to give one and the same thing: a value of the user's in one way drops the part's in the others. */
const ALTERNATIVES: readonly (readonly string[])[] = [['voltage', 'current'], ['points'], ['csv']];

/** Puts the values of named parts under the user's own. The drawer's parts come before those of the library. */
export function resolveParts(context: Context, sections: JsonObject, drawers: readonly JsonObject[], library: Parts): NamedPart[] {
  const named: NamedPart[] = [];
  for (const { path, category } of SLOTS) {
    const owner = path.slice(0, -1).reduce<unknown>((o, key) => (isObject(o) ? o[key] : undefined), sections);
    const key = path.at(-1)!;
    if (!isObject(owner) || !isObject(owner[key])) continue;
    const given = owner[key];
    if (given.part === undefined) continue;
    const part = findPart(context, sections, [...path, 'part'], given.part, category, drawers, library);
    if (!part) {
      // the values of a wire are missing from its coil
      context.unresolved.push(category === 'wires' ? path.slice(0, -1) : path);
      continue;
    }
    named.push({ path: showPath(path), category, name: given.part as string, part });
    if (category === 'wires') {
      for (const extra of Object.keys(given))
        if (extra !== 'part')
          note(
            context,
            sections,
            [...path, extra],
            'key',
            JSON.stringify(extra),
            'nothing can stand beside "part" here',
            `Write it in the coil itself.`,
          );
      underlay(context, owner, part.values, context.positions.entryOf(given, 'part'));
      delete owner.wire;
    } else {
      const mark = context.positions.entryOf(given, 'part');
      delete given.part;
      underlay(context, given, category === 'earpieces' ? { name: part.title ?? named.at(-1)!.name, ...part.values } : part.values, mark);
    }
  }
  return named;
}

/** Adds the values of a part to an object where it does not have them; a complaint about them shows where the part is named, or stands in the drawer. */
function underlay(
  context: Context,
  own: JsonObject,
  values: Readonly<Record<string, unknown>>,
  mark: ReturnType<Context['positions']['entryOf']>,
): void {
  const chosen = ALTERNATIVES.find((keys) => keys.some((key) => own[key] !== undefined));
  const dropped = chosen ? ALTERNATIVES.filter((keys) => keys !== chosen).flat() : [];
  for (const [key, value] of Object.entries(values)) {
    if (own[key] !== undefined || dropped.includes(key)) continue;
    own[key] = value;
    const at = context.positions.entryOf(values, key) ?? mark;
    if (at) context.positions.entry(own, key, at.key, at.value);
  }
}

function findPart(
  context: Context,
  sections: JsonObject,
  path: Path,
  name: unknown,
  category: PartCategory,
  drawers: readonly JsonObject[],
  library: Parts,
): Part | null {
  if (typeof name !== 'string') {
    note(
      context,
      sections,
      path,
      'value',
      showGiven(name),
      'the name of a part is wanted here',
      `Write a name from the drawer or the library, such as "${Object.keys(library[category])[0]}".`,
    );
    return null;
  }
  const shelves = [...drawers.map((d) => d[category]), library[category]].filter(isObject);
  const own = isObject(sections.drawer) ? sections.drawer[category] : undefined;
  for (const shelf of shelves) {
    if (!Object.hasOwn(shelf, name)) continue;
    const part = shelf[name];
    if (isObject(part) && isObject(part.values)) return part as unknown as Part;
    // in the drawer of this file it is complained of where it stands
    if (shelf !== own)
      note(
        context,
        sections,
        path,
        'value',
        showGiven(name),
        'that part of the other file has no values',
        'Mend it there, or name another.',
      );
    return null;
  }
  const known = shelves.flatMap((s) => Object.keys(s));
  const near = nearestWord(name, known);
  const elsewhere = PART_CATEGORIES.find((c) => c !== category && Object.hasOwn(library[c], name));
  const why = elsewhere
    ? `it is one of the ${elsewhere}, and one of the ${category} is wanted`
    : `there is no such part among the ${category}`;
  note(
    context,
    sections,
    path,
    'value',
    showGiven(name),
    why,
    near && !elsewhere ? `Did you mean "${near}"?` : `Known: ${[...new Set(known)].join(', ')}.`,
  );
  return null;
}
