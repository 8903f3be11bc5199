import { GivenError } from '../given-error.ts';
import { pressureOf } from './pressure.ts';

/**
 * Full scale unless told otherwise: a sine whose peak is full scale has this level [dB SPL].
 *
 * Sets give speech some 20 to 70 dB. Its peaks stand some 18 dB above its rms (common practice, no source), a sine's 3 dB: a full scale of 100 dB holds speech
 * of 85 dB, where the caution about hearing begins. The steps of 24 bits make noise of -46 dB SPL, those of 16 bits 2 dB, at most -9 dB in a third octave up to
 * 8 kHz: either under the internal noise of a normal ear, 2 dB and more in each (ANSI S3.5-1997, Table 3).
 */
export const DEFAULT_FULL_SCALE = 100;
/** Levels that make sense as full scale, and as make-up gain [dB]. */
const LEAST_FULL_SCALE = 0;
const GREATEST_FULL_SCALE = 160;
const MOST_GAIN = 80;
/** From this A-weighted level on a caution about hearing is due [dB(A)]: the upper exposure action value of Directive 2003/10/EC, Art. 3, for 8 hours a day. */
export const HEARING_CAUTION = 85;

/** What a sample of a sound file stands for. Samples of magnitude 1 are full scale. */
export interface SoundScale {
  /** level of a sine whose peak is full scale, no make-up gain counted [dB SPL] */
  readonly fullScale: number;
  /** samples are this much greater than their pressure would make them [dB]: stated, never chosen by the sound itself */
  readonly makeUpGain: number;
  /** sample value for one pascal, make-up gain in it [1/Pa] */
  readonly samplesPerPascal: number;
}

/**
 * A scale from sound pressure to samples: x = p/(p0 sqrt 2 10^(L/20)) 10^(G/20), p0 = 20 uPa.
 *
 * @throws GivenError if full scale is outside 0 to 160 dB SPL, or the gain beyond 80 dB either way
 */
export function soundScale(options: { readonly fullScale?: number; readonly makeUpGain?: number } = {}): SoundScale {
  const { fullScale = DEFAULT_FULL_SCALE, makeUpGain = 0 } = options;
  if (!(fullScale >= LEAST_FULL_SCALE && fullScale <= GREATEST_FULL_SCALE))
    throw new GivenError(
      'sound.fullScale',
      `${fullScale} dB SPL`,
      `full scale stands for a level of ${LEAST_FULL_SCALE} to ${GREATEST_FULL_SCALE} dB SPL`,
      `Leave it out for ${DEFAULT_FULL_SCALE} dB SPL.`,
    );
  if (!(Math.abs(makeUpGain) <= MOST_GAIN))
    throw new GivenError(
      'sound.makeUpGain',
      `${makeUpGain} dB`,
      `a make-up gain is no more than ${MOST_GAIN} dB either way`,
      'Give 0 for the true level.',
    );
  return { fullScale, makeUpGain, samplesPerPascal: 10 ** (makeUpGain / 20) / (Math.SQRT2 * pressureOf(fullScale)) };
}

/** Samples of a sound [1]; `out` may be the array of pressures [Pa] itself. What is beyond full scale is left as it is: the file clips it, and counts. */
export function toSamples(scale: SoundScale, pressure: Float64Array, out: Float64Array): void {
  for (let n = 0; n < pressure.length; n++) out[n] = pressure[n]! * scale.samplesPerPascal;
}

/** Level of the noise that whole numbers of so many bits add, as the sound it would be at the true level, make-up gain taken off again [dB SPL]: L - G - (6.02 n + 1.76). */
export function quantisationFloor(scale: SoundScale, bits: number): number {
  // a step of 2^(1-n) has the rms 2^(1-n)/sqrt 12, a sine of full scale 1/sqrt 2
  return scale.fullScale - scale.makeUpGain + 20 * Math.log10((2 ** (1 - bits) / Math.sqrt(12)) * Math.SQRT2);
}

/** Level at which a sound stands when full scale is played at its level: its own and the make-up gain [dB]. */
export const playedLevel = (scale: SoundScale, level: number): number => level + scale.makeUpGain;

/**
 * Whether a caution about hearing is due: played at its calibration the sound could pass 85 dB(A).
 *
 * @param levelA - of the loudest part of the sound, A-weighted, as the set makes it [dB(A)]
 */
export const hearingCautionDue = (scale: SoundScale, levelA: number): boolean => playedLevel(scale, levelA) > HEARING_CAUTION;
