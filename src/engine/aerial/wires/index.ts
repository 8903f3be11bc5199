export { type BeamDesign, type BeamResult, type BeamWish, designBeam } from './beam-design.ts';
export { beamFigures } from './beam-figures.ts';
export { type BeamStart, beamStart, usualElements } from './beam-table.ts';
export type { Counterpart as RodCounterpart, Driven as DrivenElement, WireShape, WiresDescription } from './description.ts';
export { type Components as FarFieldComponents, currentMoment } from './effective-length.ts';
export { farField, type Gain as WireGain, gain as wireGain } from './far-field.ts';
export { type Layout as WireLayout, layOut } from './joints.ts';
export { type NearPair, nearPair } from './near-pair.ts';
export { patternFigures, resonanceFigures } from './overview-figures.ts';
export { azimuthCut, elevationCut, frontToBack, type PatternPoint, strongestDirection } from './pattern.ts';
export { type PatternSummary, patternSummary } from './pattern-summary.ts';
export type { Point as SpacePoint } from './point.ts';
export { lossResistance as wireLossResistance, radiatedResistance } from './radiated-power.ts';
export { type Resonance as AerialResonance, resonances } from './resonances.ts';
export { resonantScale } from './resonant-scale.ts';
export { type PartShare, shareFigures } from './share-figures.ts';
export { type Discretised, discretise, impedanceMatrix, solveWires, type WireSolution } from './solve-wires.ts';
export type {
  Ground as WireGround,
  Load as WireLoad,
  OnWire,
  Wire as AerialWire,
  WireMetal,
  WireStructure,
} from './structure.ts';
export { type WireAerial, wireAerial, wireAerialOf } from './wire-aerial.ts';
export { type WireCurrent, wireCurrents } from './wire-currents.ts';
export { wireParts } from './wire-parts.ts';
export { type WireShare, wireShares } from './wire-shares.ts';
export { wireStructure } from './wire-structure.ts';
