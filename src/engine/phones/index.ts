export { type CoupledWindings, coupledWindings, matchingTurnsRatio } from './coupled-windings.ts';
export { couplingAttenuation, leakLoss, ORDINARY_CUSHION } from './coupling.ts';
export type * from './description.ts';
export { type Drive, driveForLevel } from './drive.ts';
export { earpieceImpedance } from './earpiece.ts';
export type * from './model.ts';
export { phonesModel } from './phones-model.ts';
export { couplerThreshold } from './reference-threshold.ts';
export { sensitivityPerMilliwatt, sensitivityPerVolt } from './sensitivity.ts';
