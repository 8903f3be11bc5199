import type { Coupling } from '#engine';
import { type Design, LINK, LINKS, NESTED, type RadioDesign } from './design.ts';
import { pitchOf, type Space } from './space.ts';
import type { Stock } from './stock.ts';
import { BEND, CLEARANCE, LEAD, SELF_HOLDING, WIRING } from './winding-rules.ts';

/** What can stand in the way of a winding: wire too thick to be bent so sharply, too thin to hold itself, a former too short, too little wire. */
export type WindingRule = 'bend' | 'self-holding' | 'former-length' | 'wire-length';

export type Wound = Pick<Design, 'former' | 'wire' | 'halves' | 'pitch'>;
type Link = Extract<Coupling, { kind: 'link' }>;

/** The first rule of the bench that a coil by itself breaks; null for none. */
export function coilFault({ stock }: Space, d: Wound): WindingRule | null {
  const former = stock.formers[d.former]!;
  const { wireDiameter, length } = stock.wires[d.wire]!.part;
  if (wireDiameter * BEND > former.diameter) return 'bend';
  if (!former.stays && wireDiameter * SELF_HOLDING < former.diameter) return 'self-holding';
  if ((d.halves / 2) * pitchOf(wireDiameter, d.pitch) + wireDiameter > former.length) return 'former-length';
  return coilWire(stock, d) > length ? 'wire-length' : null;
}

/** Whether coil and link stand on what they are wound on, and the wire does for both and for the aerial. */
export function windable(space: Space, d: RadioDesign): boolean {
  return coilFault(space, d) === null && (d.joint !== LINK || linkStands(space.stock, d)) && wireLeft(space, d);
}

/** How many links there are to choose from: beside the coil on its former, and pushed into it or over it on each other one. */
export const linkCount = (stock: Stock): number => LINKS.length + NESTED.length * stock.formers.length;

/** Former and turns of a link that is wound on another one; null for one beside the coil. */
function nestedIn(at: number): { readonly former: number; readonly turns: number } | null {
  const k = at - LINKS.length;
  return k < 0 ? null : { former: Math.floor(k / NESTED.length), turns: NESTED[k % NESTED.length]! };
}

/** The link of a design, of the coil's wire and spaced as it is. */
export function linkOf(stock: Stock, d: Wound & Pick<Design, 'at'>): Link {
  const { wireDiameter } = stock.wires[d.wire]!.part;
  const pitch = pitchOf(wireDiameter, d.pitch);
  const nested = nestedIn(d.at);
  if (!nested) return { kind: 'link', ...LINKS[d.at]!, innerDiameter: stock.formers[d.former]!.diameter, wireDiameter, pitch };
  const { turns, former } = nested;
  // pushed in until its end is flush with the coil's
  return { kind: 'link', turns, gap: -turns * pitch, innerDiameter: stock.formers[former]!.diameter, wireDiameter, pitch };
}

function linkStands(stock: Stock, d: RadioDesign): boolean {
  const coil = stock.formers[d.former]!;
  const { wireDiameter } = stock.wires[d.wire]!.part;
  const link = linkOf(stock, d);
  const nested = nestedIn(d.at);
  if (!nested) return (d.halves / 2 + link.turns) * link.pitch + link.gap + 2 * wireDiameter <= coil.length;
  const own = stock.formers[nested.former]!;
  // what stays in a link would lie in the coil's field, and no stage knows of it
  if (own.stays || wireDiameter * BEND > own.diameter || wireDiameter * SELF_HOLDING < own.diameter) return false;
  if (link.turns * link.pitch + wireDiameter > own.length) return false;
  const room = 2 * wireDiameter + 2 * CLEARANCE;
  const inside = !coil.stays && own.diameter + room <= coil.diameter;
  return inside || own.diameter >= coil.diameter + room;
}

const wireLeft = (space: Space, d: RadioDesign): boolean =>
  wireNeeded(space, d).every((length, k) => length <= space.stock.wires[k]!.part.length);

/** Length that a design takes of each wire of the drawer [m]. */
function wireNeeded({ stock, aerials }: Space, d: RadioDesign): number[] {
  const need = stock.wires.map(() => 0);
  need[d.wire] = coilWire(stock, d) + (d.joint === LINK ? linkWire(linkOf(stock, d)) : 0);
  for (const { index, length } of aerials[d.aerial]!.wire) need[index] = need[index]! + length;
  return need;
}

function coilWire(stock: Stock, d: Wound): number {
  const { wireDiameter } = stock.wires[d.wire]!.part;
  const { diameter } = stock.formers[d.former]!;
  return (d.halves / 2) * turnOf(diameter + wireDiameter, pitchOf(wireDiameter, d.pitch)) + 2 * leadOf(diameter) + wiringOf(diameter);
}

const linkWire = (l: Link): number => l.turns * turnOf(l.innerDiameter + l.wireDiameter, l.pitch);
const turnOf = (across: number, pitch: number): number => Math.hypot(Math.PI * across, pitch);

/** Straight wire at each end of a coil, and between it and the capacitor both ways [m], to a hundredth of a millimetre. */
export const leadOf = (diameter: number): number => Math.round((LEAD + diameter / 2) * 1e5) / 1e5;
export const wiringOf = (diameter: number): number => Math.round((WIRING + diameter) * 1e5) / 1e5;
