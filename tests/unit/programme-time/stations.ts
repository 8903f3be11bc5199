import { type AudioSource, fullToneDrive, type ModulatorOptions, modulator, type ProgrammeModulation, type Side, toneAudio } from '#engine';
import { decode, multiplexSpectrum, take } from './ideal-receiver.ts';

export const mono: ProgrammeModulation & { kind: 'fm' } = { kind: 'fm', deviation: 75e3, preEmphasis: 50e-6, stereo: false };
export const stereo: typeof mono = { ...mono, stereo: true };
export const american: typeof mono = { ...stereo, preEmphasis: 75e-6 };
export const am: ProgrammeModulation = { kind: 'am', depth: 0.9 };
export const RATE = 1_500_000;
export const asGiven: ModulatorOptions = { drive: { kind: 'fixed', gain: 1 } };
export const dB = (ratio: number): number => 20 * Math.log10(ratio);

/** What an ideal receiver gets of a station after its beginning: 40 ms, so that frequencies are multiples of 25 Hz. */
export function received(audio: AudioSource, modulation: ProgrammeModulation & { kind: 'fm' }, options: ModulatorOptions, rate = RATE) {
  const multiplex = multiplexSpectrum(take(modulator(audio, modulation, rate, options), 0.8, 0.04));
  return { multiplex, ...decode(multiplex, modulation.deviation, modulation.preEmphasis, modulation.stereo) };
}

/** A tone that fills 0.99 of the modulation after pre-emphasis, where the limiter rests. */
export const tone = (frequency: number, side: Side, modulation: ProgrammeModulation & { kind: 'fm' }, rate = RATE) =>
  received(toneAudio([{ frequency, amplitude: 0.99 }], side), modulation, { drive: fullToneDrive(frequency, modulation) }, rate);
