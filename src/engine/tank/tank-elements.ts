import { EARTH, type Element, type Node } from '../circuit/elements.ts';
import type { Complex } from '../numeric/index.ts';
import { TOP } from './coil-branches.ts';
import { lossyCapacitor, seriesPath } from './series-path.ts';
import type { TankParts } from './tank-parts.ts';

/** All of the network that stays the same while the dial turns, at one frequency. */
export interface AtFrequency {
  readonly elements: readonly Element[];
  /** nodes of the variable capacitor */
  readonly hot: Node;
  readonly cold: Node;
  /** of the coil's branches [H] */
  readonly inductance: readonly (readonly number[])[];
  /** in series with each branch of the coil [ohm] */
  readonly resistance: readonly number[];
  /** of wiring and joints [ohm] */
  readonly wires: Complex;
}

/** Builds the network but for the variable capacitor, with the losses of a frequency [Hz]. */
export function atFrequency(parts: TankParts, f: number): AtFrequency {
  const { description, coil, branches, path, couplings, cold } = parts;
  const w = 2 * Math.PI * f;
  const { copper, leads, radiation } = coil.resistances(f);
  const each = branches.copper(f, copper);
  const inductance = branches.inductance(f);
  const top = branches.stretches - 1;
  const elements: Element[] = [];
  const windings = branches.branches.map((b, k) => {
    const inner = `${b.name} inner`;
    elements.push({ kind: 'resistor', name: b.copperName, a: inner, b: b.cold, resistance: each[k]! });
    if (k !== top) return { name: b.name, a: b.hot, b: inner };
    const outer = seriesPath(b.hot, [
      { kind: 'resistor', name: 'coil leads', value: leads },
      { kind: 'resistor', name: 'radiation', value: radiation },
    ]);
    elements.push(...outer.elements);
    return { name: b.name, a: outer.end, b: inner };
  });
  elements.push({ kind: 'windings', name: 'coil', windings, inductance });
  elements.push(...lossyCapacitor('coil self-capacitance', 'former', TOP, cold, coil.selfCapacitance, coil.lossTangent, w));
  if (description.strayCapacitance > 0)
    elements.push({ kind: 'capacitor', name: 'stray capacitance', a: TOP, b: EARTH, capacitance: description.strayCapacitance });
  for (const role of ['aerial', 'detector'] as const) {
    const c = couplings[role];
    if (c?.kind === 'series-capacitor')
      elements.push({ kind: 'capacitor', name: `${role} coupling`, a: TOP, b: branches.nodes[role], capacitance: c.capacitance });
  }
  if (description.detectorReturn !== undefined)
    elements.push({
      kind: 'resistor',
      name: 'detector return',
      a: branches.nodes.detector,
      b: EARTH,
      resistance: description.detectorReturn,
    });
  const rest = path.fixed(f, TOP);
  return {
    elements: [...elements, ...rest.elements],
    hot: rest.hot,
    cold: rest.cold,
    inductance,
    wires: path.wires(f),
    resistance: each.map((r, k) => (k === top ? r + leads + radiation : r)),
  };
}
