export { angleForCapacitance, lawCapacitance, variableCapacitance } from './capacitor-law.ts';
export { coaxialRingField, coaxialRingMutual } from './coaxial-rings.ts';
export { crowdingInductance } from './current-crowding.ts';
export type * from './description.ts';
export {
  type DialPoint,
  type DialSetting,
  dialSetting,
  dialSlope,
  dialTable,
  type TuningRange,
  tankResonance,
  tuningRange,
} from './dial.ts';
export { effectiveTurns } from './effective-turns.ts';
export { type EndlessCoil, endlessCoil } from './endless-coil.ts';
export { formerEffect } from './former.ts';
export { helixInductance } from './helix.ts';
export { type Loss, lossBudget, unloadedQ } from './loss-budget.ts';
export { medhurstCapacitance } from './medhurst-capacitance.ts';
export type * from './model.ts';
export { type FieldOfRow, fieldOfRow, type RowOfWires } from './proximity.ts';
export { thomsonFrequency } from './resonance-formula.ts';
export { ringChargeCapacitance, turnCapacitance } from './ring-charges.ts';
export { type CurrentInWire, ringInductance } from './ring-inductance.ts';
export { ringKernel } from './ring-kernel.ts';
export { ringSum, stretchMutual } from './ring-sum.ts';
export { nagaokaRosaInductance, rosaMutualCorrection, rosaSelfCorrection } from './rosa-corrections.ts';
export { scaledLosses } from './scaled-losses.ts';
export { selfCapacitance } from './self-capacitance.ts';
export { nagaokaCoefficient, sheetInductance } from './sheet-solenoid.ts';
export {
  radiusInSkinDepths,
  roundWireDirectResistance,
  roundWireImpedanceRatio,
  roundWireInternalInductance,
  roundWireResistance,
  skinDepth,
  surfaceResistance,
} from './skin-effect.ts';
export { smallLoopRadiationResistance } from './small-loop.ts';
export { longWireInductance, parallelFilamentMutual, straightWireInductance, wirePairInductance } from './straight-wires.ts';
export { tankFigures } from './tank-figures.ts';
export { tankModel } from './tank-model.ts';
export { capacitorCapacitance, capacitorImpedance, capacitorQ } from './variable-capacitor.ts';
export { crowdingShare, lowFrequencyInductance, winding, windingInductance } from './winding.ts';
export { type WindingResistance, windingResistance } from './winding-resistance.ts';
export { wireResponse } from './wire-response.ts';
