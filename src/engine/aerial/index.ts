export { aerialModel, type SeparateAerial } from './aerial-model.ts';
export { arrivalAxes, elementAxis } from './arrival.ts';
export { straightWireResistance } from './conductor.ts';
export type * from './description.ts';
export { dipoleEffectiveLength, dipoleMetalResistance } from './dipole-current.ts';
export { type FeederAt, throughFeeder, withFeeder } from './feeder.ts';
export { inducedEmfImpedance } from './induced-emf.ts';
export { loopInductance } from './loop-inductance.ts';
export type * from './model.ts';
export { reactanceOfCurrent } from './reactance-of-current.ts';
export {
  type CurrentPiece,
  momentOf,
  radiationResistance,
  sineCurrent,
  smallAerialResistance,
  squareLength,
} from './sinusoidal-current.ts';
export { type LoopAxis, smallLoopEffectiveLength } from './small-loop.ts';
export { gainOf } from './source-figures.ts';
export { setCapacitance } from './whip-over-set.ts';
export { levelWireCapacitance, uprightWireCapacitance } from './wire-capacitance.ts';
export * from './wires/index.ts';
