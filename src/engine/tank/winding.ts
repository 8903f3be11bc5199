import type { Metal } from '../metals.ts';
import { crowdingInductance } from './current-crowding.ts';
import { betweenWholeTurns, effectiveTurns } from './effective-turns.ts';
import { ringInductance } from './ring-inductance.ts';
import { type RingSum, ringSum } from './ring-sum.ts';
import { radiusInSkinDepths, roundWireDirectResistance, roundWireImpedanceRatio, roundWireInternalInductance } from './skin-effect.ts';
import { axialCurrentInductance } from './straight-wires.ts';

/** A single-layer winding, without leads, as its inductance needs it. */
export interface WindingShape {
  readonly turns: number;
  readonly innerDiameter: number;
  readonly wireDiameter: number;
  readonly pitch: number;
  readonly metal: Metal;
}

/** What of a winding does not change with frequency. All in SI units. */
export interface Winding {
  readonly shape: WindingShape;
  /** to the middle of the wire */
  readonly radius: number;
  readonly wireRadius: number;
  /** turns times pitch */
  readonly length: number;
  /** along the wire */
  readonly wireLength: number;
  /** turns that count for flux */
  readonly effectiveTurns: number;
  /** surface current, even around the wire */
  readonly rings: RingSum;
  /** inductance of the current along the axis */
  readonly axial: number;
  /** inductance lost to crowding where skin effect is developed */
  readonly crowding: number;
  readonly directResistance: number;
}

export function winding(shape: WindingShape): Winding {
  const radius = (shape.innerDiameter + shape.wireDiameter) / 2;
  const wireRadius = shape.wireDiameter / 2;
  const length = shape.turns * shape.pitch;
  const wireLength = shape.turns * Math.hypot(2 * Math.PI * radius, shape.pitch);
  const effective = effectiveTurns(shape.turns);
  return {
    shape,
    radius,
    wireRadius,
    length,
    wireLength,
    effectiveTurns: effective,
    rings: ringSum(radius, wireRadius, shape.pitch, effective, 'surface'),
    axial: axialCurrentInductance(length, radius),
    crowding: betweenWholeTurns(effective, (n) => crowdingInductance(radius, wireRadius, shape.pitch, n)),
    directResistance: roundWireDirectResistance(shape.wireDiameter, wireLength, shape.metal),
  };
}

/**
 * Share of the crowding that skin effect allows: 0 at direct current, towards 1 as the skin becomes thin.
 *
 * g = Re(1 - R_dc / Z_i): a round wire across a changing field answers with the moment 2 pi a^2 (R_dc / Z_i - 1) B / mu0
 *
 * Source: J_2(ka) / J_0(ka) of the cylinder across a field (Smythe, Static and Dynamic Electricity, 1950, sec. 11.05), which is 1 - R_dc / Z_i of the same wire along it.
 */
export function crowdingShare(wireDiameter: number, metal: Metal, frequency: number): number {
  const { re, im } = roundWireImpedanceRatio(radiusInSkinDepths(wireDiameter, metal, frequency));
  return 1 - re / (re * re + im * im);
}

/**
 * Inductance of a winding without its leads.
 *
 * L = L_rings + L_axial - g Delta L_crowding + L_inside
 *
 * @param frequency - [Hz]
 * @returns [H]
 * Holds for: 1 to 20 turns within 1 % of the exact field of rings at any frequency with developed skin effect.
 */
export function windingInductance(w: Winding, frequency: number): number {
  const { wireDiameter, metal } = w.shape;
  const inside = roundWireInternalInductance(wireDiameter, w.wireLength, metal, frequency);
  return w.rings.of(w.effectiveTurns) + w.axial - crowdingShare(wireDiameter, metal, frequency) * w.crowding + inside;
}

/** What a bridge reads at audio frequency: current even in the wire, no crowding [H]. */
export function lowFrequencyInductance(w: Winding): number {
  const uniform = ringInductance(w.radius, w.wireRadius, 'uniform') - ringInductance(w.radius, w.wireRadius, 'surface');
  return w.rings.of(w.effectiveTurns) + w.effectiveTurns * uniform + w.axial;
}
