import { thirdOctave } from '../bands.ts';
import {
  AM_AUDIO_LIMIT,
  AUDIO_LIMIT,
  multitone,
  type ProgrammeModulation,
  preEmphasisGain,
  preEmphasisPower,
  programmeSwing,
  recordedAudio,
  type Side,
  speechNoise,
  toneAudio,
  toneSwing,
} from '../programme/index.ts';
import type { Sent } from './playing.ts';
import { powerSpectrum } from './power-spectrum.ts';
import type { ResponseTone as FoundTone } from './response.ts';

/** One tone of a test, as it swings the carrier. */
export interface SentTone {
  /** [Hz] */
  readonly frequency: number;
  /** peak swing behind pre-emphasis, as a share of full modulation [1] */
  readonly share: number;
  readonly phase?: number;
}

/** A tone for a frequency response, with the amplitude of its audio. */
export type ResponseTone = SentTone & FoundTone;

const timeConstant = (m: ProgrammeModulation): number => (m.kind === 'fm' ? m.preEmphasis : 0);
const emphasis = (frequency: number, m: ProgrammeModulation): number => 10 ** (preEmphasisGain(frequency, timeConstant(m)) / 20);
const audioLimit = (m: ProgrammeModulation): number => (m.kind === 'fm' ? AUDIO_LIMIT : AM_AUDIO_LIMIT);

/** Tones of given swing: each is sent weaker by the gain of pre-emphasis at its frequency. */
export function sentTones(tones: readonly SentTone[], modulation: ProgrammeModulation, side: Side = 'both'): Sent {
  return {
    audio: toneAudio(
      tones.map(({ frequency, share, phase }) => ({
        frequency,
        amplitude: share / emphasis(frequency, modulation),
        ...(phase === undefined ? {} : { phase }),
      })),
      side,
    ),
    drive: { kind: 'fixed', gain: 1 },
  };
}

/** Share of full modulation at which a tone has the power of programme, at most 1. */
export const programmeShare = (modulation: ProgrammeModulation, level: number): number =>
  Math.min(1, (Math.SQRT2 * programmeSwing(modulation, level)) / toneSwing(modulation));

/** Middles of the third octaves over which a frequency response is measured, nominal [Hz]. */
const RESPONSE_BANDS: readonly number[] = [
  50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000, 10000, 12500,
];

/**
 * Many tones for a frequency response, near the middles of the third octaves up to the station's audio limit, each of equal swing, together with the
 * power of programme.
 *
 * All are odd numbers of hertz, so that no product of second order falls on a tone; and each is chosen so that none of third order does,
 * a + b - c or a + b + c, but those that always do (a + b - b). Over one second every tone is a line of its own.
 */
export function responseTones(modulation: ProgrammeModulation, level: number): readonly ResponseTone[] {
  const bands = RESPONSE_BANDS.filter((f) => f <= audioLimit(modulation));
  const frequencies: number[] = [];
  for (const band of bands) frequencies.push(clearOdd(Math.round(thirdOctave(band).middle), frequencies));
  const share = programmeShare(modulation, level) / Math.sqrt(bands.length);
  const crest = multitone(frequencies);
  return frequencies.map((frequency, k) => ({
    nominal: bands[k]!,
    frequency,
    share,
    amplitude: share / emphasis(frequency, modulation),
    phase: crest[k]!.phase ?? 0,
  }));
}

/** The odd number nearest to a frequency that keeps products of third order off all tones. */
function clearOdd(near: number, chosen: readonly number[]): number {
  for (let step = 0; ; step++) for (const f of [near - step, near + step]) if (f > 0 && f % 2 === 1 && clear([...chosen, f])) return f;
}

function clear(tones: readonly number[]): boolean {
  const all = new Set(tones);
  for (const [i, a] of tones.entries())
    for (const b of tones.slice(i))
      for (const c of tones) {
        if (all.has(a + b + c)) return false;
        if (c !== a && c !== b && all.has(a + b - c)) return false;
      }
  return true;
}

/** Samples that a modulator may read ahead of what it has sent: half a second. */
const AHEAD = 24_000;
const RATE = 48_000;
const SIZE = 4096;

/** Speech-shaped noise as a station sends it. */
export interface SpeechProgramme {
  /** the audio ahead of pre-emphasis, full scale 1, at 48 kHz */
  readonly samples: Float64Array;
  /** gain between audio and limiter [1] */
  readonly gain: number;
  /** from its beginning */
  sent(): Sent;
}

/**
 * Noise with the long-term spectrum of speech, at a fixed gain that gives this very stretch the power of programme behind band limit and pre-emphasis.
 *
 * @param level - programme against the limit [dB], as `programmeSwing`
 * @param seconds - how long it lasts; silence follows
 */
export function speechProgramme(modulation: ProgrammeModulation, level: number, seconds: number, seed: number): SpeechProgramme {
  const samples = new Float64Array(Math.round(seconds * RATE) + AHEAD);
  speechNoise(seed).next(samples, new Float64Array(samples.length));
  const { power, binWidth } = powerSpectrum(samples, RATE, SIZE);
  const tau = timeConstant(modulation);
  let emphasised = 0;
  for (let k = 1; k * binWidth <= audioLimit(modulation); k++) emphasised += power[k]! * preEmphasisPower(k * binWidth, tau);
  const gain = programmeSwing(modulation, level) / toneSwing(modulation) / Math.sqrt(emphasised);
  return {
    samples,
    gain,
    sent: () => ({ audio: recordedAudio({ rate: RATE, left: samples, right: samples }, 'silence'), drive: { kind: 'fixed', gain } }),
  };
}

/** Swing for a unit of audio at a frequency [Hz or 1]: gain, pre-emphasis and full modulation; none above the station's audio limit. */
export const swingOfAudio = ({ gain }: SpeechProgramme, modulation: ProgrammeModulation, frequency: number): number =>
  frequency <= audioLimit(modulation) ? gain * emphasis(frequency, modulation) * toneSwing(modulation) : 0;
