import type { Coil, CoilGeometry } from './description.ts';
import { effectiveTurns } from './effective-turns.ts';
import { type FormerEffect, formerEffect } from './former.ts';
import { stretchMutual } from './ring-sum.ts';
import { type SelfCapacitance, selfCapacitance } from './self-capacitance.ts';
import { roundWireDirectResistance, roundWireInternalInductance, roundWireResistance } from './skin-effect.ts';
import { smallLoopRadiationResistance } from './small-loop.ts';
import { wirePairInductance } from './straight-wires.ts';
import { type Winding, winding, windingInductance } from './winding.ts';
import { windingLoss } from './winding-loss.ts';

/** Series resistances of the coil at one frequency [ohm]. */
export interface CoilResistances {
  readonly copper: number;
  readonly leads: number;
  readonly radiation: number;
}

/** A coil, by geometry or by values, as the network needs it. SI units. */
export interface CoilModel {
  readonly turns: number;
  /** with leads */
  inductance(frequency: number): number;
  /** inductance matrix of the stretches between places along the winding [turns], cold end first; leads shared between first and last */
  stretches(places: readonly number[], frequency: number): number[][];
  resistances(frequency: number): CoilResistances;
  /** across the ends, former included */
  readonly selfCapacitance: number;
  /** of the self-capacitance */
  readonly lossTangent: number;
  readonly effectiveArea: number;
  readonly directResistance: number;
  readonly wireLength: number;
  /** what geometry knows beyond that; null for a coil given by values */
  readonly geometry: CoilByGeometry | null;
}

export interface CoilByGeometry {
  readonly coil: CoilGeometry;
  readonly winding: Winding;
  readonly selfCapacitance: SelfCapacitance;
  readonly former: FormerEffect | null;
  /** of the two leads together, flux outside the metal */
  readonly leadInductance: number;
  /** between the leads, centre to centre */
  readonly leadSpacing: number;
}

/** The same model for the same description object: a search puts many taps and parts around one coil, whose proximity effect is dear. */
export function coilModel(coil: Coil): CoilModel {
  let model = models.get(coil);
  if (!model) {
    model = coil.kind === 'geometry' ? geometryCoil(coil) : electricalCoil(coil);
    models.set(coil, model);
  }
  return model;
}

const models = new WeakMap<Coil, CoilModel>();

/** Leads run side by side as far apart as the ends of the winding, and at least two wires apart. */
export const leadSpacing = (length: number, wireDiameter: number): number => Math.max(length, 2 * wireDiameter);

function geometryCoil(coil: CoilGeometry): CoilModel {
  const w = winding(coil);
  const { wireDiameter, metal, leadLength, surfaceFactor } = coil;
  const spacing = leadSpacing(w.length, wireDiameter);
  const leads = wirePairInductance(leadLength, w.wireRadius, spacing);
  const own = selfCapacitance(w.radius, w.wireRadius, coil.pitch, coil.turns);
  const former = coil.former ? formerEffect(own.capacitance, coil.former.permittivity, coil.former.lossTangent) : null;
  const copper = windingLoss(coil);
  const area = w.effectiveTurns * Math.PI * w.radius * w.radius;
  const leadsAt = (f: number) => leads + roundWireInternalInductance(wireDiameter, 2 * leadLength, metal, f);
  return {
    turns: coil.turns,
    inductance: (f) => windingInductance(w, f) + leadsAt(f),
    stretches: (places, f) => {
      // every stretch is scaled alike from rings to the full inductance: the sum stays exact and the matrix positive definite
      const scale = windingInductance(w, f) / w.rings.of(w.effectiveTurns);
      const at = places.map(effectiveTurns);
      const matrix = at.slice(1).map((_, i) => at.slice(1).map((__, k) => scale * ringStretch(w, at, i, k)));
      addLeads(matrix, leadsAt(f));
      return matrix;
    },
    resistances: (f) => ({
      copper: copper(f),
      leads: roundWireResistance(wireDiameter, 2 * leadLength, metal, f, surfaceFactor),
      radiation: smallLoopRadiationResistance(area, f),
    }),
    selfCapacitance: own.capacitance + (former?.capacitance ?? 0),
    lossTangent: former?.lossTangent ?? 0,
    effectiveArea: area,
    directResistance: w.directResistance + roundWireDirectResistance(wireDiameter, 2 * leadLength, metal),
    wireLength: w.wireLength,
    geometry: { coil, winding: w, selfCapacitance: own, former, leadInductance: leads, leadSpacing: spacing },
  };
}

function ringStretch(w: Winding, at: readonly number[], i: number, k: number): number {
  if (i === k) return w.rings.of(at[i + 1]! - at[i]!);
  const [low, high] = i < k ? [i, k] : [k, i];
  return stretchMutual(w.rings, at[low]!, at[low + 1]!, at[high]!, at[high + 1]!);
}

function addLeads(matrix: number[][], leads: number): void {
  const last = matrix.length - 1;
  matrix[0]![0] = matrix[0]![0]! + leads / 2;
  matrix[last]![last] = matrix[last]![last]! + leads / 2;
}

function electricalCoil(coil: Extract<Coil, { kind: 'electrical' }>): CoilModel {
  const resistance = (f: number) => ((2 * Math.PI * coil.frequency * coil.inductance) / coil.q) * Math.sqrt(f / coil.frequency);
  return {
    turns: coil.turns,
    inductance: () => coil.inductance,
    stretches: (places) => {
      const n = places.slice(1).map((t, i) => t - places[i]!);
      const coupled = (i: number, k: number) => (i === k ? 1 : coil.tapCoupling) * n[i]! * n[k]!;
      let sum = 0;
      for (let i = 0; i < n.length; i++) for (let k = 0; k < n.length; k++) sum += coupled(i, k);
      return n.map((_, i) => n.map((__, k) => (coil.inductance * coupled(i, k)) / sum));
    },
    resistances: (f) => ({ copper: resistance(f), leads: 0, radiation: 0 }),
    selfCapacitance: coil.selfCapacitance,
    lossTangent: 0,
    effectiveArea: 0,
    // resistance to direct current is not given; that at radio frequency is an upper bound, and milliohms either way
    directResistance: resistance(coil.frequency),
    wireLength: 0,
    geometry: null,
  };
}
