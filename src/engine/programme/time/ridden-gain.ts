import type { SampleSource } from '../../numeric/index.ts';
import { AUDIO_RATE } from './audio-path.ts';

/** The gain is set once in so many samples, and runs straight between: 10 ms. */
const BLOCK = 480;
/** The programme is known this far ahead of what is sent: 3 s. */
const AHEAD = 300;
/** Power is averaged over the beginning, then with this time constant: 10 s. */
const MEMORY = 1000;
/** Blocks of less power than this are silence and tell nothing: -60 dB of full scale. */
const SILENCE = 1e-6;
/** Power lost in the limiter is made up by 6 dB at most. */
const LEAST_KEPT = 0.25;

/**
 * Rides the gain slowly, so that the programme has a given power behind the limiter, on average.
 *
 * The power ahead of the gain, in pauses too but not in silence, is averaged over 10 s with 3 s of it ahead; what the limiter takes off is made up
 * by the share it kept so far. Broadcasters hold the 60 s power of the multiplex with time constants of about 10 s, since any
 * 60 s count, and not only those that begin with a quiet passage (practice: manuals of transmitters' audio processors).
 */
export class RiddenGain implements SampleSource {
  /** gain now [1] */
  gain = 1;
  readonly #source: SampleSource;
  readonly #stereo: boolean;
  readonly #target: number;
  readonly #first = new Float64Array(BLOCK * AHEAD);
  readonly #second: Float64Array;
  readonly #firstNew = new Float64Array(BLOCK);
  readonly #secondNew = new Float64Array(BLOCK);
  #block = -1;
  #at = BLOCK;
  #mean = 0;
  #heard = 0;
  #from = 1;
  #to = 1;
  #before = 0;
  #after = 0;

  /**
   * @param source - audio at 48 kHz
   * @param target - mean of M^2 + S^2/2 wanted behind the limiter, full scale 1
   */
  constructor(source: SampleSource, channels: 1 | 2, target: number) {
    this.#source = source;
    this.#stereo = channels === 2;
    this.#target = target;
    this.#second = new Float64Array(this.#stereo ? BLOCK * AHEAD : 0);
  }

  /** Tells what power went into the limiter and what came out, over so long [s]. */
  limited(before: number, after: number, time: number): void {
    const fade = Math.exp((-time * AUDIO_RATE) / (BLOCK * MEMORY));
    this.#before = this.#before * fade + before;
    this.#after = this.#after * fade + after;
  }

  next(first: Float64Array, second: Float64Array): void {
    for (let n = 0; n < first.length; n++) {
      if (this.#at === BLOCK) this.#advance();
      const k = (this.#block % AHEAD) * BLOCK + this.#at;
      this.gain = this.#from + ((this.#to - this.#from) * this.#at) / BLOCK;
      first[n] = this.#first[k]! * this.gain;
      if (this.#stereo) second[n] = this.#second[k]! * this.gain;
      this.#at++;
    }
  }

  #advance(): void {
    if (this.#block < 0) for (let b = 0; b < AHEAD; b++) this.#read(b);
    else this.#read(this.#block % AHEAD);
    this.#block++;
    this.#at = 0;
    const kept = this.#before > 0 ? Math.max(LEAST_KEPT, this.#after / this.#before) : 1;
    const wanted = this.#heard > 0 ? Math.sqrt(this.#target / (this.#mean * kept)) : 1;
    this.#from = this.#block === 0 ? wanted : this.#to;
    this.#to = wanted;
  }

  /** Reads a block into its place, which has just been sent, and takes note of its power. */
  #read(place: number): void {
    this.#source.next(this.#firstNew, this.#secondNew);
    this.#first.set(this.#firstNew, place * BLOCK);
    if (this.#stereo) this.#second.set(this.#secondNew, place * BLOCK);
    let sum = 0;
    for (let n = 0; n < BLOCK; n++) {
      const a = this.#firstNew[n]!;
      const b = this.#stereo ? this.#secondNew[n]! : a;
      sum += ((a + b) / 2) ** 2 + ((a - b) / 2) ** 2 / 2;
    }
    const power = sum / BLOCK;
    if (power < SILENCE) return;
    this.#heard++;
    this.#mean += (power - this.#mean) / Math.min(this.#heard, MEMORY);
  }
}
