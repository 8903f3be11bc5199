import { SOUND_BANDS } from '../bands.ts';
import type { Receiver } from '../chain/index.ts';
import { checkHearingLevel } from '../ear/index.ts';
import { GivenError } from '../given-error.ts';
import { Convolution } from '../numeric/index.ts';
import { leakLoss } from '../phones/index.ts';
import { BandNoise } from './band-noise.ts';
import { hearingLimitLevels, roomLevels } from './ear-noises.ts';
import { earpieceFilter } from './earpiece-filter.ts';

/** What is to be heard beside the programme, and where the pressure stands. */
export interface EarOptions {
  /** of the noises, a whole number from 0 to 2^32 - 1: the same seed gives the same sound */
  readonly seed: number;
  /** noise of the listener's room, as it arrives under the earpiece */
  readonly room: boolean;
  /**
   * noise that hides what this listener could not hear in quiet, so that it stays hidden when the sound is played louder. Leave it out where
   * playback has the true level: the one who listens then has an own threshold, and must not get it twice
   */
  readonly hearingLimit: boolean;
  /**
   * `coupler`: as the earpiece's coupler reads it, the scale of `hear` and of all levels. `ear`: less what the gap of an earpiece that does not seal loses
   * (`leakLoss`), which stands in the threshold on the coupler's scale: for playback by phones that seal. Coupler unless given
   */
  readonly at?: 'coupler' | 'ear';
}

/** Apart from the seed of the room. */
const LIMIT_SEED = 0x6865_6172;
const SEEDS = 2 ** 32;
const CHUNK = 1024;

/**
 * The sound half of a set in time: voltage across the earpiece in, sound pressure out [Pa], both at 48 kHz.
 *
 * Programme: through the earpiece's filter. Beside it, where wanted, the room and the limit of hearing as noises of their own. Without any delay beyond the
 * earpiece's phase; the size of the blocks never changes the result. Two ears hear the same.
 *
 * Holds for: an earpiece that is linear; 50 Hz to 15 kHz.
 */
export class EarInTime {
  /** greatest error of the earpiece's magnitude between 50 Hz and 15 kHz [dB] */
  readonly filterError: number;
  /** delay-free length of the earpiece's response [samples] */
  readonly filterLength: number;
  /** one-third-octave levels of the noises [dB SPL], by SOUND_BANDS, at the place asked for; null where not wanted */
  readonly roomLevels: Float64Array | null;
  readonly hearingLimitLevels: Float64Array | null;
  readonly #earpiece: Convolution;
  readonly #noises: readonly BandNoise[];
  readonly #programme = new Float64Array(CHUNK);

  /** @throws GivenError if the seed is no whole number from 0 to 2^32 - 1, or room or hearing level hold something that cannot be */
  constructor(receiver: Pick<Receiver, 'phones' | 'listener'>, options: EarOptions) {
    const { seed, room, hearingLimit, at } = options;
    if (!(Number.isInteger(seed) && seed >= 0 && seed < SEEDS))
      throw new GivenError('sound.seed', `${seed}`, 'a seed is a whole number from 0 to 4294967295', 'Take 1.');
    const { phones } = receiver;
    const { ear } = receiver.listener;
    checkHearingLevel(ear.hearingLevel);
    const lost = at === 'ear' ? (frequency: number) => leakLoss(phones.coupling, frequency) : () => 0;
    const here = (levels: Float64Array): Float64Array => levels.map((level, b) => level - lost(SOUND_BANDS[b]!));
    const filter = earpieceFilter((frequency) => phones.sensitivity(frequency) - lost(frequency));
    this.filterError = filter.error;
    this.filterLength = filter.taps.length;
    this.#earpiece = new Convolution(filter.taps);
    this.roomLevels = room ? here(roomLevels(ear.room, phones)) : null;
    this.hearingLimitLevels = hearingLimit ? here(hearingLimitLevels(ear.hearingLevel, phones)) : null;
    this.#noises = [
      ...(this.roomLevels ? [new BandNoise(this.roomLevels, seed)] : []),
      ...(this.hearingLimitLevels ? [new BandNoise(this.hearingLimitLevels, (seed + LIMIT_SEED) % SEEDS)] : []),
    ];
  }

  /**
   * Turns the samples that follow into sound.
   *
   * @param volts - across the earpiece [V]
   * @param pressure - receives all that is to be heard [Pa]; as long as `volts`, may be the same array
   * @param programme - receives the set's own sound alone [Pa], for measures; as long as `volts`
   */
  process(volts: Float64Array, pressure: Float64Array, programme?: Float64Array): void {
    for (let n = 0; n < volts.length; n += CHUNK) {
      const end = Math.min(n + CHUNK, volts.length);
      const own = this.#programme.subarray(0, end - n);
      this.#earpiece.process(volts.subarray(n, end), own);
      programme?.set(own, n);
      pressure.set(own, n);
    }
    for (const noise of this.#noises) noise.add(pressure);
  }
}
