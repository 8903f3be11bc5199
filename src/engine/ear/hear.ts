import { BANDS } from '../bands.ts';
import { linearInLog } from '../numeric/index.ts';
import { aWeighting } from './a-weighting.ts';
import { checkHearingLevel, checkSound } from './check-ear.ts';
import type { EarDescription } from './description.ts';
import { CRITICAL_RATIO, DIFFUSE_TO_FREE, ONE_EAR_FIELD_THRESHOLD } from './field-transfer.ts';
import { maskingSpread } from './masking-spread.ts';
import type { Hearing, SoundAtEar } from './model.ts';
import { programmeLoudness } from './programme-loudness.ts';
import { roomBandLevel } from './room-noise.ts';
import { SII_BANDWIDTH } from './sii-tables.ts';
import { phonsFromSones } from './sone.ts';
import { BINAURAL_ADVANTAGE, speechIntelligibilityIndex } from './speech-intelligibility-index.ts';

const N = BANDS.length;
const TENTH = Math.LN10 / 10;
/** Energy that stands for silence, so that its level is -200 dB and not minus infinity. */
const NOTHING = 1e-20;
const A_WEIGHTING = Float64Array.from(BANDS, aWeighting);

/**
 * What a listener makes of a speech-shaped programme under an earpiece, in a room.
 *
 * Coupler levels become free-field levels by the distance from threshold (see field-transfer.ts). Room noise, taken as a diffuse field, is
 * brought to the free field by the difference of the two thresholds of ISO 389-7 and lowered by the earpiece; the set's own disturbance is
 * added to it as energy, and both spread upwards as ANSI S3.5 says. The threshold is the reference threshold of the earpiece plus the
 * hearing level, less 1.7 dB for two ears. A band is audible over noise by its distance from the masked threshold: masking spectrum level plus
 * critical ratio.
 *
 * Loudness level is that of ISO 532-1 (Zwicker, stationary, free field) for the programme alone, in quiet: the level of the 1 kHz tone
 * that is as loud to two ears. One ear makes it less loud by a factor of 1.5 in sones. Room noise, which makes what it partly masks softer, is left out of it.
 * A lone tone in one band reads up to 2 phon low, since the method expects the skirts of real filters.
 *
 * @throws GivenError if the description or the sound holds something that cannot be
 * Holds for 160 Hz to 8 kHz, steady levels over the length of a sentence; the other ear, left open under a single earpiece, is not counted.
 * Source: ANSI S3.5-1997; ISO 389-7:2019; ISO 532-1:2017; IEC 61672-1.
 */
export function hear(description: EarDescription, sound: SoundAtEar): Hearing {
  checkHearingLevel(description.hearingLevel);
  checkSound(sound);
  const room = roomBandLevel(description.room);
  const hearingLevel = hearingLevelOver(description.hearingLevel);
  const advantage = sound.ears === 2 ? BINAURAL_ADVANTAGE : 0;

  const field = new Float64Array(N); // programme as a free field, band level
  const speech = new Float64Array(N); // the same, spectrum level
  const noise = new Float64Array(N); // room and disturbance as a free field, spectrum level
  const shift = new Float64Array(N); // threshold against one normal ear
  const roomNoise = new Float64Array(N);
  let energy = NOTHING;
  let energyA = NOTHING;
  for (let i = 0; i < N; i++) {
    const toField = ONE_EAR_FIELD_THRESHOLD[i]! - sound.threshold[i]!;
    const programme = sound.programme[i]!;
    field[i] = programme + toField;
    speech[i] = field[i]! - SII_BANDWIDTH[i]!;
    const atEar = room(BANDS[i]!) + DIFFUSE_TO_FREE[i]! - sound.attenuation[i]!;
    roomNoise[i] = atEar - toField;
    noise[i] =
      Math.log(NOTHING + Math.exp(TENTH * atEar) + Math.exp(TENTH * (sound.disturbance[i]! + toField))) / TENTH - SII_BANDWIDTH[i]!;
    shift[i] = hearingLevel(BANDS[i]!) - advantage;
    energy += Math.exp(TENTH * programme);
    energyA += Math.exp(TENTH * (field[i]! + A_WEIGHTING[i]!));
  }
  const siiShares = new Float64Array(N);
  const sii = speechIntelligibilityIndex(speech, noise, shift, siiShares);
  const masking = new Float64Array(N);
  maskingSpread(noise, noise, masking);

  const headroom = new Float64Array(N);
  let overThreshold = Number.NEGATIVE_INFINITY;
  let overNoise = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < N; i++) {
    const quiet = field[i]! - ONE_EAR_FIELD_THRESHOLD[i]! - shift[i]!;
    const noisy = field[i]! - masking[i]! - CRITICAL_RATIO[i]!;
    headroom[i] = Math.min(quiet, noisy);
    overThreshold = Math.max(overThreshold, quiet);
    overNoise = Math.max(overNoise, noisy);
  }
  const loudness = overThreshold > 0 ? programmeLoudness(field, sound.ears, description.hearingLevel.length > 0 ? hearingLevel : null) : 0;
  return {
    sii,
    siiShares,
    overThreshold,
    overNoise,
    headroom,
    level: Math.log(energy) / TENTH,
    levelA: Math.log(energyA) / TENTH,
    loudnessLevel: loudness > 0 ? phonsFromSones(loudness) : null,
    roomNoise,
    working: { description, sound, loudness, room, shift, masking, speech, noise },
  };
}

const NORMAL = () => 0;

/** Hearing level over frequency [dB HL]: straight lines against log f, ends held; zero where none is given. */
export function hearingLevelOver(points: EarDescription['hearingLevel']): (frequency: number) => number {
  if (points.length === 0) return NORMAL;
  const x = points.map((p) => p.frequency);
  const y = points.map((p) => p.level);
  return (frequency) => linearInLog(x, y, frequency);
}
