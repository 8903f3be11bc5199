import { EARTH, type Node } from '../circuit/elements.ts';
import type { CoilModel } from './coil-model.ts';
import type { Coil, CoilGeometry, Coupling } from './description.ts';
import { effectiveTurns } from './effective-turns.ts';
import { type LinkCoupling, linkCoupling, type PlacedWinding } from './link-coupling.ts';
import { type Winding, winding, windingInductance } from './winding.ts';
import { windingLoss } from './winding-loss.ts';

export type Role = 'aerial' | 'detector';
export const TOP: Node = 'top';
export const COIL_COLD: Node = 'coil-cold';

/** One winding of the network, hot end first, its copper in series at the cold end. */
export interface CoilBranch {
  readonly name: string;
  readonly hot: Node;
  readonly cold: Node;
  readonly copperName: string;
}

/** The coil cut at its taps, and its links: which windings there are and where they lie. */
export interface CoilBranches {
  readonly branches: readonly CoilBranch[];
  /** how many of them are stretches of the coil, cold end first; links follow */
  readonly stretches: number;
  readonly nodes: Readonly<Record<Role, Node>>;
  inductance(frequency: number): number[][];
  /** copper of each branch [ohm], given that of the whole coil */
  copper(frequency: number, coil: number): number[];
  /** resistance of the branch to direct current [ohm] from the node of a role to the cold end; null where a capacitor blocks it */
  directResistance(role: Role): number | null;
  readonly remarks: readonly string[];
}

interface Link {
  readonly role: Role;
  readonly placed: PlacedWinding;
  readonly copper: (frequency: number) => number;
  readonly toCoil: LinkCoupling;
}

/**
 * Cuts the coil where something taps it and places the links beside it.
 *
 * @param couplings - of the aerial (absent where the coil is the aerial) and of the detector
 * @param cold - node of the coil's cold end
 */
export function coilBranches(coil: Coil, model: CoilModel, couplings: Readonly<Partial<Record<Role, Coupling>>>, cold: Node): CoilBranches {
  const roles = (['aerial', 'detector'] as const).filter((r) => couplings[r] !== undefined);
  const tapped = roles.flatMap((r) => {
    const c = couplings[r]!;
    return c.kind === 'tap' && c.turns < model.turns ? [c.turns] : [];
  });
  const taps = [...new Set(tapped)].sort((a, b) => a - b);
  const places = [0, ...taps, model.turns];
  const nodes = [cold, ...taps.map(tapNode), TOP];
  const stretches: CoilBranch[] = places.slice(1).map((to, i) => {
    const part = taps.length === 0 ? '' : `, ${places[i]} to ${to} turns`;
    return { name: `coil${part}`, hot: nodes[i + 1]!, cold: nodes[i]!, copperName: `coil copper${part}` };
  });
  const links = coil.kind === 'geometry' && model.geometry ? placeLinks(coil, model.geometry.winding, couplings, roles) : [];
  const linkBranches = links.map((l) => ({ name: `${l.role} link`, hot: l.role, cold: EARTH, copperName: `${l.role} link copper` }));
  const between = links.length === 2 ? linkCoupling(links[0]!.placed, links[1]!.placed) : null;
  return {
    branches: [...stretches, ...linkBranches],
    stretches: stretches.length,
    nodes: { aerial: nodeOf('aerial', couplings.aerial, model.turns), detector: nodeOf('detector', couplings.detector, model.turns) },
    inductance: (f) => inductanceMatrix(model, places, links, between, f),
    copper: (f, whole) => [...places.slice(1).map((to, i) => (whole * (to - places[i]!)) / model.turns), ...links.map((l) => l.copper(f))],
    directResistance: (role) => directResistance(model, couplings[role], links.find((l) => l.role === role)?.placed.winding),
    remarks:
      between?.crowded || links.some((l) => l.toCoil.crowded)
        ? ['the link lies in the coil: its turns are taken to be wound between those of the coil']
        : [],
  };
}

const tapNode = (turns: number): Node => `tap ${turns}`;

function nodeOf(role: Role, coupling: Coupling | undefined, turns: number): Node {
  if (!coupling || coupling.kind === 'direct') return TOP;
  if (coupling.kind === 'tap') return coupling.turns < turns ? tapNode(coupling.turns) : TOP;
  return role;
}

/** The coil runs up from 0 with its cold end there; a link lies below it, its end at minus the gap. */
function placeLinks(
  coil: CoilGeometry,
  main: Winding,
  couplings: Readonly<Partial<Record<Role, Coupling>>>,
  roles: readonly Role[],
): readonly Link[] {
  return roles.flatMap((role): Link[] => {
    const c = couplings[role]!;
    if (c.kind !== 'link') return [];
    const geometry: CoilGeometry = {
      kind: 'geometry',
      turns: c.turns,
      innerDiameter: c.innerDiameter,
      wireDiameter: c.wireDiameter,
      pitch: c.pitch,
      metal: coil.metal,
      surfaceFactor: coil.surfaceFactor,
      leadLength: 0,
    };
    const own = winding(geometry);
    const placed = { winding: own, start: -c.gap - own.length };
    return [{ role, placed, copper: windingLoss(geometry), toCoil: linkCoupling({ winding: main, start: 0 }, placed) }];
  });
}

/**
 * Stretches and links together. Rings alone give a positive definite matrix; each winding's row and column is then scaled by the root of
 * the ratio of its full inductance to that of its rings, which keeps it so.
 */
function inductanceMatrix(
  model: CoilModel,
  places: readonly number[],
  links: readonly Link[],
  between: LinkCoupling | null,
  frequency: number,
): number[][] {
  const matrix = model.stretches(places, frequency);
  if (links.length === 0 || !model.geometry) return matrix;
  const scale = (w: Winding) => Math.sqrt(windingInductance(w, frequency) / w.rings.of(w.effectiveTurns));
  const main = model.geometry.winding;
  const at = places.map(effectiveTurns);
  const rows = matrix.length;
  links.forEach((link, k) => {
    const own = scale(link.placed.winding);
    const row: number[] = [];
    for (let i = 0; i < rows; i++) {
      const m = scale(main) * own * link.toCoil.of(at[i]!, at[i + 1]!);
      matrix[i]!.push(m);
      row.push(m);
    }
    for (let other = 0; other < k; other++) {
      const m = own * scale(links[other]!.placed.winding) * between!.of(0, links[other]!.placed.winding.effectiveTurns);
      matrix[rows + other]!.push(m);
      row.push(m);
    }
    row.push(windingInductance(link.placed.winding, frequency));
    matrix.push(row);
  });
  return matrix;
}

function directResistance(model: CoilModel, coupling: Coupling | undefined, link: Winding | undefined): number | null {
  if (!coupling || coupling.kind === 'direct') return model.directResistance;
  if (coupling.kind === 'tap') return (model.directResistance * coupling.turns) / model.turns;
  if (coupling.kind === 'link') return link!.directResistance;
  return null;
}
