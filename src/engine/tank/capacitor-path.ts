import { EARTH, type Element, type Node } from '../circuit/elements.ts';
import type { Complex } from '../numeric/index.ts';
import { variableCapacitance } from './capacitor-law.ts';
import type { TankDescription } from './description.ts';
import { lossyCapacitor, type Part, seriesPath } from './series-path.ts';
import { roundWireInternalInductance, roundWireResistance } from './skin-effect.ts';
import { pairsInLineMutual, wirePairInductance } from './straight-wires.ts';
import { FIXED_LOSS_TANGENT } from './variable-capacitor.ts';

/** The way from the top of the coil through wiring, joints and capacitor to earth. */
export interface CapacitorPath {
  /** [H] */
  wiringInductance(frequency: number): number;
  /** [ohm] */
  wiringResistance(frequency: number): number;
  /** of all joints [ohm] */
  readonly jointResistance: number;
  /** of wiring and joints [ohm] */
  wires(frequency: number): Complex;
  /** everything of the path but what turns with the dial, and the nodes between which that lies */
  fixed(frequency: number, top: Node): { readonly elements: readonly Element[]; readonly hot: Node; readonly cold: Node };
}

/** What the wiring carries on from: length of each lead of the coil, 0 where it is given by values; radius and spacing of the leads [m]. */
export interface Leads {
  readonly length: number;
  readonly radius: number;
  readonly spacing: number;
}

/**
 * Wiring is a pair of bright copper wires, each half of the length given, that carries on from the coil's leads at their spacing.
 */
export function capacitorPath(tank: TankDescription, leads: Leads): CapacitorPath {
  const { capacitor, wiring, joints } = tank;
  const half = wiring.length / 2;
  const radius = wiring.diameter / 2;
  const spacing = Math.max(leads.spacing, 2 * wiring.diameter);
  const outside =
    wirePairInductance(half, radius, spacing) + pairsInLineMutual(leads.length, half, Math.min(leads.radius, radius), spacing);
  const wiringInductance = (f: number) => outside + roundWireInternalInductance(wiring.diameter, wiring.length, 'copper', f);
  const wiringResistance = (f: number) => roundWireResistance(wiring.diameter, wiring.length, 'copper', f);
  const jointResistance = joints.count * joints.resistance;
  return {
    wiringInductance,
    wiringResistance,
    jointResistance,
    wires: (f) => ({ re: wiringResistance(f) + jointResistance, im: 2 * Math.PI * f * wiringInductance(f) }),
    fixed: (f, top) => {
      const contact: Part = { kind: 'resistor', name: 'capacitor contact', value: capacitor.contactResistance };
      const wire = (extra: number): Part[] => [
        { kind: 'inductor', name: 'wiring inductance', value: wiringInductance(f) + extra },
        { kind: 'resistor', name: 'wiring', value: wiringResistance(f) },
        { kind: 'resistor', name: 'joints', value: jointResistance },
      ];
      const w = 2 * Math.PI * f;
      const cold = capacitor.series === undefined ? EARTH : 'between capacitors';
      const series =
        capacitor.series === undefined
          ? []
          : lossyCapacitor('series capacitor', 'series capacitor dielectric', cold, EARTH, capacitor.series, FIXED_LOSS_TANGENT, w);
      // with nothing in parallel the capacitor's own leads carry the current of the wiring: one inductor less to solve for
      if (!capacitor.parallel) {
        const { elements, end } = seriesPath(top, [...wire(capacitor.leadInductance), contact]);
        return { elements: [...elements, ...series], hot: end, cold };
      }
      const outer = seriesPath(top, wire(0));
      const inner = seriesPath(outer.end, [{ kind: 'inductor', name: 'capacitor leads', value: capacitor.leadInductance }, contact]);
      const across = lossyCapacitor(
        'parallel capacitor',
        'parallel capacitor dielectric',
        outer.end,
        EARTH,
        capacitor.parallel,
        FIXED_LOSS_TANGENT,
        w,
      );
      return { elements: [...outer.elements, ...across, ...inner.elements, ...series], hot: inner.end, cold };
    },
  };
}

/** The variable capacitor and its dielectric. */
export function turningElements(tank: TankDescription, hot: Node, cold: Node, frequency: number, angle: number): Element[] {
  const { capacitor } = tank;
  const w = 2 * Math.PI * frequency;
  return lossyCapacitor('capacitor', 'capacitor dielectric', hot, cold, variableCapacitance(capacitor, angle), capacitor.lossTangent, w);
}
