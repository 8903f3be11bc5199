import { GivenError } from '../given-error.ts';
import { SOUND_RATE } from '../listen/index.ts';
import { pressureOf } from './pressure.ts';

/** Tone by which playback is set to its level: 1 kHz [Hz], at 74 dB SPL unless told otherwise: well heard, and harmless. */
export const CALIBRATION_FREQUENCY = 1000;
export const CALIBRATION_LEVEL = 74;
const GREATEST = 85;
const LEAST = 20;

/** A steady sine as sound pressure [Pa] at 48 kHz, from its zero on; it never drifts. */
export class ReferenceTone {
  readonly #peak: number;
  #at = 0;

  /**
   * @param level - [dB SPL]
   * @throws GivenError if the level is outside 20 to 85 dB SPL
   */
  constructor(level: number = CALIBRATION_LEVEL) {
    if (!(level >= LEAST && level <= GREATEST))
      throw new GivenError(
        'sound.calibration',
        `${level} dB SPL`,
        `a tone to set playback by has ${LEAST} to ${GREATEST} dB SPL: quieter it is lost in the room, louder it harms`,
        `Take ${CALIBRATION_LEVEL} dB SPL.`,
      );
    this.#peak = Math.SQRT2 * pressureOf(level);
  }

  /** Fills the array with the samples that follow [Pa]. */
  next(out: Float64Array): void {
    const period = SOUND_RATE / CALIBRATION_FREQUENCY;
    for (let n = 0; n < out.length; n++) {
      out[n] = this.#peak * Math.sin((2 * Math.PI * this.#at) / period);
      this.#at = (this.#at + 1) % period;
    }
  }
}
