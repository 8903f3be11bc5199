export { SOUND_BANDS } from '../bands.ts';
export { BandNoise } from './band-noise.ts';
export { EarInTime, type EarOptions } from './ear-in-time.ts';
export { hearingLimitLevels, roomLevels } from './ear-noises.ts';
export { type EarpieceFilter, earpieceFilter } from './earpiece-filter.ts';
export { pressureOf } from './pressure.ts';
export { CALIBRATION_FREQUENCY, CALIBRATION_LEVEL, ReferenceTone } from './reference-tone.ts';
export { settleEar } from './settle-ear.ts';
export { soundFigures } from './sound-figures.ts';
export {
  DEFAULT_FULL_SCALE,
  HEARING_CAUTION,
  hearingCautionDue,
  playedLevel,
  quantisationFloor,
  type SoundScale,
  soundScale,
  toSamples,
} from './sound-scale.ts';
