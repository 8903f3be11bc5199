import { assemble, GivenError, type Outcome, standAt } from '#engine';
import { glance, type Situation } from '#find';
import type { Part, PartCategory, Parts } from '#parts';
import type { Shelf, UsedPart } from '#set-file';

/** Another part in the place of one, tried in the set. */
export interface Substitute {
  readonly category: PartCategory;
  readonly title: string;
  /** change of the best band's headroom [dB]; null where nothing was heard before */
  readonly gain: number | null;
  readonly outcome: Outcome;
}

/** A part that costs more than this is none to name [dB], and so many of each kind are enough. */
const WORST = -10;
const MOST = 4;
/** Wire is taken for another's place from this share of its thickness to that. */
const THIN = 0.7;
const THICK = 1.5;
/** A variable capacitor this many times as large or small is for another band. */
const KIN = 3;

/**
 * Parts of the drawer and the library that could stand in for those of the set, each tried by working the set out anew with the dial set
 * afresh; the best of each kind, best first.
 */
export function substitutes(now: Situation, index: number, shelf: Shelf, parts: Parts, used: readonly UsedPart[]): readonly Substitute[] {
  const { set } = now;
  const { tank } = set;
  const before = heard(now, index)!;
  const names = new Set(used.map((u) => u.name));
  const of = <T>(category: PartCategory, from: Readonly<Record<string, T>>, put: (part: T) => Situation['set'] | null): Substitute[] =>
    Object.entries(from)
      .filter(([name]) => !names.has(name))
      .flatMap(([name, part]) => {
        const changed = put(part);
        const after = changed && heard({ ...now, set: changed }, index);
        if (!after || after.outcome === 'silent' || after.outcome === 'out-of-reach') return [];
        const gain = before.outcome === 'out-of-reach' ? null : after.headroom - before.headroom;
        if (gain !== null && gain < WORST) return [];
        return [{ category, title: titleOf(parts[category][name], name), gain, outcome: after.outcome, headroom: after.headroom }];
      })
      .sort((a, b) => b.headroom - a.headroom)
      .slice(0, MOST)
      .map(({ headroom: _, ...rest }) => rest);
  return [
    ...of('wires', shelf.wires, (wire) => {
      const { coil } = tank;
      if (coil.kind !== 'geometry') return null;
      const ratio = wire.wireDiameter / coil.wireDiameter;
      const fits = ratio >= THIN && ratio <= THICK && wire.wireDiameter < coil.pitch;
      return fits ? { ...set, tank: { ...tank, coil: { ...coil, ...wire } } } : null;
    }),
    ...of('capacitors', shelf.capacitors, (capacitor) => {
      const ratio = capacitor.maximum / tank.capacitor.maximum;
      return ratio <= KIN && ratio >= 1 / KIN ? { ...set, tank: { ...tank, capacitor } } : null;
    }),
    ...of('detectors', shelf.detectors, (detector) => ({ ...set, detector: { ...detector, temperature: set.detector.temperature } })),
    ...of('transformers', set.phones.transformer ? shelf.transformers : {}, (transformer) => ({
      ...set,
      phones: { ...set.phones, transformer },
    })),
    ...of('earpieces', shelf.earpieces, (earpiece) => ({ ...set, phones: { ...set.phones, earpiece } })),
  ];
}

const titleOf = (part: Part | undefined, name: string): string => part?.title ?? name;

/** Null for what cannot be built. */
function heard(s: Situation, index: number): { readonly headroom: number; readonly outcome: Outcome } | null {
  try {
    return glance(standAt(s.place, assemble(s.set, s.listener)), index);
  } catch (e) {
    if (e instanceof GivenError) return null;
    throw e;
  }
}
