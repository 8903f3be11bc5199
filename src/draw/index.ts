/** Drawings and plots: functions of data and options that return SVG text. */
export type { Body } from './aerial/content.ts';
export type { Cut } from './aerial/cutting-list.ts';
export { aerialTitle, describedCuts, drawDescribedAerial } from './aerial/described.ts';
export { type AerialDrawingOptions, drawAerial } from './aerial/draw-aerial.ts';
export { lengthText } from './aerial/length-text.ts';
export { type CoilDrawingOptions, drawCoil, drawFrame } from './coil/draw-coil.ts';
export { windingSteps } from './coil/winding-steps.ts';
export { frameWinding, type Tap, tankWindings, type Wound } from './coil/wound.ts';
export type { AxisOptions } from './plot/axis.ts';
export { type CurveOptions, drawCurve } from './plot/draw-curve.ts';
export { type Component, drawPattern, type PatternOptions } from './plot/draw-pattern.ts';
export type { PatternCut } from './plot/pattern-facts.ts';
export type { StationMark } from './plot/pattern-stations.ts';
export type { PlotMark, Series } from './plot/series.ts';
export { drawingStyles, type Theme } from './svg/palette.ts';
