import type { PartCategory } from '#parts';
import { type Field, fieldAt, PART_SLOTS, WIRE_VALUES } from '#set-file';
import type { Path } from '../edit.ts';

/** The form of a part's values, at the path it has in the drawer. */
export function partField(category: PartCategory, name: string, values: unknown): Field | null {
  const { path } = PART_SLOTS.find((s) => s.category === category)!;
  // a wire is given by some of its coil's own values
  const slot = category === 'wires' ? path.slice(0, -1) : path;
  const given = category === 'wires' ? { kind: 'geometry', ...(values as object) } : values;
  const document = slot.reduceRight<unknown>((inside, key) => ({ [key]: inside }), given);
  const field = fieldAt(document, slot);
  if (!field) return null;
  const own = moved({ ...field, part: null, required: true }, slot.length, ['drawer', category, name, 'values']);
  if (category !== 'wires') return own;
  return own.kind === 'forms' ? { ...own, kind: 'group', fields: own.fields.filter((f) => WIRE_VALUES.includes(f.key)) } : null;
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
