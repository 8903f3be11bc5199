import { variableCapacitance } from './capacitor-law.ts';
import { turningElements } from './capacitor-path.ts';
import type { TankDescription } from './description.ts';
import { checkTank } from './given-checks.ts';
import type { TankModel } from './model.ts';
import { thomsonFrequency } from './resonance-formula.ts';
import { tankAdmittance } from './tank-admittance.ts';
import { type AtFrequency, atFrequency } from './tank-elements.ts';
import { tankParts } from './tank-parts.ts';
import { tankRemarks } from './tank-remarks.ts';
import { capacitorCapacitance } from './variable-capacitor.ts';

/** Frequencies whose losses are kept: a station, its sidebands and its neighbours. */
const KEPT = 64;

/**
 * The tank as described, ready for any frequency and angle.
 *
 * @param aerialIsCoil - the coil itself picks up the field: its cold end is left open for the source of its e.m.f.
 * @throws GivenError if the description cannot be
 */
export function tankModel(description: TankDescription, aerialIsCoil: boolean): TankModel {
  checkTank(description, aerialIsCoil);
  const parts = tankParts(description, aerialIsCoil);
  const { coil, branches, path } = parts;
  const { capacitor, strayCapacitance } = description;
  const kept = new Map<number, AtFrequency>();
  const at = (f: number): AtFrequency => {
    const known = kept.get(f);
    if (known) return known;
    if (kept.size >= KEPT) kept.clear();
    const made = atFrequency(parts, f);
    kept.set(f, made);
    return made;
  };
  const across = capacitorCapacitance(capacitor, capacitor.rotation / 2) + coil.selfCapacitance + strayCapacitance;
  // inductance hardly changes with frequency: any will do to find the one in the middle of the dial
  const middle = thomsonFrequency(coil.inductance(thomsonFrequency(coil.inductance(1e8), across)), across);
  return {
    elements: (f, angle) => {
      const { elements, hot, cold } = at(f);
      return [...elements, ...turningElements(description, hot, cold, f, angle)];
    },
    fixed: at,
    turning: (f, angle) => {
      const capacitance = variableCapacitance(capacitor, angle);
      return { capacitance, conductance: 2 * Math.PI * f * capacitance * capacitor.lossTangent };
    },
    admittance: tankAdmittance(parts, at),
    capacitance: (angle) => capacitorCapacitance(capacitor, angle),
    rotation: capacitor.rotation,
    aerialIsCoil,
    aerialNode: branches.nodes.aerial,
    detectorNode: branches.nodes.detector,
    inductance: coil.inductance(middle),
    selfCapacitance: coil.selfCapacitance,
    strayCapacitance,
    pathInductance: path.wiringInductance(middle) + capacitor.leadInductance,
    coilResistance: (f) => {
      const { copper, leads } = coil.resistances(f);
      return copper + leads;
    },
    effectiveArea: coil.effectiveArea,
    directResistance: directResistance(branches.directResistance('detector'), description.detectorReturn),
    wireLength: coil.wireLength,
    get remarks() {
      return tankRemarks(parts, middle);
    },
    parts,
  };
}

/** The way through the coil and the return resistor in parallel; a coupling capacitor leaves only the resistor, which the checks then demand. */
function directResistance(through: number | null, back: number | undefined): number {
  if (through === null) return back!;
  return back === undefined ? through : (through * back) / (through + back);
}
