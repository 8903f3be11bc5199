import { BANDS } from '../bands.ts';
import { GivenError } from '../given-error.ts';
import type { ProgrammeModulation } from './modulation.ts';
import { AUDIO_LIMIT, STEREO_AUDIO_SHARE } from './multiplex.ts';
import { programmeRmsAtLimit } from './multiplex-power.ts';
import { preEmphasisPower } from './pre-emphasis.ts';
import { SPEECH_BANDS, SPEECH_CREST, SPEECH_LEVELS } from './speech-spectrum.ts';

/** Highest audio frequency of medium-wave AM [Hz]: channels 9 or 10 kHz apart leave half of that. */
export const AM_AUDIO_LIMIT = 4500;
/** Above this the level is surely meant otherwise: a full-deviation sine is 11.9 dB over the limit [dB]. */
const GREATEST_LEVEL = 12;

const SPEECH_POWER = SPEECH_LEVELS.map((l) => 10 ** (l / 10));
const FIRST = SPEECH_BANDS.indexOf(BANDS[0]!);

/**
 * Swing of a steady tone at full modulation: peak deviation [Hz] or peak depth [1].
 *
 * In stereo the tone is the same left and right and has the sum signal's share of the deviation, 0.9. The tone has its swing after
 * pre-emphasis, at any frequency.
 * Source: Rec. ITU-R BS.450-3, sec. 2.
 */
export function toneSwing(modulation: ProgrammeModulation): number {
  if (modulation.kind === 'am') return modulation.depth;
  return modulation.deviation * (modulation.stereo ? STEREO_AUDIO_SHARE : 1);
}

/**
 * Swing of programme, rms: deviation [Hz] or depth [1], without the pilot.
 *
 * FM: the rms deviation that the multiplex power limit leaves to programme, raised by the level. AM: peak depth less the crest of speech, 12 dB
 * (an estimate; there is no such limit), raised by the level. Neither goes beyond the rms of a tone at full swing: no programme is denser.
 *
 * @param level - programme against the limit [dB], up to 12
 * @throws GivenError if the level is above 12 dB or not a number
 * Source: Rec. ITU-R BS.412-9, sec. 2.3; BS.450-3.
 */
export function programmeSwing(modulation: ProgrammeModulation, level: number): number {
  if (!(level <= GREATEST_LEVEL))
    throw new GivenError(
      'programme.level',
      `${level} dB`,
      `no programme is more than ${GREATEST_LEVEL} dB over the multiplex power limit, where even a steady tone at full deviation ends`,
      'Broadcasters stay between -3 and +6 dB.',
    );
  const at0 =
    modulation.kind === 'fm' ? programmeRmsAtLimit(modulation.deviation, modulation.stereo) : modulation.depth * 10 ** (-SPEECH_CREST / 20);
  return Math.min(at0 * 10 ** (level / 20), toneSwing(modulation) / Math.SQRT2);
}

/**
 * Swing of speech by one-third octaves, rms: deviation [Hz] or depth [1], by BANDS.
 *
 * Long-term average speech, equal left and right, pre-emphasised in FM, cut at 15 kHz (FM) or 4.5 kHz (AM, whose upper bands are zero), and
 * scaled so that the powers of all its bands from 63 Hz up add to `programmeSwing`.
 * The set has no de-emphasis: what is sent is what is heard. No curve is applied in AM: transmitters brighten speech, each in its own way.
 *
 * @throws GivenError as `programmeSwing`
 * Source: Byrne et al. 1994; Rec. ITU-R BS.450-3, sec. 1.2.
 */
export function speechBandSwing(modulation: ProgrammeModulation, level: number): Float64Array {
  const swing = programmeSwing(modulation, level);
  const tau = modulation.kind === 'fm' ? modulation.preEmphasis : 0;
  const limit = modulation.kind === 'fm' ? AUDIO_LIMIT : AM_AUDIO_LIMIT;
  let sum = 0;
  const power = SPEECH_BANDS.map((f, i) => {
    const p = f <= limit ? SPEECH_POWER[i]! * preEmphasisPower(f, tau) : 0;
    sum += p;
    return p;
  });
  return Float64Array.from(BANDS, (_, i) => swing * Math.sqrt(power[FIRST + i]! / sum));
}

/** Room between the rms of programme and full swing [dB]; below the crest of speech, 12 dB, the station must compress or clip it. */
export const crestRoom = (modulation: ProgrammeModulation, level: number): number =>
  20 * Math.log10(toneSwing(modulation) / programmeSwing(modulation, level));
