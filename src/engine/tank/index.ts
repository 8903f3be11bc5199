export type * from './description.ts';
export { type EndlessCoil, endlessCoil } from './endless-coil.ts';
export type * from './model.ts';
export { type FieldOfRow, fieldOfRow, type RowOfWires } from './proximity.ts';
export { ringKernel } from './ring-kernel.ts';
export {
  radiusInSkinDepths,
  roundWireDirectResistance,
  roundWireImpedanceRatio,
  roundWireInternalInductance,
  roundWireResistance,
  skinDepth,
  surfaceResistance,
} from './skin-effect.ts';
export { type WindingResistance, windingResistance } from './winding-resistance.ts';
export { wireResponse } from './wire-response.ts';
