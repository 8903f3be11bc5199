import type { Reception } from '../chain/index.ts';
import { envelopeRate, halfWidthOf, type Listening, listen, listeningWindow, SOUND_RATE } from '../listen/index.ts';
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
  /** whether small things beside a strong carrier count: a higher rate and more work where there are several stations */
  readonly fine: boolean;
}

/**
 * Where small things beside a strong carrier are measured, envelopes have so many times the samples that serve to listen.
 *
 * One strong FM station on a sharp tank is then off by 0.05 dB in the fundamental and 0.8 dB in the second harmonic, where the least rate makes it 0.13 and
 * 1.6 dB; programme that leaks in from a weak neighbour beside a strong carrier by 1 dB at -75 dB, where it makes it 9 dB. AM gains nothing by it.
 */
const FINE = 2;
/** Samples between two looks at whether to go on: a tenth of a second of sound. */
const PIECE = SOUND_RATE / 10;

/** Plays a set and keeps the sound; yields the seconds of sound made so far. */
export function* play(reception: Reception, options: PlayOptions): Generator<number, Played> {
  const { station, angle, sent, noise, settle, seconds, fine } = options;
  yield 0;
  const listening = listen(reception, {
    station,
    angle,
    broadcast: (k, rate) => {
      const { audio, drive } = sent(k);
      return { source: modulator(audio, reception.signals[k]!.received.station.modulation, rate, { drive }), turned: false };
    },
    ...(noise === undefined ? {} : { noise }),
    ...rateFor(reception, station, fine),
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

/** The finer rate for FM where it is asked for, or costs little since no other station is followed beside the wanted one; else the engine chooses. */
function rateFor({ signals }: Reception, station: number, fine: boolean): { readonly rate?: number } {
  const reference = signals[station]!.received.station.frequency;
  const occupied = signals.flatMap(({ received: { station: s } }) => {
    const offset = s.frequency - reference;
    return Math.abs(offset) <= listeningWindow(reference)
      ? [{ offset, halfWidth: halfWidthOf(s.modulation), kind: s.modulation.kind }]
      : [];
  });
  const fm = occupied.some((o) => o.kind === 'fm');
  return fm && (fine || occupied.length === 1) ? { rate: FINE * envelopeRate(occupied) } : {};
}
