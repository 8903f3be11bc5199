import type { TankParts } from './tank-parts.ts';
import { windingResistance } from './winding-resistance.ts';

/** Where the coil is thick or sparse enough for its figures to be less sure than usual: wire radius over coil radius. */
const THICK = 0.25;

/**
 * What a builder should know of how far this tank's figures can be trusted.
 *
 * @param middle - frequency in the middle of the dial [Hz]
 */
export function tankRemarks(parts: TankParts, middle: number): readonly string[] {
  const { coil, branches, description } = parts;
  const remarks: string[] = [...branches.remarks];
  if (!coil.geometry) return remarks;
  const { winding, selfCapacitance, former } = coil.geometry;
  if (selfCapacitance.remark) remarks.push(selfCapacitance.remark);
  if (winding.wireRadius > THICK * winding.radius)
    remarks.push('wire nearly as thick as the coil is wide: inductance may be wrong by several per cent');
  if (coil.turns % 1 !== 0) {
    const share = coil.turns < 3 ? 8 : 3;
    remarks.push(`part of a turn: inductance depends on how the lead runs back, by up to ${share} %`);
  }
  if (former) remarks.push('effect of the former on capacitance and loss is an estimate for a solid rod');
  if (description.capacitor.law.kind !== 'table' && description.capacitor.law.kind !== 'capacitance-linear')
    remarks.push('real plates keep to their law only to a few per cent near the ends of the rotation');
  return [...remarks, ...windingResistance(coil.geometry.coil, middle).remarks];
}
