import { realpathSync } from 'node:fs';
import { namedProgramme, PROGRAMMES, type ProgrammeName, type SentProgramme, sentSound, sentTone } from '#engine';
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

/** Programmes by their names, for reading. */
const WORDS: Readonly<Record<Exclude<ProgrammeName, 'tone'>, string>> = {
  sentences: 'sentences',
  music: 'music',
  'speech-noise': 'speech-shaped noise',
  silence: 'silence, the carrier alone',
};

/**
 * The programme of a name, of a frequency, or of a WAV file.
 *
 * @param option - it was asked for by, for the refusal
 * @param standard - frequency of the test tone [Hz]
 * @param level - 0 dB is the limit of multiplex power [dB]
 */
export function programmeOf(option: string, given: string, standard: number, level: number): Programme {
  const name = PROGRAMMES.find((n) => n === given);
  if (name === 'tone') return tone(option, given, standard);
  if (name) {
    const sent = namedProgramme(name, { tone: standard, level }, () => wavAudio(readSound(SENTENCES), 'repeat'));
    return { words: WORDS[name], sent, remarks: [] };
  }
  const frequency = readQuantity(given, 'frequency');
  if (frequency.ok) return tone(option, given, frequency.value);
  if (!/[./\\]/.test(given)) {
    const near = nearestWord(given, PROGRAMMES);
    const why = `there is no such programme${near ? `; did you mean "${near}"?` : ''}`;
    throw refusedOption(
      option,
      given,
      why,
      `There are: ${PROGRAMMES.join(', ')}, a frequency such as "400 Hz", or a WAV file of your own.`,
    );
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
