import { realpathSync } from 'node:fs';
import { music, recordedAudio, SENT_SILENCE, type SentProgramme, type Station, sentSound, sentTone, speechNoise } from '#engine';
import { nearestWord, readQuantity } from '#units';
import { wavAudio } from '#wav';
import { SENTENCES } from '../assets.ts';
import { asOption, refusedOption } from './options.ts';
import { readSound } from './sound-file.ts';

/** A programme as it was asked for. */
export interface Programme {
  readonly sent: SentProgramme;
  /** for reading: `sentences`, `tone of 1000 Hz, rated` */
  readonly words: string;
  /** what is odd about a file and how it was taken */
  readonly remarks: readonly string[];
}

const NAMES = ['sentences', 'music', 'speech-noise', 'tone', 'silence'] as const;

/** Name of the programme that a station sends by itself. */
export const ownProgramme = ({ programme }: Station): string => (programme === 'speech' ? 'sentences' : 'music');

/**
 * The programme of a name, of a frequency, or of a WAV file.
 *
 * @param option - it was asked for by, for the refusal
 * @param standard - frequency of the test tone [Hz]
 * @param level - 0 dB is the limit of multiplex power [dB]
 */
export function programmeOf(option: string, given: string, standard: number, level: number): Programme {
  const named = (words: string, sent: SentProgramme): Programme => ({ words, sent, remarks: [] });
  switch (given) {
    case 'sentences':
      return named(
        'sentences',
        sentSound(() => wavAudio(readSound(SENTENCES), 'repeat'), level),
      );
    case 'music':
      return named(
        'music',
        sentSound(() => recordedAudio(music(), 'repeat'), level),
      );
    case 'speech-noise':
      return named('speech-shaped noise', sentSound(speechNoise, level));
    case 'tone':
      return tone(option, given, standard);
    case 'silence':
      return named('silence, the carrier alone', SENT_SILENCE);
  }
  const frequency = readQuantity(given, 'frequency');
  if (frequency.ok) return tone(option, given, frequency.value);
  if (!/[./\\]/.test(given)) {
    const near = nearestWord(given, NAMES);
    const why = `there is no such programme${near ? `; did you mean "${near}"?` : ''}`;
    throw refusedOption(option, given, why, `There are: ${NAMES.join(', ')}, a frequency such as "400 Hz", or a WAV file of your own.`);
  }
  const file = readSound(given);
  const seconds = file.frames / file.rate;
  wavAudio(file, 'repeat');
  return {
    words: `${given} (${seconds.toFixed(1)} s, ${file.rate} Hz, ${file.channels === 1 ? 'mono' : file.channels === 2 ? 'stereo' : `${file.channels} channels`})`,
    sent: sentSound(() => wavAudio(readSound(given), 'repeat'), level),
    remarks: file.remarks.map((r) => `${given}: ${r}.`),
  };
}

function tone(option: string, given: string, frequency: number): Programme {
  return { words: `tone of ${frequency} Hz at rated swing`, sent: asOption(option, given, () => sentTone(frequency)), remarks: [] };
}

/** Refuses to write over what is being read. */
export function mustDiffer(out: string, given: string | undefined): void {
  const real = (path: string): string | null => {
    try {
      return realpathSync(path);
    } catch {
      return null;
    }
  };
  if (given !== undefined && real(out) !== null && real(out) === real(given))
    throw refusedOption('out', out, 'that file is the programme, and would be written over', 'Give another name.');
}
