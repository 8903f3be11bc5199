import type { Reception } from '../chain/index.ts';
import { type Listening, listen, listeningWindow, SOUND_RATE } from '../listen/index.ts';
import { type AudioSource, modulator, type ProgrammeDrive, toneAudio } from '../programme/index.ts';

/** What a station sends during a test. */
export interface Sent {
  readonly audio: AudioSource;
  readonly drive: ProgrammeDrive;
}

/** No modulation; a stereo station's pilot stays on. */
export const silence = (): Sent => ({ audio: toneAudio([]), drive: { kind: 'fixed', gain: 1 } });

/** A stretch of sound from a set. */
export interface Played {
  /** earpiece [V], at 48 kHz */
  readonly sound: Float64Array;
  readonly listening: Listening;
}

export interface PlayOptions {
  /** the wanted station among the reception's */
  readonly station: number;
  /** of the dial [rad] */
  readonly angle: number;
  readonly sent: (station: number) => Sent;
  /** seed of the noise; none unless given */
  readonly noise?: number;
  /** thrown away first, until all has settled [s] */
  readonly settle: number;
  /** kept [s] */
  readonly seconds: number;
}

/**
 * Rate for one FM station by itself [Hz]: twice what serves to listen. A strong station on a sharp tank, whose detector's current follows the audio by a large
 * part, is then off by 0.05 dB in the fundamental and 0.8 dB in the second harmonic, where the least rate makes it 0.13 and 1.6 dB.
 */
const ALONE_RATE = 960_000;
/** Samples between two looks at whether to go on: a tenth of a second of sound. */
const PIECE = SOUND_RATE / 10;

/** Plays a set and keeps the sound; yields the seconds of sound made so far. */
export function* play(reception: Reception, options: PlayOptions): Generator<number, Played> {
  const { station, angle, sent, noise, settle, seconds } = options;
  yield 0;
  const listening = listen(reception, {
    station,
    angle,
    broadcast: (k, rate) => {
      const { audio, drive } = sent(k);
      return { source: modulator(audio, reception.signals[k]!.received.station.modulation, rate, { drive }), turned: false };
    },
    ...(noise === undefined ? {} : { noise }),
    ...(standsAlone(reception, station) ? { rate: ALONE_RATE } : {}),
  });
  const skipped = Math.round(settle * SOUND_RATE);
  const all = new Float64Array(skipped + Math.round(seconds * SOUND_RATE));
  for (let at = 0; at < all.length; at += PIECE) {
    listening.set.process(all.subarray(at, at + PIECE));
    yield Math.min(at + PIECE, all.length) / SOUND_RATE;
  }
  return { sound: all.slice(skipped), listening };
}

/** The reception of one station, as if no other were on the air. */
export const alone = (reception: Reception, station: number): Reception => ({ ...reception, signals: [reception.signals[station]!] });

/** Whether an FM station has no other within the window that is followed: then the rate is free to be chosen. */
function standsAlone({ signals }: Reception, station: number): boolean {
  const { frequency, modulation } = signals[station]!.received.station;
  const near = signals.filter((s) => Math.abs(s.received.station.frequency - frequency) <= listeningWindow(frequency));
  return modulation.kind === 'fm' && near.length === 1;
}
