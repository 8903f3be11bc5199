import type { DetectorDescription, Earpiece, Metal, Transformer, VariableCapacitor } from '#engine';
import { LIBRARY, PART_CATEGORIES, type Parts } from '#parts';
import { type Drawer, type Shelf, shelfOf, type WireOnShelf } from '#set-file';

export interface Named<T> {
  readonly name: string;
  readonly part: T;
}

export interface StockWire extends WireOnShelf {
  /** how much there is [m]; Infinity where nothing is said */
  readonly length: number;
  /** from one place where a tap can be soldered to the next [turns] */
  readonly tapEvery: number;
}

export interface StockFormer {
  readonly diameter: number;
  /** that can be wound on [m]; Infinity where nothing is said */
  readonly length: number;
  readonly stays?: { readonly permittivity: number; readonly lossTangent: number };
}

export interface StockRod {
  readonly length: number;
  readonly diameter: number;
  readonly metal: Metal;
  readonly count: number;
}

/** [ohm], [H] */
export type Load =
  | { readonly kind: 'resistor'; readonly resistance: number }
  | { readonly kind: 'choke'; readonly inductance: number; readonly resistance: number };

/** The drawer as a search looks through it: every list in ascending order, so that neighbours in it are alike. SI units. */
export interface Stock {
  readonly capacitors: readonly Named<VariableCapacitor>[];
  readonly wires: readonly Named<StockWire>[];
  readonly formers: readonly StockFormer[];
  readonly detectors: readonly Named<DetectorDescription>[];
  readonly earpieces: readonly Named<Earpiece>[];
  readonly transformers: readonly Named<Transformer>[];
  readonly rods: readonly StockRod[];
  /** ways for the direct current across the output: resistors, then chokes, each value once */
  readonly loads: readonly Load[];
  /** different values, and how many there are of each */
  readonly fixedCapacitors: readonly { readonly capacitance: number; readonly count: number }[];
  readonly garden: { readonly length: number; readonly height: number; readonly earthResistance: number } | null;
}

export function stockOf(drawer: Drawer): Stock {
  const shelf = shelfIn(drawer);
  const named = <T>(list: Readonly<Record<string, T>>, by: (part: T) => number): Named<T>[] =>
    Object.entries(list)
      .map(([name, part]) => ({ name, part }))
      .sort((a, b) => by(a.part) - by(b.part) || (a.name < b.name ? -1 : 1));
  const wires = Object.fromEntries(
    Object.entries(shelf.wires).map(([name, wire]) => {
      const own = drawer.wires[name];
      return [name, { ...wire, length: own?.length ?? Number.POSITIVE_INFINITY, tapEvery: own?.tapEvery ?? 0.25 }];
    }),
  );
  const counts = new Map<number, number>();
  for (const c of drawer.fixedCapacitors) counts.set(c, (counts.get(c) ?? 0) + 1);
  return {
    capacitors: named(shelf.capacitors, (c) => c.maximum),
    wires: named<StockWire>(wires, (w) => w.wireDiameter),
    formers: drawer.formers
      .map(({ diameter, length, stays }) => ({ diameter, length: length ?? Number.POSITIVE_INFINITY, ...(stays && { stays }) }))
      .sort((a, b) => a.diameter - b.diameter),
    detectors: named(shelf.detectors, () => 0),
    earpieces: named(shelf.earpieces, () => 0),
    transformers: named(shelf.transformers, (t) => t.ratio),
    rods: drawer.rods.map(({ length, diameter, metal, count }) => ({ length, diameter, metal, count })).sort((a, b) => a.length - b.length),
    loads: loadsOf(drawer),
    fixedCapacitors: [...counts].map(([capacitance, count]) => ({ capacitance, count })).sort((a, b) => a.capacitance - b.capacitance),
    garden: drawer.garden ?? null,
  };
}

function loadsOf(drawer: Drawer): readonly Load[] {
  const chokes = [...drawer.chokes].sort((a, b) => a.inductance - b.inductance || a.resistance - b.resistance);
  return [
    ...[...new Set(drawer.resistors)].sort((a, b) => a - b).map((resistance) => ({ kind: 'resistor' as const, resistance })),
    ...chokes
      .filter((c, k) => c.inductance !== chokes[k - 1]?.inductance || c.resistance !== chokes[k - 1]?.resistance)
      .map(({ inductance, resistance }) => ({ kind: 'choke' as const, inductance, resistance })),
  ];
}

/** Whether nothing lets the direct current of a detector past any of the earpieces: those block it that are piezo. */
export const lacksDirectPath = ({ earpieces, loads, transformers }: Stock): boolean =>
  earpieces.every((e) => e.part.kind === 'piezo') && loads.length === 0 && transformers.length === 0;

const shelves = new WeakMap<Drawer, Shelf>();

/** Every part of a drawer that can be put in, made once for each drawer. */
export function shelfIn(drawer: Drawer): Shelf {
  let shelf = shelves.get(drawer);
  if (!shelf) {
    shelf = shelfOf(partsOf(drawer));
    shelves.set(drawer, shelf);
  }
  return shelf;
}

/** The drawer's own parts, and those of the library that it says it holds. */
export function partsOf(drawer: Drawer): Parts {
  const names = new Set(drawer.fromLibrary);
  return Object.fromEntries(
    PART_CATEGORIES.map((category) => [
      category,
      { ...Object.fromEntries(Object.entries(LIBRARY[category]).filter(([name]) => names.has(name))), ...drawer[category] },
    ]),
  ) as unknown as Parts;
}
