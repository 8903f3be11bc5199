/** Drawings and plots: functions of data and options that return SVG text. */
export type { Body } from './aerial/content.ts';
export { aerialTitle, drawDescribedAerial } from './aerial/described.ts';
export { type AerialDrawingOptions, drawAerial } from './aerial/draw-aerial.ts';
export { drawingStyles, type Theme } from './svg/palette.ts';
