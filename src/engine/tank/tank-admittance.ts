import { EARTH, type Node } from '../circuit/elements.ts';
import { C, type Complex } from '../numeric/index.ts';
import { COIL_COLD, TOP } from './coil-branches.ts';
import type { PortCapacitance } from './model.ts';
import type { AtFrequency } from './tank-elements.ts';
import type { TankParts } from './tank-parts.ts';
import { coilAdmittance } from './top-admittance.ts';
import { capacitorImpedance } from './variable-capacitor.ts';

/**
 * The network of the tank as one admittance between its top and earth, the coil's cold end on earth.
 *
 * It is the same network as the elements, reduced by hand where it is always the same, so that a dial of a hundred points costs a millisecond.
 */
export function tankAdmittance(
  parts: TankParts,
  at: (frequency: number) => AtFrequency,
): (frequency: number, angle: number, port?: PortCapacitance) => Complex {
  const { description, coil, branches, couplings } = parts;
  const names: Node[] = [TOP];
  const number = (name: Node): number => {
    if (name === EARTH || name === COIL_COLD) return -1;
    const i = names.indexOf(name);
    return i >= 0 ? i : names.push(name) - 1;
  };
  const hot = branches.branches.map((b) => number(b.hot));
  const cold = branches.branches.map((b) => number(b.cold));
  return (f, angle, port = {}) => {
    const w = 2 * Math.PI * f;
    const { inductance, resistance, wires } = at(f);
    const load: Complex[] = names.map(() => C.ZERO);
    for (const role of ['aerial', 'detector'] as const) {
      const coupling = couplings[role];
      if (!coupling) continue;
      const back = role === 'detector' ? description.detectorReturn : undefined;
      const outside: Complex = { re: back === undefined ? 0 : 1 / back, im: w * (port[role] ?? 0) };
      const through = coupling.kind === 'series-capacitor';
      const node = through ? 0 : names.indexOf(branches.nodes[role]);
      load[node] = C.add(load[node]!, through ? behindCapacitor(outside, w * coupling.capacitance) : outside);
    }
    const own = w * coil.selfCapacitance;
    const across: Complex = { re: own * coil.lossTangent, im: own + w * description.strayCapacitance };
    const winding = coilAdmittance({ hot, cold, resistance, inductance, load }, w) ?? C.ZERO;
    return C.add(C.add(across, load[0]!), C.add(winding, C.inv(C.add(wires, capacitorImpedance(description.capacitor, angle, f)))));
  };
}

/** An admittance seen through a capacitor of a susceptance [S] in series. */
function behindCapacitor(y: Complex, susceptance: number): Complex {
  const coupling: Complex = { re: 0, im: susceptance };
  return C.div(C.mul(y, coupling), C.add(y, coupling));
}
