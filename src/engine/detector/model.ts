import type { Element, Node } from '../circuit/elements.ts';
import type { DetectorDescription } from './description.ts';
import type { SmallSignal } from './small-signal.ts';

/** Order of the values written by `DescribingFunction.at`. */
export const MEAN = 0;
export const FUNDAMENTAL = 1;
export const MEAN_BY_AMPLITUDE = 2;
export const MEAN_BY_OUTPUT = 3;
export const FUNDAMENTAL_BY_AMPLITUDE = 4;
export const FUNDAMENTAL_BY_OUTPUT = 5;

/**
 * A memoryless law under a sinusoid: the voltage from tank to output is A cos(wt) - V.
 *
 * `at` writes, into a caller's array of six: mean current from tank to output [A]; fundamental current in phase with the voltage
 * [A peak]; then the derivatives of both by A and by V [S]. A >= 0 [V peak], V any [V].
 */
export interface DescribingFunction {
  at(amplitude: number, outputVoltage: number, out: Float64Array): void;
  /** the law itself: current [A] at instantaneous tank-to-output voltage [V], gate following as described; for drawing and for tests */
  current(voltage: number, outputVoltage: number): number;
}

/** Numbers of a detector, for its figures. */
export interface DetectorNumbers {
  readonly method: string;
  readonly source: string;
  readonly weak: SmallSignal;
  /** seen by the RF beside the law [F], and what stands in series with it [ohm] */
  readonly capacitance: number;
  readonly capacitanceResistance: number;
  /** saturation current at this temperature [A]; null for a law that has none */
  readonly saturationCurrent: number | null;
}

export interface DetectorModel {
  readonly description: DetectorDescription;
  readonly numbers: DetectorNumbers;
  readonly method: string;
  readonly source: string;
  readonly law: DescribingFunction;
  /** the linear part that the RF sees beside the law: junction capacitance with its series resistance */
  elements(port: Node): readonly Element[];
  /** small-signal resistance at zero bias [ohm], what the output presents to the phones and, unloaded, to the tank */
  readonly zeroBiasResistance: number;
  /** short-circuit current sensitivity at zero bias [A/W], curvature over twice the slope */
  readonly currentSensitivity: number;
  readonly remarks: readonly string[];
  /** what a working point [V peak], [V] adds to the remarks, such as a swing beyond the measured law; null where there is nothing to say */
  remarkAt(amplitude: number, outputVoltage: number): string | null;
}
