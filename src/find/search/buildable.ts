import type { CoilGeometry, Coupling, SetDescription } from '#engine';
import type { Drawer } from '#set-file';
import { aerialNeeds, HAIR, same } from './buildable-aerial.ts';
import { shelfIn } from './stock.ts';

const alike = (a: unknown, b: unknown): boolean => JSON.stringify(sorted(a)) === JSON.stringify(sorted(b));

/** Keys in order, so that two descriptions compare by what they say. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([k, v]) => [k, sorted(v)]),
  );
}

/**
 * Why a set cannot be built of a drawer; empty where it can.
 *
 * It looks at the finished set and at the drawer as the person wrote it, and shares no rule with what makes sets: the one is held against the other.
 * Bench rules (bending, holding itself, wire for leads) are its own figures, common practice without a source.
 */
export function buildable(set: SetDescription, drawer: Drawer): readonly string[] {
  const shelf = shelfIn(drawer);
  const no: string[] = [];
  const has = (what: string, list: object, wanted: unknown): void => {
    if (!Object.values(list).some((part) => alike(part, wanted))) no.push(`no such ${what} in the drawer`);
  };
  const { tank, phones, aerial } = set;
  const { coil } = tank;
  has('detector', shelf.detectors, set.detector);
  has('earpiece', shelf.earpieces, phones.earpiece);
  if (phones.transformer) has('transformer', shelf.transformers, phones.transformer);
  const fixed = [...drawer.fixedCapacitors];
  const take = (capacitance: number, what: string): void => {
    const k = fixed.indexOf(capacitance);
    if (k < 0) no.push(`no ${what} of ${capacitance} F left`);
    else fixed.splice(k, 1);
  };
  const own = Object.values(shelf.capacitors).filter((c) => alike({ ...c, parallel: 0 }, { ...tank.capacitor, parallel: 0 }));
  const added = own.map((c) => (tank.capacitor.parallel ?? 0) - (c.parallel ?? 0));
  if (own.length === 0) no.push('no such tuning capacitor in the drawer');
  else if (!added.includes(0)) {
    const piece = added.map((a) => fixed.find((c) => Math.abs(c - a) < 1e-6 * c)).find((c) => c !== undefined);
    if (piece === undefined) no.push('no capacitor to put across the tuning capacitor');
    else take(piece, 'capacitor across it');
  }
  if (phones.bypass > 0) take(phones.bypass, 'bypass');
  if (phones.load !== undefined && !drawer.resistors.includes(phones.load)) no.push(`no resistor of ${phones.load} ohm`);
  const { choke } = phones;
  if (choke && !drawer.chokes.some((c) => c.inductance === choke.inductance && c.resistance === choke.resistance))
    no.push(`no choke of ${choke.inductance} H`);
  if (phones.earpiece.kind === 'piezo' && phones.load === undefined && !phones.transformer && !phones.choke)
    no.push('the direct current of the detector has no way');
  if (coil.kind !== 'geometry') return [...no, 'a coil is wound, not given by its values'];

  const wires = Object.entries(shelf.wires)
    .filter(([, w]) => same(w.wireDiameter, coil.wireDiameter) && w.metal === coil.metal && w.surfaceFactor === coil.surfaceFactor)
    .map(([name]) => ({ left: drawer.wires[name]?.length ?? Number.POSITIVE_INFINITY, every: drawer.wires[name]?.tapEvery ?? 0.25 }));
  if (wires.length === 0) no.push('no such wire in the drawer');
  const formers = drawer.formers.filter((f) => same(f.diameter, coil.innerDiameter) && alike(f.stays, coil.former));
  if (formers.length === 0) no.push('nothing of that diameter to wind on');
  if (!Number.isInteger(2 * coil.turns)) no.push('turns are counted in halves');
  if (coil.turns > 1 && coil.pitch < coil.wireDiameter) no.push('turns would lie in each other');
  if (coil.innerDiameter / coil.wireDiameter < 3) no.push('the wire is too thick to be bent so sharply');
  if (coil.former === undefined && coil.innerDiameter / coil.wireDiameter > 25)
    no.push('the wire is too thin for a coil that holds itself');

  const couplings = [tank.aerialCoupling, tank.detectorCoupling].filter((c) => c !== undefined);
  for (const c of couplings) {
    if (c.kind === 'series-capacitor') take(c.capacitance, 'coupling capacitor');
    if (c.kind === 'tap' && !(c.turns > 0 && c.turns < coil.turns)) no.push('a tap lies off the coil');
    if (c.kind === 'tap' && !wires.some((w) => Number.isInteger(c.turns / w.every))) no.push('no tap can be soldered there');
  }
  const links = couplings.filter((c) => c.kind === 'link');
  const beside = links.filter((l) => same(l.innerDiameter, coil.innerDiameter));
  const along = coil.turns * coil.pitch + beside.reduce((sum, l) => sum + Math.max(0, l.gap) + l.turns * l.pitch, 0);
  if (!formers.some((f) => f.length === undefined || along + coil.wireDiameter <= f.length + HAIR))
    no.push('the winding is longer than what it is wound on');
  for (const l of links) {
    if (!beside.includes(l)) no.push(...nested(l, coil, drawer));
    if (!same(l.wireDiameter, coil.wireDiameter)) no.push('the link is of another wire');
  }
  const taken = woundLength(coil.turns, coil.innerDiameter + coil.wireDiameter, coil.pitch) + 2 * coil.leadLength + tank.wiring.length;
  const wound = links.reduce((sum, l) => sum + woundLength(l.turns, l.innerDiameter + l.wireDiameter, l.pitch), taken);
  if (!wires.some((w) => wound <= w.left * (1 + 1e-9))) no.push('there is not so much wire');
  return [...no, ...aerialNeeds(aerial, drawer, wound, coil, tank.aerialCoupling)];
}

/** What is wrong with a link on something else than the coil's former: it is wound, taken off, and pushed into the coil or over it. */
function nested(l: Extract<Coupling, { kind: 'link' }>, coil: CoilGeometry, drawer: Drawer): string[] {
  const no: string[] = [];
  const bits = drawer.formers.filter((f) => same(f.diameter, l.innerDiameter) && f.stays === undefined);
  if (!bits.some((f) => (f.length ?? Number.POSITIVE_INFINITY) + HAIR >= l.turns * l.pitch + l.wireDiameter))
    no.push('nothing to wind the link on');
  if (l.innerDiameter < 3 * l.wireDiameter || l.innerDiameter > 25 * l.wireDiameter)
    no.push('the link cannot be bent, or does not hold itself');
  const within = l.innerDiameter + 2 * l.wireDiameter < coil.innerDiameter && coil.former === undefined;
  const over = l.innerDiameter > coil.innerDiameter + 2 * coil.wireDiameter;
  if (!within && !over) no.push('the link goes neither into the coil nor over it');
  return no;
}

const woundLength = (turns: number, across: number, pitch: number): number => turns * Math.sqrt((Math.PI * across) ** 2 + pitch ** 2);
