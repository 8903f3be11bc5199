import { GivenError } from '../../given-error.ts';
import { greatestCommonDivisor } from '../../numeric/index.ts';
import type { ProgrammeModulation } from '../modulation.ts';
import { preEmphasisPower } from '../pre-emphasis.ts';
import { AUDIO_RATE } from './audio-path.ts';
import type { AudioSource, ProgrammeDrive } from './envelope-source.ts';

/** One sine of a test signal. */
export interface Tone {
  /** [Hz], a whole number, so that its phase is exact for ever */
  readonly frequency: number;
  /** peak, full scale 1 */
  readonly amplitude: number;
  /** at time zero, of the sine [rad]; 0 unless given */
  readonly phase?: number;
}

/** Where a test signal is: alike on both sides, on one, or with opposite sign. */
export type Side = 'both' | 'left' | 'right' | 'opposite';

/**
 * Sum of sines, endless, at 48 kHz; without tones, silence.
 *
 * @throws GivenError if a frequency is no whole number from 1 Hz to below 24 kHz
 */
export function toneAudio(tones: readonly Tone[], side: Side = 'both'): AudioSource {
  for (const { frequency } of tones)
    if (!(Number.isInteger(frequency) && frequency >= 1 && frequency < AUDIO_RATE / 2))
      throw new GivenError('programme.tone', `${frequency} Hz`, 'test tones have a whole number of hertz, 1 to 23999', 'Round it.');
  const leftGain = side === 'right' ? 0 : 1;
  const rightGain = side === 'left' ? 0 : side === 'opposite' ? -1 : 1;
  // whole hertz repeat after a second at the latest: each instant is worked out once
  const period = tones.reduce((p, { frequency }) => leastCommonMultiple(p, AUDIO_RATE / greatestCommonDivisor(AUDIO_RATE, frequency)), 1);
  const known = new Float64Array(period);
  let filled = 0;
  let time = 0;
  return {
    rate: AUDIO_RATE,
    next(left, right) {
      for (let n = 0; n < left.length; n++) {
        if (time === filled) {
          known[time] = instant(tones, time);
          filled++;
        }
        const x = known[time]!;
        left[n] = leftGain * x;
        right[n] = rightGain * x;
        if (++time === period) time = 0;
      }
    },
  };
}

function instant(tones: readonly Tone[], time: number): number {
  let x = 0;
  for (let k = 0; k < tones.length; k++) {
    const { frequency, amplitude, phase } = tones[k]!;
    // whole periods are taken off in whole numbers
    x += amplitude * Math.sin((2 * Math.PI * ((time * frequency) % AUDIO_RATE)) / AUDIO_RATE + (phase ?? 0));
  }
  return x;
}

const leastCommonMultiple = (a: number, b: number): number => (a / greatestCommonDivisor(a, b)) * b;

/** The drive that gives a full-scale tone full modulation behind pre-emphasis, whatever its frequency [Hz]. */
export const fullToneDrive = (frequency: number, modulation: ProgrammeModulation): ProgrammeDrive => ({
  kind: 'fixed',
  gain: 1 / Math.sqrt(preEmphasisPower(frequency, modulation.kind === 'fm' ? modulation.preEmphasis : 0)),
});

/** Two tones of equal amplitude for intermodulation; full scale together. */
export const twoTones = (lower: number, upper: number): readonly Tone[] => [
  { frequency: lower, amplitude: 0.5 },
  { frequency: upper, amplitude: 0.5 },
];

/**
 * Many tones at once for a frequency response, of equal amplitude, full scale together.
 *
 * Phases pi k^2/N keep the crest low: 2 to 3 dB over that of a sine where the tones are evenly spaced.
 * Source: D. J. Newman, Proc. Amer. Math. Soc. 16 (1965) 1287; S. Boyd, IEEE Trans. Circuits Syst. 33 (1986) 1018.
 */
export function multitone(frequencies: readonly number[]): readonly Tone[] {
  const tones = frequencies.map((frequency, k) => ({ frequency, amplitude: 1, phase: (Math.PI * k * k) / frequencies.length }));
  // whole hertz repeat every second
  const left = new Float64Array(AUDIO_RATE);
  toneAudio(tones).next(left, new Float64Array(AUDIO_RATE));
  const peak = left.reduce((m, x) => Math.max(m, Math.abs(x)), 0);
  return tones.map((tone) => ({ ...tone, amplitude: 1 / peak }));
}
