export { aWeightedLevel, aWeighting } from './a-weighting.ts';
export { checkHearingLevel } from './check-ear.ts';
export type * from './description.ts';
export { equalLoudnessContour, type Iso226Edition, toneLoudnessLevel } from './equal-loudness.ts';
export { CONTOUR_FREQUENCY, CONTOURS_2003, CONTOURS_2023 } from './equal-loudness-tables.ts';
export { CRITICAL_RATIO, ONE_EAR_FIELD_THRESHOLD } from './field-transfer.ts';
export { hear, hearingLevelOver } from './hear.ts';
export { hearingFigures } from './hearing-figures.ts';
export { maskingSpread } from './masking-spread.ts';
export * from './model.ts';
export {
  NC_OCTAVES,
  NR_OCTAVES,
  noiseCriterionLevels,
  noiseCriterionRating,
  noiseRating,
  noiseRatingLevels,
  roomCriterionLevel,
} from './noise-curves.ts';
export { diffuseFieldThreshold, freeFieldThreshold } from './reference-field-threshold.ts';
export { octaveLevel, ROOM_BANDS, roomBandLevel } from './room-noise.ts';
export { SII_BANDWIDTH, SII_IMPORTANCE, SII_INTERNAL_NOISE, SII_SPEECH, type VocalEffort } from './sii-tables.ts';
export { phonsFromSones, sonesFromPhons } from './sone.ts';
export { BINAURAL_ADVANTAGE, speechIntelligibilityIndex } from './speech-intelligibility-index.ts';
export { zwickerLoudness } from './zwicker-loudness.ts';
export { ZWICKER_BANDS } from './zwicker-tables.ts';
