import { C, type Complex } from '../numeric/index.ts';
import { variableCapacitance } from './capacitor-law.ts';
import type { VariableCapacitor } from './description.ts';

/** Loss tangent of the fixed capacitors that narrow or shift the range: NP0 ceramic, Q 1800 at 1 MHz (reference/coils.md section 9). */
export const FIXED_LOSS_TANGENT = 1 / 1800;

/**
 * Capacitance between the terminals at low frequency, fixed capacitors included: the parallel one lies across the variable and the series one together.
 *
 * C = C_v C_s / (C_v + C_s) + C_p
 *
 * @param angle - from minimum [rad]
 * @returns [F]
 */
export function capacitorCapacitance(capacitor: VariableCapacitor, angle: number): number {
  const variable = variableCapacitance(capacitor, angle);
  const { series, parallel = 0 } = capacitor;
  return (series === undefined ? variable : (variable * series) / (variable + series)) + parallel;
}

/**
 * Impedance between the terminals.
 *
 * Z = [R_contact + j w L_lead + 1 / (j w C_v (1 - j tan)) + 1 / (j w C_s (1 - j tan_fixed))] parallel to 1 / (j w C_p (1 - j tan_fixed))
 *
 * @param frequency - [Hz]
 * @returns [ohm]
 */
export function capacitorImpedance(capacitor: VariableCapacitor, angle: number, frequency: number): Complex {
  const w = 2 * Math.PI * frequency;
  const lossy = (c: number, tangent: number): Complex => C.inv({ re: w * c * tangent, im: w * c });
  let z = C.add(
    { re: capacitor.contactResistance, im: w * capacitor.leadInductance },
    lossy(variableCapacitance(capacitor, angle), capacitor.lossTangent),
  );
  if (capacitor.series !== undefined) z = C.add(z, lossy(capacitor.series, FIXED_LOSS_TANGENT));
  return capacitor.parallel ? C.parallel(z, lossy(capacitor.parallel, FIXED_LOSS_TANGENT)) : z;
}

/**
 * Q of the capacitor by itself, -X / R: what its dielectric, contact and leads leave of it.
 *
 * @returns null where nothing loses, or where its leads have made it inductive
 */
export function capacitorQ(capacitor: VariableCapacitor, angle: number, frequency: number): number | null {
  const z = capacitorImpedance(capacitor, angle, frequency);
  return z.re > 0 && z.im < 0 ? -z.im / z.re : null;
}
