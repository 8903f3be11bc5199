import {
  type AudioSource,
  fullToneDrive,
  music,
  type ProgrammeDescription,
  type ProgrammeDrive,
  type ProgrammeModulation,
  recordedAudio,
  type Station,
  speechNoise,
  toneAudio,
} from '#engine';
import { bytesSource, openWav, wavAudio } from '#wav';
import type { Sent } from './protocol.ts';

/** A station that sends speech sends the sentences, one that sends music the tune, unless told otherwise. */
function kindOf(sent: Sent, programme: Station['programme']): Exclude<Sent['kind'], 'own'> {
  if (sent.kind !== 'own') return sent.kind;
  return programme === 'speech' ? 'sentences' : 'music';
}

/**
 * Sound that a station sends.
 *
 * @param sentences - the recording, as a WAV file
 * @param seed - of noise, so that two stations do not send the same
 * @param tone - frequency of the test tone [Hz]
 * @throws WavError if a file of the user's own cannot be read
 */
export function audioOf(sent: Sent, programme: Station['programme'], sentences: ArrayBuffer, seed: number, tone: number): AudioSource {
  switch (kindOf(sent, programme)) {
    case 'sentences':
      return wavAudio(openWav(bytesSource(new Uint8Array(sentences))), 'repeat');
    case 'music':
      return recordedAudio(music(), 'repeat');
    case 'speech-noise':
      return speechNoise(seed);
    case 'tone':
      return toneAudio([{ frequency: tone, amplitude: 1 }]);
    case 'silence':
      return toneAudio([]);
    case 'wav':
      return wavAudio(openWav(bytesSource(new Uint8Array((sent as Extract<Sent, { kind: 'wav' }>).bytes))), 'repeat');
  }
}

/** How loud it is sent: a tone at rated swing, as levels count it; all else with the power of the listener's programme level. */
export function driveOf(sent: Sent, modulation: ProgrammeModulation, { tone, level }: ProgrammeDescription): ProgrammeDrive {
  if (sent.kind === 'tone') return fullToneDrive(tone, modulation);
  if (sent.kind === 'silence') return { kind: 'fixed', gain: 1 };
  return { kind: 'ridden', level };
}
