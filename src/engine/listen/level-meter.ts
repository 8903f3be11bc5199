import { REFERENCE_SOUND_PRESSURE } from '../constants.ts';
import { aWeighting } from '../ear/index.ts';
import { amplitudeRatio, type FourierTransform, fourierTransform } from '../numeric/index.ts';
import { SOUND_RATE } from './set-in-time.ts';

/** Sound is A-weighted in pieces of so many samples, 0.68 s, each over half of the one before it. */
const PIECE = 2 ** 15;
const STEP = PIECE / 2;

interface Tables {
  /** A-weighting of powers by line [1] */
  readonly weights: Float64Array;
  /** half a sine */
  readonly window: Float64Array;
}
let made: Tables | null = null;
/** The same for all meters, made when the first is. */
function tables(): Tables {
  made ??= {
    weights: Float64Array.from({ length: STEP + 1 }, (_, k) => (k === 0 ? 0 : 10 ** (aWeighting((k * SOUND_RATE) / PIECE) / 10))),
    window: Float64Array.from({ length: PIECE }, (_, n) => Math.sin((Math.PI * (n + 0.5)) / PIECE)),
  };
  return made;
}

/** Levels of a sound so far; null where there was none. */
export interface SoundLevels {
  /** of the whole, its mean left out [dB SPL] */
  readonly level: number | null;
  /** A-weighted: of the whole, and of the loudest piece of 0.68 s, its middle counting most [dB(A)]; of a sound shorter than that both are the same */
  readonly levelA: number | null;
  readonly loudestA: number | null;
  /** greatest magnitude of a sample [Pa] */
  readonly peak: number;
}

/**
 * Level of sound pressure as it goes by, A-weighted too.
 *
 * A-weighting line by line of the Fourier transform of pieces under half a sine, whose squares add up to one where pieces overlap by half: so all energy counts
 * once, and low tones do not spill over lines that weigh a thousand times as much, as they would out of pieces cut off sharply (50 Hz read up to 6 dB high).
 *
 * Holds for: A-weighting within 0.1 dB from 50 Hz; within 0.3 dB from 31.5 Hz.
 * Source: IEC 61672-1:2013, 3.8 to 3.12, time-averaged level; window of J. P. Princen, A. B. Bradley, IEEE Trans. ASSP 34 (1986) 1153.
 */
export class LevelMeter {
  readonly #transform: FourierTransform = fourierTransform(PIECE);
  readonly #tables = tables();
  /** half a piece that is to be weighed once more, then what came since; silence before the first */
  readonly #piece = new Float64Array(PIECE);
  readonly #re = new Float64Array(PIECE);
  readonly #im = new Float64Array(PIECE);
  #filled = STEP;
  #samples = 0;
  #sum = 0;
  #energy = 0;
  #energyA = 0;
  #loudest = 0;
  #peak = 0;

  /** Takes the samples that follow [Pa], at 48 kHz. */
  add(pressure: Float64Array): void {
    for (let n = 0; n < pressure.length; n++) {
      const p = pressure[n]!;
      this.#peak = Math.max(this.#peak, Math.abs(p));
      this.#sum += p;
      this.#energy += p * p;
      this.#piece[this.#filled++] = p;
      if (this.#filled < PIECE) continue;
      const energy = this.#weigh(0, PIECE);
      this.#energyA += energy;
      this.#loudest = Math.max(this.#loudest, energy);
      this.#piece.copyWithin(0, STEP);
      this.#filled = STEP;
    }
    this.#samples += pressure.length;
  }

  /** Levels of all that went by, silence taken to follow; the meter can go on afterwards. */
  levels(): SoundLevels {
    const count = this.#samples;
    const level = (energy: number, samples: number): number | null =>
      energy > 0 ? amplitudeRatio(Math.sqrt(energy / samples), REFERENCE_SOUND_PRESSURE) : null;
    // the piece under way, and its newer half once more
    const last = [this.#weigh(0, this.#filled), this.#weigh(STEP, this.#filled)];
    const energyA = this.#energyA + last[0]! + last[1]!;
    const levelA = level(energyA, count);
    const loudest = level(Math.max(this.#loudest, ...last), STEP);
    return {
      level: level(Math.max(0, this.#energy - this.#sum ** 2 / count), count),
      levelA,
      // no part is the loudest that is quieter than the whole: so it would be where a sound is shorter than a piece
      loudestA: levelA !== null && loudest !== null ? Math.max(levelA, loudest) : null,
      peak: this.#peak,
    };
  }

  /** A-weighted energy of the samples from one to another, at the beginning of a piece, under its window [Pa^2]. */
  #weigh(from: number, to: number): number {
    const [re, im] = [this.#re, this.#im];
    const { weights, window } = this.#tables;
    re.fill(0);
    im.fill(0);
    for (let n = from; n < to; n++) re[n - from] = this.#piece[n]! * window[n - from]!;
    this.#transform.forward(re, im);
    let energy = 0;
    for (let k = 1; k <= PIECE / 2; k++) energy += (re[k]! ** 2 + im[k]! ** 2) * weights[k]! * (k === PIECE / 2 ? 1 : 2);
    return energy / PIECE;
  }
}
