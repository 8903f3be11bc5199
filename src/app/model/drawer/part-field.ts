import type { PartCategory } from '#parts';
import { type Field, fieldAt } from '#set-file';
import type { Path } from '../edit.ts';

/** Where in a set a part of each category stands: the form of that place is the form of the part. */
const SLOTS: Readonly<Record<PartCategory, readonly string[]>> = {
  capacitors: ['tank', 'capacitor'],
  detectors: ['detector'],
  earpieces: ['phones', 'earpiece'],
  transformers: ['phones', 'transformer'],
  wires: ['tank', 'coil'],
};
/** What of a coil is its wire. */
const OF_WIRE: ReadonlySet<string> = new Set(['wireDiameter', 'metal', 'surfaceFactor']);

/** The form of a part's values, at the path it has in the drawer. */
export function partField(category: PartCategory, name: string, values: unknown): Field | null {
  const slot = SLOTS[category];
  const given = category === 'wires' ? { kind: 'geometry', ...(values as object) } : values;
  const document = slot.reduceRight<unknown>((inside, key) => ({ [key]: inside }), given);
  const field = fieldAt(document, slot);
  if (!field) return null;
  const own = moved({ ...field, part: null, required: true }, slot.length, ['drawer', category, name, 'values']);
  if (category !== 'wires') return own;
  return own.kind === 'forms' ? { ...own, kind: 'group', fields: own.fields.filter((f) => OF_WIRE.has(f.key)) } : null;
}

/** A field with everything in it at another place. */
function moved(field: Field, drop: number, to: Path): Field {
  const inside = (f: Field): Field => moved(f, drop, to);
  const own = { ...field, path: [...to, ...field.path.slice(drop)], part: null };
  switch (own.kind) {
    case 'group':
    case 'forms':
      return { ...own, fields: own.fields.map(inside) };
    case 'list':
      return { ...own, items: own.items.map(inside) };
    default:
      return own;
  }
}
