import type { AerialDescription } from '#engine';
import { LIBRARY } from '#parts';
import { PART_SLOTS, type UsedPart, WIRE_VALUES, writeSetFile } from '#set-file';
import { writeExact } from '#units';
import { onBench } from '../bench.ts';
import type { Answer, Document } from '../document.ts';

type Plain = Readonly<Record<string, unknown>>;

/** A drawer as a file gives it. */
export type WrittenDrawer = Readonly<Record<string, unknown>>;

/**
 * The drawer that holds the parts of a set and nothing else: those of the library by their names, all others by their values.
 *
 * How much wire there is is not said, and so there is as much as is needed.
 */
export function drawerOfSet(document: Document): Promise<Answer<WrittenDrawer>> {
  return onBench(document, ({ file, parts }) => {
    const set = JSON.parse(writeSetFile(file)) as Plain;
    const drawer: Record<string, unknown> = {};
    const named: string[] = [];
    for (const { path: keys, category } of PART_SLOTS) {
      const path = keys.join('.');
      const used = parts.find((p) => p.path === path);
      if (used && Object.hasOwn(LIBRARY[category], used.name)) named.push(used.name);
      else {
        const values = valuesOf(set, path);
        if (values) drawer[category] = { [used?.name ?? 'from this set']: { ...titleOf(used), values } };
      }
    }
    if (named.length > 0) drawer.fromLibrary = named;
    const coil = at(set, 'tank.coil');
    if (coil?.kind === 'geometry')
      drawer.formers = [
        { title: 'former of this set', diameter: coil.innerDiameter, ...(coil.former !== undefined && { stays: coil.former }) },
      ];
    const resistors = [at(set, 'phones')?.load].filter((r) => r !== undefined);
    if (resistors.length > 0) drawer.resistors = resistors;
    const choke = at(set, 'phones')?.choke;
    if (choke !== undefined) drawer.chokes = [choke];
    const { bypass } = file.phones;
    const fixed = [
      ...(bypass > 0 ? [at(set, 'phones')?.bypass] : []),
      at(set, 'tank.capacitor')?.parallel,
      at(set, 'tank.aerialCoupling')?.capacitance,
    ].filter((c) => c !== undefined && c !== '0 F');
    if (fixed.length > 0) drawer.fixedCapacitors = fixed;
    Object.assign(drawer, aerialStock(file.aerial, at(set, 'aerial') ?? {}));
    return drawer;
  });
}

const at = (set: Plain, path: string): Plain | undefined =>
  path.split('.').reduce<unknown>((o, key) => (typeof o === 'object' && o !== null ? (o as Plain)[key] : undefined), set) as
    | Plain
    | undefined;

const titleOf = (used: UsedPart | undefined): { readonly title?: string } => (used ? { title: used.title } : {});

function valuesOf(set: Plain, path: string): Plain | null {
  if (path === 'tank.coil.wire') {
    const coil = at(set, 'tank.coil');
    if (coil?.kind !== 'geometry') return null;
    return Object.fromEntries(WIRE_VALUES.filter((key) => coil[key] !== undefined).map((key) => [key, coil[key]]));
  }
  const given = at(set, path);
  if (!given) return null;
  // what is put across a capacitor is a part of its own; an earpiece goes by the name of the part
  const { parallel: _, name: __, ...values } = given;
  return values;
}

/** What the aerial is made of: rods, or a garden with a wire in it. Beams, loops and folded dipoles are not taken apart. */
function aerialStock(aerial: AerialDescription, written: Plain): WrittenDrawer {
  const rods = (length: number, count: number): WrittenDrawer => ({
    rods: [
      {
        title: 'rod of this set',
        length: writeExact(length, 'length'),
        diameter: written.diameter,
        ...(written.metal !== undefined && { metal: written.metal }),
        count,
      },
    ],
  });
  switch (aerial.kind) {
    case 'dipole':
      return rods(aerial.length / 2, 2);
    case 'whip':
      return rods(aerial.length, 1);
    case 'wires':
      if (aerial.shape.kind === 'dipole') return rods(aerial.shape.length / 2, 2);
      return aerial.shape.kind === 'rod' ? rods(aerial.shape.rod.length, 1) : {};
    case 'wire-to-earth':
      if (aerial.horizontal === 0 || aerial.vertical === 0) return {};
      return { garden: { length: written.horizontal, height: written.vertical, earthResistance: written.earthResistance } };
    default:
      return {};
  }
}
