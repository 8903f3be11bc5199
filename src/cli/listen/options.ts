import { GivenError, type SoundScale, soundScale } from '#engine';
import { type DimensionName, nearestWord, readQuantity } from '#units';
import type { WavEncoding } from '#wav';
import { BadFile } from '../bad-file.ts';

/** As the command line gives them. */
export interface ListenOptions {
  readonly out: string;
  readonly station?: string;
  readonly dial?: string;
  readonly seconds?: string;
  readonly programme?: string;
  readonly neighbours?: string;
  readonly without?: string;
  readonly turn?: string;
  readonly picture?: string;
  readonly measure?: boolean;
  readonly spectrum?: string;
  readonly gain: string;
  readonly depth: string;
  readonly seed: string;
  readonly calibrate?: boolean;
  readonly json?: boolean;
  readonly working?: string;
}

/** What may be left out of the sound. */
const PARTS = ['neighbours', 'noise', 'room', 'hearing'] as const;
export type Part = (typeof PARTS)[number];

/** What the options ask for, read. */
export interface Plan {
  readonly out: string;
  readonly encoding: WavEncoding;
  readonly scale: SoundScale;
  /** length of the sound [s] */
  readonly seconds: number;
  /** whether the dial is turned meanwhile */
  readonly turned: boolean;
  readonly without: ReadonlySet<Part>;
  readonly seed: number;
}

const ENCODINGS: Readonly<Record<string, WavEncoding>> = { 16: '16-bit', 24: '24-bit', float: 'float' };
const SECONDS = 10;
const SHORTEST = 0.1;
const LONGEST = 3600;
const SEEDS = 2 ** 32;

/** An option that cannot be: what was given, why not, how to mend it. */
export const refusedOption = (option: string, given: string, why: string, mend: string): BadFile =>
  new BadFile(`--${option}${given === '' ? '' : ` ${given}`}: ${why}\n  ${mend}`);

/** @throws BadFile for the first option that cannot be */
export function readPlan(options: ListenOptions): Plan {
  const { out, turn, seconds, picture, calibrate, gain, depth, seed } = options;
  if (!/\.wav$/i.test(out)) throw refusedOption('out', out, 'sound is written as a WAV file', 'Give a name that ends in .wav.');
  if (turn !== undefined && seconds !== undefined)
    throw refusedOption('seconds', seconds, 'with --turn the sound is as long as the turn', 'Leave one of the two out.');
  if (turn !== undefined && options.dial !== undefined)
    throw refusedOption('dial', options.dial, 'with --turn the dial passes all of the station', 'Leave one of the two out.');
  if (picture !== undefined && turn === undefined)
    throw refusedOption('picture', picture, 'it shows a turn of the dial', 'Add --turn "10 s".');
  if (options.measure && turn !== undefined) throw refusedOption('measure', '', 'measures need a dial that stands', 'Leave --turn out.');
  const encoding = ENCODINGS[depth];
  if (!encoding) throw refusedOption('depth', depth, 'samples have 16 or 24 bits, or floating point of 32', 'Give 16, 24 or float.');
  const makeUpGain = quantity('gain', gain, 'decibels');
  if (calibrate && makeUpGain !== 0)
    throw refusedOption('gain', gain, 'the tone by which playback is set has its true level', 'Leave it out.');
  const whole = Number(seed);
  if (!(/^\d+$/.test(seed) && whole < SEEDS)) throw refusedOption('seed', seed, 'a seed is a whole number from 0 to 4294967295', 'Give 1.');
  const scale = asOption('gain', gain, () => soundScale({ makeUpGain }));
  return {
    out,
    encoding,
    scale,
    seconds: turn !== undefined ? length('turn', turn) : seconds !== undefined ? length('seconds', seconds) : SECONDS,
    turned: turn !== undefined,
    without: new Set(
      (options.without ?? '')
        .split(',')
        .map(partOf)
        .filter((p) => p !== null),
    ),
    seed: whole,
  };
}

/** Reads a quantity; its unit may be left out where `unit` says which is meant. */
export function quantity(option: string, text: string, dimension: DimensionName, unit = ''): number {
  const reading = readQuantity(/^[-+]?[\d.]+$/.test(text.trim()) ? `${text} ${unit}` : text, dimension);
  if (reading.ok) return reading.value;
  throw refusedOption(option, text, reading.why, reading.mend);
}

/** What the engine refuses, told as the option that asked for it. */
export function asOption<T>(option: string, given: string, work: () => T): T {
  try {
    return work();
  } catch (e) {
    if (e instanceof GivenError) throw refusedOption(option, given, e.why, e.mend);
    throw e;
  }
}

function length(option: string, text: string): number {
  const seconds = quantity(option, text, 'time', 's');
  if (seconds >= SHORTEST && seconds <= LONGEST) return seconds;
  throw refusedOption(option, text, `sound is made from ${SHORTEST} s to an hour at a time`, 'Give 10 s.');
}

function partOf(text: string): Part | null {
  const word = text.trim();
  if (word === '') return null;
  const part = PARTS.find((p) => p === word);
  if (part) return part;
  const near = nearestWord(word, PARTS);
  throw refusedOption(
    'without',
    word,
    `that is no part of the sound${near ? `; did you mean "${near}"?` : ''}`,
    `There are: ${PARTS.join(', ')}.`,
  );
}
