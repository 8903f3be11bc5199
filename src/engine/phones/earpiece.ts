import { EARTH, type Element, type Node } from '../circuit/elements.ts';
import { C, type Complex } from '../numeric/index.ts';
import type { Earpiece } from './description.ts';

/** Frequency at which a piezo's loss tangent is taken to hold, the middle of speech [Hz]. */
const LOSS_AT = 1000;

/**
 * Resistance in series with a piezo's capacitance that gives its loss tangent at 1 kHz: tan d/(2 pi 1 kHz C) [ohm].
 *
 * In series, because a loss in parallel would be a path for direct current, which a piezo does not have. The effective loss tangent then
 * rises in proportion to frequency, where the material's stays about the same: right to a factor f/1 kHz, and small beside the reactance.
 */
export function piezoLossResistance(e: { readonly capacitance: number; readonly lossTangent: number }): number {
  return e.lossTangent / (2 * Math.PI * LOSS_AT * e.capacitance);
}

/** The earpiece as elements from a node to earth; every name begins with `earpiece`, so that its power can be told from the rest. */
export function earpieceElements(e: Earpiece, node: Node): Element[] {
  if (e.kind === 'piezo') {
    const loss = piezoLossResistance(e);
    const inner = loss > 0 ? 'earpiece crystal' : node;
    return [
      ...(loss > 0 ? [{ kind: 'resistor' as const, name: 'earpiece loss', a: node, b: inner, resistance: loss }] : []),
      { kind: 'capacitor', name: 'earpiece capacitance', a: inner, b: EARTH, capacitance: e.capacitance },
      { kind: 'resistor', name: 'earpiece leak', a: node, b: EARTH, resistance: e.leakResistance },
    ];
  }
  const moving = e.motional ? 'earpiece armature' : EARTH;
  const wound = e.inductance > 0;
  const coil = 'earpiece coil';
  const elements: Element[] = [
    { kind: 'resistor', name: 'earpiece resistance', a: node, b: wound ? coil : moving, resistance: e.resistance },
  ];
  if (wound)
    elements.push({
      kind: 'windings',
      name: 'earpiece inductance',
      windings: [{ name: 'earpiece inductance', a: coil, b: moving }],
      inductance: [[e.inductance]],
    });
  if (e.motional)
    elements.push(
      { kind: 'resistor', name: 'earpiece motion', a: moving, b: EARTH, resistance: e.motional.resistance },
      {
        kind: 'windings',
        name: 'earpiece compliance',
        windings: [{ name: 'earpiece compliance', a: moving, b: EARTH }],
        inductance: [[e.motional.inductance]],
      },
      { kind: 'capacitor', name: 'earpiece mass', a: moving, b: EARTH, capacitance: e.motional.capacitance },
    );
  return elements;
}

/** Impedance between the earpiece's terminals [ohm]; at 0 Hz its resistance to direct current. */
export function earpieceImpedance(e: Earpiece, frequency: number): Complex {
  const w = 2 * Math.PI * frequency;
  if (e.kind === 'piezo') {
    const rs = piezoLossResistance(e);
    // 1/(rs + 1/(j w C)) written so that 0 Hz needs no special case
    const y = C.div({ re: 0, im: w * e.capacitance }, { re: 1, im: w * rs * e.capacitance });
    return C.inv(C.add(y, { re: 1 / e.leakResistance, im: 0 }));
  }
  const coil: Complex = { re: e.resistance, im: w * e.inductance };
  if (!e.motional) return coil;
  const { resistance, inductance, capacitance } = e.motional;
  // j w L over 1 + j w L (1/R + j w C)
  const motion = C.div({ re: 0, im: w * inductance }, { re: 1 - w * w * inductance * capacitance, im: (w * inductance) / resistance });
  return C.add(coil, motion);
}
