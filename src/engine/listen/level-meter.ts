import { REFERENCE_SOUND_PRESSURE } from '../constants.ts';
import { aWeighting } from '../ear/index.ts';
import { amplitudeRatio, type FourierTransform, fourierTransform } from '../numeric/index.ts';
import { SOUND_RATE } from './set-in-time.ts';

/** Sound is weighed in pieces of so many samples: 0.68 s. */
const PIECE = 2 ** 15;

/** Levels of a sound so far; null where there was none. */
export interface SoundLevels {
  /** of the whole, its mean left out [dB SPL] */
  readonly level: number | null;
  /** A-weighted: of the whole, and of the loudest 0.68 s [dB(A)] */
  readonly levelA: number | null;
  readonly loudestA: number | null;
  /** greatest magnitude of a sample [Pa] */
  readonly peak: number;
}

/**
 * Level of sound pressure as it goes by, A-weighted too.
 *
 * Pieces that follow each other are weighed line by line of their Fourier transform and summed (Parseval); a last, shorter one is filled up with silence.
 * Source: IEC 61672-1:2013, 3.8 to 3.12, time-averaged level.
 */
export class LevelMeter {
  readonly #transform: FourierTransform = fourierTransform(PIECE);
  readonly #weights = Float64Array.from({ length: PIECE / 2 + 1 }, (_, k) =>
    k === 0 ? 0 : 10 ** (aWeighting((k * SOUND_RATE) / PIECE) / 10),
  );
  readonly #re = new Float64Array(PIECE);
  readonly #im = new Float64Array(PIECE);
  #filled = 0;
  #samples = 0;
  #energy = 0;
  #energyA = 0;
  #loudestA = 0;
  #peak = 0;

  /** Takes the samples that follow [Pa], at 48 kHz. */
  add(pressure: Float64Array): void {
    for (let n = 0; n < pressure.length; n++) {
      const p = pressure[n]!;
      this.#peak = Math.max(this.#peak, Math.abs(p));
      this.#re[this.#filled++] = p;
      if (this.#filled === PIECE) this.#weigh();
    }
  }

  /** Levels of all that went by; the meter can go on afterwards only with a new piece. */
  levels(): SoundLevels {
    if (this.#filled > 0) this.#weigh();
    const level = (meanSquare: number): number | null =>
      meanSquare > 0 ? amplitudeRatio(Math.sqrt(meanSquare), REFERENCE_SOUND_PRESSURE) : null;
    return {
      level: level(this.#energy / this.#samples),
      levelA: level(this.#energyA / this.#samples),
      loudestA: level(this.#loudestA),
      peak: this.#peak,
    };
  }

  #weigh(): void {
    const count = this.#filled;
    this.#re.fill(0, count);
    this.#im.fill(0);
    this.#transform.forward(this.#re, this.#im);
    let energy = 0;
    let energyA = 0;
    for (let k = 1; k <= PIECE / 2; k++) {
      const square = (this.#re[k]! ** 2 + this.#im[k]! ** 2) * (k === PIECE / 2 ? 1 : 2);
      energy += square;
      energyA += square * this.#weights[k]!;
    }
    this.#energy += energy / PIECE;
    this.#energyA += energyA / PIECE;
    this.#loudestA = Math.max(this.#loudestA, energyA / PIECE / count);
    this.#samples += count;
    this.#filled = 0;
  }
}
