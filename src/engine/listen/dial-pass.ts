import type { BestDial } from '../chain/index.ts';
import { GivenError } from '../given-error.ts';
import { amplitudeRatio, FLOOR } from '../numeric/index.ts';
import { SOUND_RATE } from './set-in-time.ts';

/** Sound is measured in pieces of this length [s], a whole number of periods of any tone that is a multiple of 20 Hz. */
const WINDOW = 0.05;
/** A pass reaches this many times as far beyond resonance as the farther hump, and so many half bandwidths at least. */
const BEYOND = 5;
const LEAST = 5;

/** A turn of the dial at a constant rate. */
export interface DialTurn {
  /** angles where it begins and ends [rad] */
  readonly from: number;
  readonly to: number;
  /** time it takes [s] */
  readonly seconds: number;
}

/** How strong the sound was while the dial passed an angle. */
export interface PassLevel {
  /** in the middle of the piece of sound that was measured [rad] */
  readonly angle: number;
  /** rms in the unit of the sound */
  readonly rms: number;
  /** the same [dB re 1 of that unit] */
  readonly level: number;
}

/** What a pass of the dial shows: the loudest place on either side of the carrier, and the quietest between them. */
export interface Humps {
  /** in the order they were passed: one on either side of an FM carrier, one at all for AM; none where nothing was heard */
  readonly loudest: readonly PassLevel[];
  /** between two; null where there is one */
  readonly dip: PassLevel | null;
}

/**
 * From where to where to turn so that the whole of a station goes by: humps and what is beyond them, frequency rising, within the dial.
 *
 * @param rotation - of the dial [rad]
 * @param falling - whether the tuned frequency falls as the angle rises: so it does where the capacitance rises with it
 */
export function passOf(dial: BestDial, rotation: number, falling: boolean): Pick<DialTurn, 'from' | 'to'> {
  const { angle, halfWidth } = dial.resonance;
  const reach = dial.points.reduce((most, p) => Math.max(most, BEYOND * Math.abs(p.angle - angle)), LEAST * halfWidth);
  const low = Math.max(0, angle - reach);
  const high = Math.min(rotation, angle + reach);
  return falling ? { from: high, to: low } : { from: low, to: high };
}

/**
 * Measures the sound of a set while its dial is turned: level against angle.
 *
 * With a tone, the tone's part of each piece (a single line of its Fourier transform), so that neither noise nor harmonics count; without, all of it but its mean.
 */
export class DialPassMeter {
  readonly points: PassLevel[] = [];
  readonly #turn: DialTurn;
  readonly #tone: number | null;
  readonly #piece = new Float64Array(Math.round(WINDOW * SOUND_RATE));
  #filled = 0;
  #measured = 0;

  /**
   * @param tone - [Hz], or null for any other programme
   * @throws GivenError if the tone has no whole number of periods, three or more, in 50 ms
   */
  constructor(turn: DialTurn, tone: number | null) {
    if (tone !== null && !(Number.isInteger(tone * WINDOW) && tone * WINDOW > 2 && tone < SOUND_RATE / 2))
      throw new GivenError(
        'listen.turn.tone',
        `${tone} Hz`,
        'a tone is measured in pieces of 50 ms',
        'Give a multiple of 20 Hz, from 60 Hz on.',
      );
    this.#turn = turn;
    this.#tone = tone;
  }

  /** Takes the samples that follow, at 48 kHz from the moment the dial began to turn. */
  add(sound: Float64Array): void {
    for (let n = 0; n < sound.length; n++) {
      this.#piece[this.#filled++] = sound[n]!;
      if (this.#filled < this.#piece.length) continue;
      const { from, to, seconds } = this.#turn;
      const middle = (this.#measured++ + 0.5) * WINDOW;
      this.#filled = 0;
      if (middle > seconds) continue;
      const rms = this.#tone === null ? rmsOf(this.#piece) : toneOf(this.#piece, this.#tone);
      this.points.push({ angle: from + ((to - from) * middle) / seconds, rms, level: Math.max(FLOOR, amplitudeRatio(rms, 1)) });
    }
  }
}

/**
 * The humps of a pass.
 *
 * @param points - in the order of turning
 * @param carrier - angle at which the set resonates on the carrier [rad]
 * @param sides - 2 for FM, heard on either slope; 1 for AM, heard on top
 */
export function humpsOf(points: readonly PassLevel[], carrier: number, sides: 1 | 2): Humps {
  if (sides === 1) return { loudest: loudestOf(points), dip: null };
  const rising = (points.at(-1)?.angle ?? 0) > (points[0]?.angle ?? 0);
  const crossed = points.findIndex((p) => (rising ? p.angle > carrier : p.angle < carrier));
  const split = crossed < 0 ? points.length : crossed;
  const loudest = [...loudestOf(points.slice(0, split)), ...loudestOf(points.slice(split))];
  if (loudest.length < 2) return { loudest, dip: null };
  const between = points.slice(points.indexOf(loudest[0]!), points.indexOf(loudest[1]!) + 1);
  return { loudest, dip: between.reduce((least, p) => (p.rms < least.rms ? p : least)) };
}

const loudestOf = (points: readonly PassLevel[]): readonly PassLevel[] => {
  const best = points.reduce<PassLevel | null>((most, p) => (most === null || p.rms > most.rms ? p : most), null);
  return best === null || best.rms === 0 ? [] : [best];
};

function rmsOf(x: Float64Array): number {
  let sum = 0;
  let squares = 0;
  for (const v of x) {
    sum += v;
    squares += v * v;
  }
  return Math.sqrt(Math.max(0, squares / x.length - (sum / x.length) ** 2));
}

/**
 * Rms of a tone with a whole number of periods in the piece, under a raised cosine: the mean voltage, which runs up or down the slope as the dial turns, would
 * else leave 1/(pi k) of its change at the k-th line.
 */
function toneOf(x: Float64Array, tone: number): number {
  let re = 0;
  let im = 0;
  for (let n = 0; n < x.length; n++) {
    // whole periods are taken off in whole numbers
    const phase = (2 * Math.PI * ((n * tone) % SOUND_RATE)) / SOUND_RATE;
    const weighed = x[n]! * (1 - Math.cos((2 * Math.PI * (n + 0.5)) / x.length));
    re += weighed * Math.cos(phase);
    im += weighed * Math.sin(phase);
  }
  return (Math.SQRT2 * Math.hypot(re, im)) / x.length;
}
