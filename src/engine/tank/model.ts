import type { Element, Node } from '../circuit/elements.ts';
import type { Complex } from '../numeric/index.ts';
import type { TankParts } from './tank-parts.ts';

/** Capacitance that hangs on the tank from outside, each from its node to earth [F]; absent for none. */
export interface PortCapacitance {
  readonly aerial?: number;
  readonly detector?: number;
}

/**
 * The tank as a network, ready for any angle and frequency.
 *
 * A coupled aerial joins between `aerialNode` and earth, the detector hangs between `detectorNode` and earth; both may be the same node as
 * `top`, the hot end of the coil with its leads. Where the coil is the aerial, its cold end is the node `coil-cold`, left open for the source
 * of its own e.m.f. against earth; otherwise it is earth itself. Losses are resistors with telling names: `coil copper` (of each part where
 * the coil is tapped, `coil copper, 0 to 1.5 turns`), `coil leads`, `radiation`, `former`, `wiring`, `joints`, `capacitor contact`, `capacitor
 * dielectric`, `series capacitor dielectric`, `parallel capacitor dielectric`, `aerial link copper`, `detector link copper`, `detector return`.
 */
export interface TankModel {
  /** elements with the losses of this frequency [Hz]; angle [rad] from minimum capacitance */
  elements(frequency: number, angle: number): readonly Element[];
  /** the same without the variable capacitor, and the nodes between which that lies */
  fixed(frequency: number): { readonly elements: readonly Element[]; readonly hot: Node; readonly cold: Node };
  /** the variable capacitor [F] at an angle, and what its dielectric loses at the frequency [S] */
  turning(frequency: number, angle: number): { readonly capacitance: number; readonly conductance: number };
  /** admittance between `top` and earth of the tank alone [S], cold end on earth, with given capacitances on its ports */
  admittance(frequency: number, angle: number, port?: PortCapacitance): Complex;
  /** whether the cold end of the coil is left open for the source of its e.m.f. */
  readonly aerialIsCoil: boolean;
  readonly aerialNode: Node;
  readonly detectorNode: Node;
  /** capacitance at the angle [F], fixed capacitors included, strays and coil not */
  capacitance(angle: number): number;
  /** angle span [rad] */
  readonly rotation: number;
  /** coil inductance with leads [H] at the frequency where the tank alone resonates in the middle of its dial */
  readonly inductance: number;
  /** of the coil, former included [F] */
  readonly selfCapacitance: number;
  readonly strayCapacitance: number;
  /** of wiring and capacitor leads together [H], at the same frequency as `inductance` */
  readonly pathInductance: number;
  /** series RF resistance of coil and leads [ohm] */
  coilResistance(frequency: number): number;
  /** sum over turns of area [m^2]: the coil as a loop aerial */
  readonly effectiveArea: number;
  /** resistance in the direct-current path of the detector [ohm] */
  readonly directResistance: number;
  /** length of wire in the winding without leads [m]; 0 where the coil is given by values */
  readonly wireLength: number;
  readonly remarks: readonly string[];
  /** taken apart, for its figures */
  readonly parts: TankParts;
}
