import { BANDS, bandwidthLevel, SOUND_BANDS } from '../bands.ts';
import {
  BINAURAL_ADVANTAGE,
  CRITICAL_RATIO,
  diffuseFieldThreshold,
  type EarDescription,
  freeFieldThreshold,
  hearingLevelOver,
  roomBandLevel,
} from '../ear/index.ts';
import { linearInLog } from '../numeric/index.ts';
import type { PhonesModel } from '../phones/index.ts';

/** Frequencies between which couplers have thresholds [Hz]. */
const LOWEST = 125;
const HIGHEST = 8000;
/**
 * From here up the threshold stays as it is [Hz]. The ear's own climbs by 28 dB up to 16 kHz, where no programme is that it could hide: a noise of that level would
 * only fill the file, and be nearly all of its A-weighted level.
 */
const LEVEL_FROM = 12_500;

type UnderEarpiece = Pick<PhonesModel, 'threshold' | 'attenuation' | 'ears'>;

/**
 * Noise of the room at the eardrum under the earpiece, on the scale of its coupler [dB SPL], by SOUND_BANDS.
 *
 * L = L_room - T_diffuse - 1.7 dB - a + T: what `hear` has for its bands, T the threshold under the earpiece, a its attenuation. Below 125 Hz and
 * above 8 kHz all but the room and a leak's part in T is held.
 *
 * @throws GivenError as `roomBandLevel`
 * Source: ISO 389-7:2019; see `hear`.
 */
export function roomLevels(room: EarDescription['room'], phones: UnderEarpiece): Float64Array {
  const level = roomBandLevel(room);
  return Float64Array.from(
    SOUND_BANDS,
    (f) => level(f) - diffuseFieldThreshold(f) - BINAURAL_ADVANTAGE - phones.attenuation(f) + phones.threshold(f),
  );
}

/**
 * Noise that stands for the limit of hearing, on the scale of the earpiece's coupler: band levels [dB SPL], by SOUND_BANDS.
 *
 * Spectrum level X + HL - b brought to the coupler, which is T + HL - b - CR: the reference internal noise X of ANSI S3.5 is the external noise that
 * would give the threshold in quiet. A band of programme right at the threshold of `hear` stands over its spectrum level by the critical ratio CR. HL: hearing
 * level; b: 1.7 dB for two ears. CR is held outside 160 Hz to 8 kHz, where Table 3 ends, and T from 12.5 kHz up: an estimate there, 6 dB too low at 14 kHz, where FM
 * is about to end.
 *
 * @throws GivenError if the hearing level holds something that cannot be
 * Source: ANSI S3.5-1997, Table 3 (X) and 5.5; see `hear`.
 */
export function hearingLimitLevels(hearingLevel: EarDescription['hearingLevel'], phones: UnderEarpiece): Float64Array {
  const shift = hearingLevelOver(hearingLevel);
  const advantage = phones.ears === 2 ? BINAURAL_ADVANTAGE : 0;
  return Float64Array.from(
    SOUND_BANDS,
    (f) => threshold(phones, f) + shift(f) - advantage - linearInLog(BANDS, CRITICAL_RATIO, f) + bandwidthLevel(f),
  );
}

/** Threshold under the earpiece on its coupler [dB SPL]; where its table ends it goes on as that of the free field does: an estimate. */
function threshold(phones: UnderEarpiece, frequency: number): number {
  const known = Math.min(Math.max(frequency, LOWEST), HIGHEST);
  return phones.threshold(frequency) + freeFieldThreshold(Math.min(frequency, LEVEL_FROM)) - freeFieldThreshold(known);
}
