import type { Element } from '../circuit/elements.ts';
import type { Figure } from '../figure.ts';

/**
 * The tank as a network, ready for any angle and frequency.
 *
 * Its nodes: `aerial` (against earth) where a coupled aerial joins, `detector` (against earth) where the detector hangs, `top` the hot
 * end of the coil, `coil-cold` its cold end. Where the coil is the aerial, `coil-cold` is left open for the source of its own
 * e.m.f.; otherwise it is joined to earth by the tank itself.
 */
export interface TankModel {
  /** elements with the losses of this frequency [Hz]; angle [rad] from minimum capacitance */
  elements(frequency: number, angle: number): readonly Element[];
  /** capacitance at the angle [F], fixed capacitors included, strays and coil not */
  capacitance(angle: number): number;
  /** angle span [rad] */
  readonly rotation: number;
  /** coil inductance with leads [H] at a frequency in the middle of the band */
  readonly inductance: number;
  readonly selfCapacitance: number;
  /** series RF resistance of coil and leads [ohm] */
  coilResistance(frequency: number): number;
  /** sum over turns of area [m^2]: the coil as a loop aerial */
  readonly effectiveArea: number;
  /** resistance in the direct-current path of the detector [ohm] */
  readonly directResistance: number;
  /** length of wire in the winding without leads [m]; 0 where the coil is given by values */
  readonly wireLength: number;
  readonly remarks: readonly string[];
  /** the coil's and capacitor's own figures at a frequency: inductance, self-capacitance, resistance, proximity factor, Q, radiation resistance, budget of losses */
  figures(frequency: number, angle: number): readonly Figure[];
}
