import { EARTH, type Node } from '../circuit/elements.ts';
import { type CapacitorPath, capacitorPath } from './capacitor-path.ts';
import { COIL_COLD, type CoilBranches, coilBranches, type Role } from './coil-branches.ts';
import { type CoilModel, coilModel } from './coil-model.ts';
import type { Coupling, TankDescription } from './description.ts';

/** The tank taken apart: what does not depend on frequency or angle. */
export interface TankParts {
  readonly description: TankDescription;
  readonly coil: CoilModel;
  readonly branches: CoilBranches;
  readonly path: CapacitorPath;
  /** what joins from outside; no aerial where the coil is the aerial */
  readonly couplings: Readonly<Partial<Record<Role, Coupling>>>;
  /** cold end of the coil */
  readonly cold: Node;
}

export function tankParts(description: TankDescription, aerialIsCoil: boolean): TankParts {
  const coil = coilModel(description.coil);
  const cold = aerialIsCoil ? COIL_COLD : EARTH;
  const detector = description.detectorCoupling;
  const couplings = aerialIsCoil || !description.aerialCoupling ? { detector } : { aerial: description.aerialCoupling, detector };
  const { geometry } = coil;
  const path = capacitorPath(description, {
    length: geometry?.coil.leadLength ?? 0,
    radius: geometry?.winding.wireRadius ?? description.wiring.diameter / 2,
    spacing: geometry?.leadSpacing ?? 2 * description.wiring.diameter,
  });
  return { description, coil, branches: coilBranches(description.coil, coil, couplings, cold), path, couplings, cold };
}
