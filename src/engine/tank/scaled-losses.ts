import { EARTH, type Element } from '../circuit/elements.ts';
import { Network } from '../circuit/network.ts';
import { C } from '../numeric/index.ts';
import { COIL_COLD, TOP } from './coil-branches.ts';
import type { TankModel } from './model.ts';

/** What no better metal or joint would change: the field that the coil sends out, and a resistor that was put in on purpose. */
const NO_LOSS_OF_PARTS = ['radiation', 'detector return'];

/**
 * The tank, every loss of its parts so many times as great: copper, leads, wiring, joints and contacts in series, dielectrics across their capacitors.
 *
 * R_series = k R, R_across = R / k
 *
 * A "what if" for showing what Q does; the inductances and capacitances stay as they are, so that the dial does too. `figures` and `remarks` remain
 * those of the tank as built.
 *
 * @param factor - k, above 0
 */
export function scaledLosses(tank: TankModel, factor: number): TankModel {
  const elements = (f: number, angle: number): readonly Element[] => tank.elements(f, angle).map((e) => scaled(e, factor));
  return {
    ...tank,
    get remarks() {
      return tank.remarks;
    },
    elements,
    fixed: (f) => {
      const whole = tank.fixed(f);
      return { ...whole, elements: whole.elements.map((e) => scaled(e, factor)) };
    },
    turning: (f, angle) => {
      const { capacitance, conductance } = tank.turning(f, angle);
      return { capacitance, conductance: factor * conductance };
    },
    coilResistance: (f) => factor * tank.coilResistance(f),
    admittance: (f, angle, port = {}) => {
      const joined = [
        { name: 'aerial port', node: tank.aerialNode, capacitance: port.aerial ?? 0 },
        { name: 'detector port', node: tank.detectorNode, capacitance: port.detector ?? 0 },
      ].filter((p) => p.capacitance > 0);
      const network = new Network([
        ...elements(f, angle),
        ...joined.map(({ name, node, capacitance }) => ({ kind: 'capacitor' as const, name, a: node, b: EARTH, capacitance })),
        ...(tank.aerialIsCoil ? [{ kind: 'voltage' as const, name: 'cold end', a: COIL_COLD, b: EARTH, re: 0, im: 0 }] : []),
      ]);
      const out = new Float64Array(4);
      network.thevenin(f, network.node(TOP), out);
      return C.inv({ re: out[2]!, im: out[3]! });
    },
  };
}

function scaled(e: Element, factor: number): Element {
  if (e.kind !== 'resistor' || NO_LOSS_OF_PARTS.includes(e.name)) return e;
  const across = e.name === 'former' || e.name.endsWith('dielectric');
  return { ...e, resistance: across ? e.resistance / factor : e.resistance * factor };
}
