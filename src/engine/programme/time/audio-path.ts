import { type Kernel, type LowPassKernel, lowPassKernel, Resampler, type SampleSource } from '../../numeric/index.ts';
import type { ProgrammeModulation } from '../modulation.ts';
import { AUDIO_LIMIT, PILOT_FREQUENCY } from '../multiplex.ts';
import { AM_AUDIO_LIMIT } from '../swing.ts';
import type { AudioSource } from './envelope-source.ts';

/** Rate of audio inside a transmitter [Hz]. */
export const AUDIO_RATE = 48_000;
/** AM is cut off from here up [Hz]. */
export const AM_STOP = 5500;
/** Stop bands [dB]; in FM pre-emphasis lifts what is left there by 17 to 24 dB. */
const FM_ATTENUATION = 85;
const AM_ATTENUATION = 70;
/** Share of the audio's own rate up to which it is passed on, where that is less than the limit. */
const OWN_LIMIT = 0.46;
/** Audio is coupled by a first-order high-pass of this corner [Hz]: -0.02 dB at 30 Hz, and no shift of the carrier by a recording's offset. */
const COUPLING_CORNER = 2;
const COUPLING = 1 - Math.exp((-2 * Math.PI * COUPLING_CORNER) / AUDIO_RATE);

/**
 * Audio as it goes to the limiter, at 48 kHz: band-limited, pre-emphasised, without its mean; one channel, the half sum, or two.
 *
 * FM: passed to 15 kHz, cut from 19 kHz, so that the pilot is clear. AM: to 4.5 kHz, cut from 5.5 kHz. Where the audio's own rate is low, passed to
 * 0.46 of it. Pre-emphasis 1 + j w tau is exact in magnitude and phase: the filter's response is h + tau dh/dt, h that of the
 * band limit, so that in the pass band only h's ripple of 6e-5 is left (AM: 3e-4).
 */
export function programmeAudio(audio: AudioSource, modulation: ProgrammeModulation, channels: 1 | 2): SampleSource {
  const fm = modulation.kind === 'fm';
  const pass = Math.min(fm ? AUDIO_LIMIT : AM_AUDIO_LIMIT, OWN_LIMIT * audio.rate);
  const stop = Math.min(fm ? PILOT_FREQUENCY : AM_STOP, audio.rate - pass);
  const low = lowPassKernel(pass, stop, fm ? FM_ATTENUATION : AM_ATTENUATION);
  const kernel = fm ? emphasised(low, modulation.preEmphasis) : low;
  const source = channels === 1 ? new HalfSum(audio) : audio;
  return new Coupled(new Resampler(source, audio.rate, AUDIO_RATE, kernel, channels), channels);
}

const emphasised = (low: LowPassKernel, timeConstant: number): Kernel => ({
  before: low.before,
  after: low.after,
  at: (t) => low.at(t) + timeConstant * low.slope(t),
});

/** Both channels of stereo audio as one. */
class HalfSum implements SampleSource {
  readonly #audio: SampleSource;
  constructor(audio: SampleSource) {
    this.#audio = audio;
  }
  next(first: Float64Array, second: Float64Array): void {
    this.#audio.next(first, second);
    for (let n = 0; n < first.length; n++) first[n] = (first[n]! + second[n]!) / 2;
  }
}

/** Takes off the running mean. */
class Coupled implements SampleSource {
  readonly #source: SampleSource;
  readonly #stereo: boolean;
  #firstMean = 0;
  #secondMean = 0;
  constructor(source: SampleSource, channels: 1 | 2) {
    this.#source = source;
    this.#stereo = channels === 2;
  }
  next(first: Float64Array, second: Float64Array): void {
    this.#source.next(first, second);
    this.#firstMean = couple(first, this.#firstMean);
    if (this.#stereo) this.#secondMean = couple(second, this.#secondMean);
  }
}

function couple(x: Float64Array, mean: number): number {
  let m = mean;
  for (let n = 0; n < x.length; n++) {
    m += COUPLING * (x[n]! - m);
    x[n] = x[n]! - m;
  }
  return m;
}
