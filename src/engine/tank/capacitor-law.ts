import { linear } from '../numeric/interpolate.ts';
import { brent } from '../numeric/roots.ts';
import type { CapacitorLaw, VariableCapacitor } from './description.ts';

/** A law worked out at its own end may miss that end by the last bits. */
const ROUNDING = 1e-12;

/**
 * Capacitance of the variable part alone at an angle.
 *
 * With t = angle / rotation: capacitance-linear C = a + b t; wavelength-linear C = (a + b t)^2; frequency-linear C = (a + b t)^-2;
 * logarithmic C = a exp(b t); a and b from the ends. A table is read straight between its points.
 *
 * @param angle - from minimum capacitance [rad]; held within the rotation
 * @returns [F]
 * Source: Terman, Radio Engineers' Handbook (1943) sec. 2, variable condensers.
 */
export function variableCapacitance(capacitor: VariableCapacitor, angle: number): number {
  const { law, minimum, maximum, rotation } = capacitor;
  if (law.kind === 'table') return linear(law.angle, law.capacitance, angle);
  return lawCapacitance(law, minimum, maximum, Math.min(1, Math.max(0, angle / rotation)));
}

/** As `variableCapacitance`, by the share t of the rotation, 0 to 1. */
export function lawCapacitance(law: Exclude<CapacitorLaw, { kind: 'table' }>, minimum: number, maximum: number, t: number): number {
  switch (law.kind) {
    case 'capacitance-linear':
      return minimum + (maximum - minimum) * t;
    case 'wavelength-linear':
      return (Math.sqrt(minimum) + (Math.sqrt(maximum) - Math.sqrt(minimum)) * t) ** 2;
    case 'frequency-linear':
      return (1 / Math.sqrt(minimum) + (1 / Math.sqrt(maximum) - 1 / Math.sqrt(minimum)) * t) ** -2;
    case 'logarithmic':
      return minimum * (maximum / minimum) ** t;
  }
}

/**
 * Angle at which the variable part has a capacitance.
 *
 * @param capacitance - [F]
 * @returns angle from minimum capacitance [rad]; null where the capacitor does not reach it. A table that goes up and down gives its first such place.
 */
export function angleForCapacitance(capacitor: VariableCapacitor, capacitance: number): number | null {
  const { law, minimum, maximum, rotation } = capacitor;
  if (law.kind === 'table') {
    for (let i = 0; i + 1 < law.angle.length; i++) {
      const found = brent((a) => linear(law.angle, law.capacitance, a) - capacitance, law.angle[i]!, law.angle[i + 1]!);
      if (found !== null) return found;
    }
    return null;
  }
  if (capacitance < minimum * (1 - ROUNDING) || capacitance > maximum * (1 + ROUNDING)) return null;
  if (minimum === maximum) return 0;
  return rotation * Math.min(1, Math.max(0, lawShare(law, minimum, maximum, capacitance)));
}

/** Share of the rotation at which a law has a capacitance: the inverse of `lawCapacitance`. */
function lawShare(law: Exclude<CapacitorLaw, { kind: 'table' }>, minimum: number, maximum: number, c: number): number {
  switch (law.kind) {
    case 'capacitance-linear':
      return (c - minimum) / (maximum - minimum);
    case 'wavelength-linear':
      return (Math.sqrt(c) - Math.sqrt(minimum)) / (Math.sqrt(maximum) - Math.sqrt(minimum));
    case 'frequency-linear':
      return (1 / Math.sqrt(c) - 1 / Math.sqrt(minimum)) / (1 / Math.sqrt(maximum) - 1 / Math.sqrt(minimum));
    case 'logarithmic':
      return Math.log(c / minimum) / Math.log(maximum / minimum);
  }
}
