import { thirdOctave } from '../../bands.ts';
import { fourierTransform, interval, MersenneTwister } from '../../numeric/index.ts';
import { SPEECH_BANDS, SPEECH_LEVELS } from '../speech-spectrum.ts';
import { AUDIO_RATE } from './audio-path.ts';
import type { AudioSource } from './envelope-source.ts';
import { recordedAudio } from './recorded-audio.ts';

/** Samples after which the noise repeats, without a seam: 10.9 s. */
const PERIOD = 2 ** 19;
/** Rms, full scale 1: -15 dB leaves its peaks, 5 times the rms, just below full scale. */
const RMS = 10 ** (-15 / 20);

/**
 * Noise with the long-term average spectrum of speech from 56 Hz to 17.8 kHz, the same left and right, at 48 kHz.
 *
 * All lines of its period have the amplitude of the spectrum and phases of chance, so each third-octave band has its level exactly over a period; between the
 * middles of bands the density runs straight in dB over the logarithm of frequency.
 * Source: D. Byrne et al., J. Acoust. Soc. Am. 96 (1994) 2108.
 */
export function speechNoise(seed = 1): AudioSource {
  const bands = SPEECH_BANDS.map(thirdOctave);
  const logs = bands.map((b) => Math.log10(b.middle));
  // density from band levels: each band is as wide as its middle, by one factor
  const densities = SPEECH_LEVELS.map((level, b) => level - 10 * logs[b]!);
  const amplitudes = new Float64Array(PERIOD / 2);
  for (const [b, { low, high }] of bands.entries()) {
    const lines: number[] = [];
    let power = 0;
    for (let k = Math.ceil((low / AUDIO_RATE) * PERIOD); k < (high / AUDIO_RATE) * PERIOD; k++) {
      const x = Math.log10((k * AUDIO_RATE) / PERIOD);
      const i = interval(logs, x);
      const t = (x - logs[i]!) / (logs[i + 1]! - logs[i]!);
      amplitudes[k] = 10 ** ((densities[i]! + t * (densities[i + 1]! - densities[i]!)) / 20);
      power += amplitudes[k]! ** 2;
      lines.push(k);
    }
    const scale = Math.sqrt(10 ** (SPEECH_LEVELS[b]! / 10) / power);
    for (const k of lines) amplitudes[k] = amplitudes[k]! * scale;
  }
  const total = Math.sqrt(amplitudes.reduce((s, a) => s + a * a, 0));
  const chance = new MersenneTwister(seed);
  const re = new Float64Array(PERIOD);
  const im = new Float64Array(PERIOD);
  for (let k = 1; k < PERIOD / 2; k++) {
    const phase = 2 * Math.PI * chance.uniform();
    // x = sum of a sqrt 2 cos(...): the real part of the upper half is all there is to it
    const a = ((amplitudes[k]! * RMS) / total) * Math.SQRT2 * PERIOD;
    re[k] = a * Math.cos(phase);
    im[k] = a * Math.sin(phase);
  }
  fourierTransform(PERIOD).inverse(re, im);
  return recordedAudio({ rate: AUDIO_RATE, left: re, right: re }, 'repeat');
}
