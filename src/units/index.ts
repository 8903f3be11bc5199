/** Quantities as people write them, in and out; SI numbers inside. */
export { DIMENSIONS, type Dimension, type DimensionName } from './dimensions.ts';
export { formatFigure } from './format-figure.ts';
export { nearestWord } from './nearest.ts';
export { readNumberAtHead } from './read-number.ts';
export { readQuantity } from './read-quantity.ts';
export { type Reading, type Refusal, showGiven } from './reading.ts';
export { AWG_RANGE, awgDiameter, SWG_RANGE, swgDiameter } from './wire-gauge.ts';
export { writeExact, writeForPeople } from './write-quantity.ts';
