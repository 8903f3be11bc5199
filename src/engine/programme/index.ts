export { sidebandPowerShare } from './am-sidebands.ts';
export type * from './description.ts';
export type * from './modulation.ts';
export {
  AUDIO_LIMIT,
  carsonBandwidth,
  type MultiplexDeviations,
  multiplexDeviations,
  PILOT_FREQUENCY,
  PILOT_SHARE,
  PILOT_SHARE_RANGE,
  STEREO_AUDIO_SHARE,
  SUBCARRIER_FREQUENCY,
} from './multiplex.ts';
export { multiplexPower, multiplexRmsDeviation, programmeRmsAtLimit } from './multiplex-power.ts';
export { preEmphasisCorner, preEmphasisGain, preEmphasisPower } from './pre-emphasis.ts';
export { programmeFigures } from './programme-figures.ts';
export { SPEECH_BANDS, SPEECH_CREST, SPEECH_LEVELS } from './speech-spectrum.ts';
export { AM_AUDIO_LIMIT, crestRoom, programmeSwing, speechBandSwing, toneSwing } from './swing.ts';
export type * from './time/envelope-source.ts';
export { type ModulatorOptions, modulator } from './time/modulator.ts';
export { music } from './time/music/perform.ts';
export { type Recording, recordedAudio } from './time/recorded-audio.ts';
export {
  namedProgramme,
  ownProgramme,
  PROGRAMMES,
  type ProgrammeName,
  type SentProgramme,
  sentSound,
  sentTone,
} from './time/sent-programme.ts';
export { speechNoise } from './time/speech-noise.ts';
export { fullToneDrive, multitone, type Side, type Tone, toneAudio, twoTones } from './time/tone-audio.ts';
