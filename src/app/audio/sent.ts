import { type AudioSource, namedProgramme, ownProgramme, type SentProgramme, type Station, sentSound } from '#engine';
import { bytesSource, openWav, wavAudio } from '#wav';
import type { Play, Sent } from './protocol.ts';

/**
 * What a station sends.
 *
 * @param own - kind of what the station sends by itself
 * @param sentences - the recording, as a WAV file
 * @param listener - frequency of the test tone [Hz] and level of programmes [dB]
 * @throws WavError if a file of the user's own cannot be read
 */
export function sentBy(
  sent: Sent,
  own: Station['programme'],
  sentences: Play['sentences'],
  listener: { readonly tone: number; readonly level: number },
): SentProgramme {
  if (sent.kind === 'wav') return sentSound(() => recording(sent.bytes), listener.level);
  return namedProgramme(sent.kind === 'own' ? ownProgramme(own) : sent.kind, listener, () => recording(sentences));
}

const recording = (bytes: ArrayBuffer): AudioSource => wavAudio(openWav(bytesSource(new Uint8Array(bytes))), 'repeat');
