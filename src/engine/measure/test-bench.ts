import type { Reception } from '../chain/index.ts';
import { GivenError } from '../given-error.ts';
import { SOUND_RATE } from '../listen/index.ts';
import type { Modulation } from '../place/index.ts';
import { linearShape } from './linear-part.ts';
import { alone, type Played, play, type Sent } from './playing.ts';
import { type SpeechProgramme, speechProgramme } from './test-signals.ts';

/** What a procedure is at. */
export type Measuring =
  | 'tone at rated swing'
  | 'tone with the power of programme'
  | 'two tones'
  | 'many tones'
  | 'stereo'
  | 'tone beside noise and neighbours'
  | 'speech of the station alone'
  | 'speech beside noise and neighbours'
  | 'neighbours';

export interface MeasureProgress {
  /** 0 to 1, by about the work done so far */
  readonly share: number;
  readonly doing: Measuring;
}

export interface MeasureOptions {
  /** the wanted station among the reception's */
  readonly station: number;
  /** of the dial [rad] */
  readonly angle: number;
  /** of noise and of speech-shaped programmes, a whole number; 1 unless given */
  readonly seed?: number;
  /** length of speech-shaped programme that is analysed [s], 1 to 60; 3 unless given */
  readonly speechSeconds?: number;
}

/** Until audio coupling, bias and blocking capacitors have settled [s]. */
const SETTLE = 0.5;
/** Lengths of sound that are analysed [s]: of a tone, and of tones that stand 1 Hz apart or beside noise. */
export const SHORT = 0.5;
export const LONG = 1;
const SPEECH = 3;
/** Work for a second of sound with other stations on the air, against one station alone: a higher rate, more envelopes. */
const WITH_OTHERS = 3;
/** Sound of the tone tests with one station [s], and what stereo adds. */
const ALONE = 3 * SHORT + LONG + 4 * SETTLE;
const STEREO = 2 * (SHORT + SETTLE);

/** The set with its wanted station, ready to be played with test programmes, and how far the procedure is. */
export class TestBench {
  readonly reception: Reception;
  readonly station: number;
  readonly angle: number;
  readonly seed: number;
  readonly modulation: Modulation;
  readonly stereo: boolean;
  /** length of speech analysed [s] */
  readonly speechSeconds: number;
  readonly #one: Reception;
  readonly #speech = new Map<number, SpeechProgramme>();
  readonly #work: number;
  #done = 0;

  /** @throws GivenError if the station is none of the reception's, or a length or seed cannot be */
  constructor(reception: Reception, { station, angle, seed = 1, speechSeconds = SPEECH }: MeasureOptions) {
    const signal = reception.signals[station];
    if (!signal)
      throw new GivenError(
        'measure.station',
        `${station}`,
        `the place has the stations 0 to ${reception.signals.length - 1}`,
        'Give one of them.',
      );
    if (!(Number.isInteger(seed) && seed >= 0 && seed < 2 ** 31))
      throw new GivenError('measure.seed', `${seed}`, 'a seed is a whole number, 0 or more', 'Give another.');
    if (!(speechSeconds >= 1 && speechSeconds <= 60))
      throw new GivenError(
        'measure.speechSeconds',
        `${speechSeconds} s`,
        'a spectrum needs a second, and no more than a minute',
        'Give 3 s.',
      );
    this.reception = reception;
    this.station = station;
    this.angle = angle;
    this.seed = seed;
    this.speechSeconds = speechSeconds;
    this.modulation = signal.received.station.modulation;
    this.stereo = this.modulation.kind === 'fm' && this.modulation.stereo;
    this.#one = alone(reception, station);
    const speech = speechSeconds + SETTLE;
    this.#work =
      ALONE +
      (this.stereo ? STEREO : 0) +
      speech +
      this.#workBeside(false) * (LONG + SETTLE + speech) +
      (reception.signals.length > 1 ? this.#workBeside(true) * speech : 0);
  }

  /** The station alone, without noise. */
  *alone(doing: Measuring, sent: Sent, seconds: number): Generator<MeasureProgress, Played> {
    const { angle } = this;
    return yield* this.#run(doing, 1, play(this.#one, { station: 0, angle, sent: () => sent, settle: SETTLE, seconds, fine: true }));
  }

  /** All stations of the place; noise where a seed is given. Without it small things can be told, and are followed finely. */
  *together(doing: Measuring, sent: (station: number) => Sent, seconds: number, noise?: number): Generator<MeasureProgress, Played> {
    const { station, angle } = this;
    const fine = noise === undefined;
    const options = { station, angle, sent, settle: SETTLE, seconds, fine, ...(fine ? {} : { noise }) };
    return yield* this.#run(doing, this.#workBeside(fine), play(this.reception, options));
  }

  /** A station's speech-shaped noise, of each its own, the same in every test. */
  speech(station: number): SpeechProgramme {
    const known = this.#speech.get(station);
    if (known) return known;
    const { signals, receiver } = this.reception;
    const { modulation } = signals[station]!.received.station;
    const made = speechProgramme(modulation, receiver.listener.programme.level, SETTLE + this.speechSeconds, this.seed + station);
    this.#speech.set(station, made);
    return made;
  }

  /** That noise in step with the stretch that is analysed: its audio, and the same shaped about as the set passes it on. */
  speechAudio(station: number): Float64Array {
    return this.#analysed(this.speech(station).samples);
  }

  speechShape(station: number, conductance: number): Float64Array {
    const { signals, receiver } = this.reception;
    const { modulation } = signals[station]!.received.station;
    return this.#analysed(linearShape(this.speech(station).samples, SOUND_RATE, modulation, receiver.phones, conductance));
  }

  #analysed(x: Float64Array): Float64Array {
    const from = Math.round(SETTLE * SOUND_RATE);
    return x.subarray(from, from + Math.round(this.speechSeconds * SOUND_RATE));
  }

  /** Work for a second of sound with all stations, against one alone: a higher rate, more envelopes. */
  #workBeside(fine: boolean): number {
    return this.reception.signals.length > 1 ? (fine ? 2 : 1) * WITH_OTHERS : 1;
  }

  *#run(doing: Measuring, work: number, playing: Generator<number, Played>): Generator<MeasureProgress, Played> {
    const before = this.#done;
    for (;;) {
      const step = playing.next();
      if (step.done) return step.value;
      this.#done = before + work * step.value;
      yield { share: Math.min(1, this.#done / this.#work), doing };
    }
  }
}
