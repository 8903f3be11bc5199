import { realpathSync } from 'node:fs';
import {
  type AudioSource,
  fullToneDrive,
  music,
  type ProgrammeDrive,
  type ProgrammeModulation,
  recordedAudio,
  speechNoise,
  toneAudio,
} from '#engine';
import { nearestWord, readQuantity } from '#units';
import { wavAudio } from '#wav';
import { SENTENCES } from '../assets.ts';
import { asOption, refusedOption } from './options.ts';
import { readSound } from './sound-file.ts';

/** A programme, to be sent by any number of stations. */
export interface Programme {
  /** for reading: `sentences`, `tone of 1000 Hz, rated` */
  readonly words: string;
  /** frequency where it is a tone [Hz]; else null */
  readonly tone: number | null;
  /** what is odd about a file and how it was taken */
  readonly remarks: readonly string[];
  audio(seed: number): AudioSource;
  drive(modulation: ProgrammeModulation): ProgrammeDrive;
}

const NAMES = ['sentences', 'music', 'speech-noise', 'tone', 'silence'] as const;

/**
 * The programme of a name, of a frequency, or of a WAV file.
 *
 * Tones are sent at rated swing, as levels count them; all else with the power of the listener's programme level.
 *
 * @param option - it was asked for by, for the refusal
 * @param standard - frequency of the test tone [Hz]
 * @param level - 0 dB is the limit of multiplex power [dB]
 */
export function programmeOf(option: string, given: string, standard: number, level: number): Programme {
  const ridden = (): ProgrammeDrive => ({ kind: 'ridden', level });
  const plain = { tone: null, remarks: [], drive: ridden };
  switch (given) {
    case 'sentences':
      return { ...plain, words: 'sentences', audio: () => wavAudio(readSound(SENTENCES), 'repeat') };
    case 'music':
      return { ...plain, words: 'music', audio: () => recordedAudio(music(), 'repeat') };
    case 'speech-noise':
      return { ...plain, words: 'speech-shaped noise', audio: speechNoise };
    case 'tone':
      return tone(option, given, standard);
    case 'silence':
      return { ...plain, words: 'silence, the carrier alone', audio: () => toneAudio([]), drive: () => ({ kind: 'fixed', gain: 1 }) };
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
    tone: null,
    remarks: file.remarks.map((r) => `${given}: ${r}.`),
    audio: () => wavAudio(readSound(given), 'repeat'),
    drive: ridden,
  };
}

function tone(option: string, given: string, frequency: number): Programme {
  const audio = (): AudioSource => toneAudio([{ frequency, amplitude: 1 }]);
  asOption(option, given, audio);
  return {
    words: `tone of ${frequency} Hz at rated swing`,
    tone: frequency,
    remarks: [],
    audio,
    drive: (modulation) => fullToneDrive(frequency, modulation),
  };
}

/** Samples of audio skipped at a time. */
const CHUNK = 4096;

/** The same source from later on, so that stations with one programme do not speak in chorus. */
export function startedLater(source: AudioSource, seconds: number): AudioSource {
  const scratch = new Float64Array(CHUNK);
  for (let left = Math.round(seconds * source.rate); left > 0; left -= CHUNK) {
    const part = scratch.subarray(0, Math.min(left, CHUNK));
    source.next(part, part.slice());
  }
  return source;
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
