import { music, recordedAudio, SENT_SILENCE, type SentProgramme, type Station, sentSound, sentTone, speechNoise } from '#engine';
import { bytesSource, openWav, wavAudio } from '#wav';
import type { Play, Sent } from './protocol.ts';

/** A station that sends speech sends the sentences, one that sends music the tune, unless told otherwise. */
function kindOf(sent: Sent, programme: Station['programme']): Exclude<Sent['kind'], 'own'> {
  if (sent.kind !== 'own') return sent.kind;
  return programme === 'speech' ? 'sentences' : 'music';
}

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
  const recording = (bytes: ArrayBuffer): SentProgramme =>
    sentSound(() => wavAudio(openWav(bytesSource(new Uint8Array(bytes))), 'repeat'), listener.level);
  switch (kindOf(sent, own)) {
    case 'sentences':
      return recording(sentences);
    case 'music':
      return sentSound(() => recordedAudio(music(), 'repeat'), listener.level);
    case 'speech-noise':
      return sentSound(speechNoise, listener.level);
    case 'tone':
      return sentTone(listener.tone);
    case 'silence':
      return SENT_SILENCE;
    case 'wav':
      return recording((sent as Extract<Sent, { kind: 'wav' }>).bytes);
  }
}
