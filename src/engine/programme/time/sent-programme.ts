import type { ProgrammeModulation } from '../modulation.ts';
import type { AudioSource, ProgrammeDrive } from './envelope-source.ts';
import { music } from './music/perform.ts';
import { recordedAudio } from './recorded-audio.ts';
import { speechNoise } from './speech-noise.ts';
import { fullToneDrive, toneAudio } from './tone-audio.ts';

/** What a station is made to send. */
export interface SentProgramme {
  /** frequency where it is a test tone [Hz]; else null */
  readonly tone: number | null;
  /** From its beginning. `seed`: of what is left to chance, so that two stations do not send the same noise. */
  audio(seed: number): AudioSource;
  drive(modulation: ProgrammeModulation): ProgrammeDrive;
}

/**
 * A test tone at rated swing, as levels count it.
 *
 * @throws GivenError if the frequency is no whole number from 1 Hz to below 24 kHz
 */
export function sentTone(frequency: number): SentProgramme {
  const tones = [{ frequency, amplitude: 1 }];
  toneAudio(tones);
  return { tone: frequency, audio: () => toneAudio(tones), drive: (modulation) => fullToneDrive(frequency, modulation) };
}

/** The carrier alone. */
const SILENCE: SentProgramme = { tone: null, audio: () => toneAudio([]), drive: () => ({ kind: 'fixed', gain: 1 }) };

/** A sound sent with the power of the listener's programme level [dB]; 0 dB is the limit of multiplex power. */
export const sentSound = (audio: SentProgramme['audio'], level: number): SentProgramme => ({
  tone: null,
  audio,
  drive: () => ({ kind: 'ridden', level }),
});

/** The programmes that come along, by name. */
export const PROGRAMMES = ['sentences', 'music', 'speech-noise', 'tone', 'silence'] as const;
export type ProgrammeName = (typeof PROGRAMMES)[number];

/** What a station of one kind or the other sends by itself. */
export const ownProgramme = (kind: 'speech' | 'music'): ProgrammeName => (kind === 'speech' ? 'sentences' : 'music');

/**
 * A programme by its name.
 *
 * @param listener - frequency of the test tone [Hz] and level of programmes [dB]
 * @param sentences - the recording of sentences, from its beginning
 * @throws GivenError if the tone has no whole number of hertz
 */
export function namedProgramme(
  name: ProgrammeName,
  { tone, level }: { readonly tone: number; readonly level: number },
  sentences: () => AudioSource,
): SentProgramme {
  switch (name) {
    case 'sentences':
      return sentSound(sentences, level);
    case 'music':
      return sentSound(() => recordedAudio(music(), 'repeat'), level);
    case 'speech-noise':
      return sentSound(speechNoise, level);
    case 'tone':
      return sentTone(tone);
    case 'silence':
      return SILENCE;
  }
}
