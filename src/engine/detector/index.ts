export type * from './description.ts';
export { detectorFigures } from './detector-figures.ts';
export { detectorModel } from './detector-model.ts';
export * from './model.ts';
export { saturationCurrentAt } from './saturation-current.ts';
export { capacitanceLoss, crossoverPower, type SmallSignal, voltageSensitivity } from './small-signal.ts';
export { availableThermalNoisePower, noiseEquivalentPower, tangentialSensitivity, thermalNoiseVoltageDensity } from './thermal-noise.ts';
export { thermalVoltage } from './thermal-voltage.ts';
