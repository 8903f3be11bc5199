import { normalQuantile, type SetDescription } from '#engine';
import type { UsedPart } from '#set-file';
import { writeForPeople } from '#units';
import type { Draft, Scatter } from './draft.ts';

/** A band holds about so many of all parts (model.md, "How to read the formulas"): its ends stand at the tenth and the ninetieth of a hundred. */
const WITHIN = 0.8;
const EDGE = normalQuantile(0.5 + WITHIN / 2);

/**
 * The scatter of the parts a set is made of, by the bands they carry.
 *
 * The value meant is taken as the median, the ends of the band at z = -1.28 and 1.28; between and beyond, the logarithm goes straight in z on either side where all are of one
 * sign, else the value itself. A band that does not hold the value has no say on the side where it lies.
 */
export function partScatter(set: SetDescription, parts: readonly UsedPart[]): readonly Scatter[] {
  return parts.flatMap((part) =>
    part.band.flatMap(({ key, low, high, unit }): Scatter[] => {
      const at = placeOf(part.path);
      const nominal = at === null ? undefined : read(set, at)?.[key];
      if (at === null || typeof nominal !== 'number' || low === high) return [];
      return [
        {
          key: `${at.join('.')}.${key}`,
          label: `${key.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`)} of ${part.title}`,
          extent: `${show(low, unit)} to ${show(high, unit)}, for about ${100 * WITHIN} of 100`,
          ofTheSet: true,
          apply: (draft, z) => write(draft, at, key, within(nominal, low, high, z)),
        },
      ];
    }),
  );
}

function within(nominal: number, low: number, high: number, z: number): number {
  const end = z < 0 ? Math.min(low, nominal) : Math.max(high, nominal);
  const far = Math.abs(z) / EDGE;
  return nominal * end > 0 && low * high > 0 ? nominal * (end / nominal) ** far : nominal + (end - nominal) * far;
}

/** Where a part's values stand in a set; those of a wire stand in its coil. */
function placeOf(path: string): readonly string[] | null {
  const keys = path.split('.');
  return path === 'tank.coil.wire' ? ['tank', 'coil'] : ['detector', 'phones', 'tank'].includes(keys[0]!) ? keys : null;
}

type Plain = Readonly<Record<string, unknown>>;

function read(set: SetDescription, at: readonly string[]): Plain | undefined {
  return at.reduce<Plain | undefined>((o, key) => o?.[key] as Plain | undefined, set as unknown as Plain);
}

function write(draft: Draft, at: readonly string[], key: string, value: number): Draft {
  const put = (o: Plain, [first, ...rest]: readonly string[]): Plain =>
    first === undefined ? { ...o, [key]: value } : { ...o, [first]: put(o[first] as Plain, rest) };
  return { ...draft, set: held(put(draft.set as unknown as Plain, at) as unknown as SetDescription) };
}

/** Values that must keep an order keep it: a capacitor's ends, a surface no smoother than smooth, wire that fits its pitch. */
function held(set: SetDescription): SetDescription {
  const { capacitor, coil } = set.tank;
  const maximum = Math.max(capacitor.maximum, 1.01 * capacitor.minimum);
  const wound =
    coil.kind === 'geometry'
      ? {
          ...coil,
          surfaceFactor: Math.max(1, coil.surfaceFactor),
          wireDiameter: Math.min(coil.wireDiameter, coil.innerDiameter, coil.turns > 1 ? coil.pitch : coil.wireDiameter),
        }
      : coil;
  return { ...set, tank: { ...set.tank, coil: wound, capacitor: { ...capacitor, maximum } } };
}

const DIMENSION = {
  F: 'capacitance',
  H: 'inductance',
  ohm: 'resistance',
  A: 'current',
  m: 'diameter',
  V: 'voltage',
  'A/V^2': 'transconductanceFactor',
} as const;
const show = (value: number, unit: string): string =>
  unit in DIMENSION ? writeForPeople(value, DIMENSION[unit as keyof typeof DIMENSION]) : `${value}`;
