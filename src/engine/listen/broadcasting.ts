import type { Reception } from '../chain/index.ts';
import type { Station } from '../place/index.ts';
import { type AudioSource, modulator, type SentProgramme } from '../programme/index.ts';
import type { ListeningOptions } from './listening.ts';

/** Stations with the same programme begin so far apart in it [s]: in chorus a neighbour would be taken for the wanted station. */
const APART = 7;
/** Samples of audio skipped at a time. */
const CHUNK = 4096;

/** Who is listened to, and what each station of a reception sends. */
export interface BroadcastingOptions {
  /** the wanted station among the reception's; its programme begins at its beginning */
  readonly wanted: number;
  /** of what is left to chance; each station has its own from here on */
  readonly seed: number;
  readonly sent: (station: Station, index: number) => SentProgramme;
}

/** The stations of a reception on the air, each with what it is made to send, for `listen`. */
export function broadcasting({ signals }: Reception, { wanted, seed, sent }: BroadcastingOptions): ListeningOptions['broadcast'] {
  return (k, rate, offset) => {
    const { station } = signals[k]!.received;
    const programme = sent(station, k);
    const later = k === wanted || programme.tone !== null ? 0 : APART * (k + 1);
    const audio = begunEarlier(programme.audio(seed + k), later);
    return { source: modulator(audio, station.modulation, rate, { drive: programme.drive(station.modulation), offset }), turned: true };
  };
}

/** A source that has been going for some seconds. */
function begunEarlier(source: AudioSource, seconds: number): AudioSource {
  const [left, right] = [new Float64Array(CHUNK), new Float64Array(CHUNK)];
  for (let rest = Math.round(seconds * source.rate); rest > 0; rest -= CHUNK) {
    const part = Math.min(rest, CHUNK);
    source.next(left.subarray(0, part), right.subarray(0, part));
  }
  return source;
}
