import { EARTH, type Element, type Node } from '../circuit/elements.ts';
import { C, type Complex } from '../numeric/index.ts';
import { coupledWindings } from './coupled-windings.ts';
import type { PhonesDescription, Transformer } from './description.ts';
import { earpieceElements, earpieceImpedance } from './earpiece.ts';

/** Self-discharge time of a film or foil capacitor, insulation resistance times capacitance [s]: estimate, common catalogue minimum. */
const INSULATION_TIME = 10_000;

const OUTPUT: Node = 'output';
const EARPIECE: Node = 'earpiece';

/**
 * Everything from the detector's output to the earpiece as a network: from node `output` to node `earpiece`, both against earth.
 *
 * It holds at 0 Hz: a choke's and a winding's resistance, and the insulation of the blocking capacitor, are in it. Where neither capacitor nor
 * transformer stands before the earpiece, its parts hang on `output` and `earpiece` is joined to it by a 0 V source, so that no loop of
 * capacitors arises.
 */
export function audioElements(d: PhonesDescription): readonly Element[] {
  const elements: Element[] = [];
  if (d.bypass > 0) elements.push({ kind: 'capacitor', name: 'bypass', a: OUTPUT, b: EARTH, capacitance: d.bypass });
  if (d.load !== undefined) elements.push({ kind: 'resistor', name: 'load', a: OUTPUT, b: EARTH, resistance: d.load });
  if (d.choke)
    elements.push(
      { kind: 'resistor', name: 'choke resistance', a: OUTPUT, b: 'choke', resistance: d.choke.resistance },
      { kind: 'windings', name: 'choke', windings: [{ name: 'choke', a: 'choke', b: EARTH }], inductance: [[d.choke.inductance]] },
    );
  let node = OUTPUT;
  if (d.blocking !== undefined) {
    node = d.transformer ? 'blocked' : EARPIECE;
    elements.push(
      { kind: 'capacitor', name: 'blocking', a: OUTPUT, b: node, capacitance: d.blocking },
      { kind: 'resistor', name: 'blocking insulation', a: OUTPUT, b: node, resistance: INSULATION_TIME / d.blocking },
    );
  }
  if (d.transformer) {
    elements.push(...transformerElements(d.transformer, node));
    node = EARPIECE;
  }
  elements.push(...earpieceElements(d.earpiece, node));
  if (node === OUTPUT) elements.push({ kind: 'voltage', name: 'joint', a: OUTPUT, b: EARPIECE, re: 0, im: 0 });
  return elements;
}

function transformerElements(t: Transformer, node: Node): Element[] {
  const w = coupledWindings(t);
  return [
    { kind: 'resistor', name: 'primary resistance', a: node, b: 'primary', resistance: t.primaryResistance },
    { kind: 'resistor', name: 'core loss', a: 'primary', b: EARTH, resistance: t.coreLoss },
    ...(t.capacitance > 0
      ? [{ kind: 'capacitor' as const, name: 'winding capacitance', a: 'primary', b: EARTH, capacitance: t.capacitance }]
      : []),
    {
      kind: 'windings',
      name: 'transformer',
      windings: [
        { name: 'primary', a: 'primary', b: EARTH },
        { name: 'secondary', a: 'secondary', b: EARTH },
      ],
      inductance: [
        [w.primary, w.mutual],
        [w.mutual, w.secondary],
      ],
    },
    { kind: 'resistor', name: 'secondary resistance', a: 'secondary', b: EARPIECE, resistance: t.secondaryResistance },
  ];
}

/** The same network in closed form, as a ladder: for figures, and as the rival that the solver of networks must agree with. */
export interface AudioLadder {
  /** impedance that the detector's output sees [ohm] */
  readonly load: Complex;
  /** earpiece voltage over output voltage [1] */
  readonly transfer: Complex;
}

/**
 * Load on the detector and voltage reaching the earpiece, at a frequency.
 *
 * With w L1, w L2, w M of the windings and Zs = R2 + Ze: winding impedance Zw = j w L1 + (w M)^2/(j w L2 + Zs), voltage on
 * the earpiece over that on the winding j w M Ze/((j w L2 + Zs) Zw).
 *
 * @param frequency - [Hz], zero or above
 */
export function audioLadder(d: PhonesDescription, frequency: number): AudioLadder {
  const w = 2 * Math.PI * frequency;
  let z = earpieceImpedance(d.earpiece, frequency);
  let transfer: Complex = C.ONE;
  if (d.transformer) {
    const t = d.transformer;
    const m = coupledWindings(t);
    const secondary = C.add(z, { re: t.secondaryResistance, im: w * m.secondary });
    const winding = C.add({ re: 0, im: w * m.primary }, C.div({ re: (w * m.mutual) ** 2, im: 0 }, secondary));
    // times Zw: voltage on the earpiece for one ampere in the primary winding
    const transferImpedance = C.div(C.mul({ re: 0, im: w * m.mutual }, z), secondary);
    const loss: Complex = { re: 1 / t.coreLoss, im: w * t.capacitance };
    const shunted = C.div(winding, C.add(C.ONE, C.mul(winding, loss)));
    z = C.add(shunted, { re: t.primaryResistance, im: 0 });
    transfer = frequency > 0 ? C.mul(C.div(transferImpedance, winding), C.div(shunted, z)) : C.ZERO;
  }
  if (d.blocking !== undefined) {
    const blocked = C.add(z, C.inv({ re: d.blocking / INSULATION_TIME, im: w * d.blocking }));
    transfer = C.mul(transfer, C.div(z, blocked));
    z = blocked;
  }
  let y = C.add(C.inv(z), { re: d.load === undefined ? 0 : 1 / d.load, im: w * d.bypass });
  if (d.choke) y = C.add(y, C.inv({ re: d.choke.resistance, im: w * d.choke.inductance }));
  return { load: C.inv(y), transfer };
}
