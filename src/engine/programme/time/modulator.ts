import { GivenError } from '../../given-error.ts';
import { Doubler, PhasorRun, runPhasor, type SampleSource, SixTapInterpolator } from '../../numeric/index.ts';
import type { ProgrammeModulation } from '../modulation.ts';
import { AUDIO_LIMIT, PILOT_FREQUENCY, PILOT_SHARE, STEREO_AUDIO_SHARE, SUBCARRIER_FREQUENCY } from '../multiplex.ts';
import { multiplexPower } from '../multiplex-power.ts';
import { programmeSwing, toneSwing } from '../swing.ts';
import { AM_STOP, AUDIO_RATE, programmeAudio } from './audio-path.ts';
import type { AudioSource, EnvelopeSource, ModulatedSource, ModulationMeter, ProgrammeDrive } from './envelope-source.ts';
import { LIMITER_BLOCK, Limiter, type LimiterReport } from './limiter.ts';
import { Meter } from './modulation-meter.ts';
import { MULTIPLEX_RATE, MultiplexSignal } from './multiplex-signal.ts';
import { RiddenGain } from './ridden-gain.ts';
import { Rotation } from './rotation.ts';

export interface ModulatorOptions {
  readonly drive: ProgrammeDrive;
  /** pilot of a stereo station, share of full deviation; 0.09 unless given */
  readonly pilotShare?: number;
  /** the carrier above the frequency that the envelope is about [Hz]; 0, its own, unless given */
  readonly offset?: number;
}

/** Images of audio and multiplex when their rates are doubled [dB]. */
const MULTIPLEX_ATTENUATION = 90;
const MULTIPLEX_TOP = SUBCARRIER_FREQUENCY + AUDIO_LIMIT;
const LEAST_AUDIO_RATE = 4000;
/** Envelope rates [Hz]. FM: a mean is taken over no more than a sample of the multiplex; AM: twice the audio with its cut-off, and some room. */
const LEAST_FM_RATE = MULTIPLEX_RATE;
const LEAST_AM_RATE = 12_000;
/** From this ratio of envelope to multiplex on, the frequency is run along between its samples. */
const RUN_FROM = 3;
const GREATEST_RATE = 20_000_000;
const RATE_STEP = 1000;
/** What audio leaves of full deviation. */
const GREATEST_PILOT = 1 - STEREO_AUDIO_SHARE + 1e-12;

/**
 * A station in time: audio in, complex envelope out.
 *
 * Band limit and pre-emphasis, gain, limiter, stereo multiplex at 192 kHz. FM: the frequency is interpolated to the envelope's rate (error -76 dB at
 * the top of the stereo multiplex, -87 dB over it; -94 dB in mono) as its mean over each interval of that rate, so that the phase is its
 * integral, exactly: exp(j 2 pi integral of f dt); sample k stands at the time (k + 1/2)/rate. AM: 1 + m x(t); sample k stands at k/rate.
 *
 * @param rate - of the envelope [Hz], a multiple of 1 kHz; FM from 2 (D + 53 kHz), 192 kHz at least; AM from 12 kHz
 * @throws GivenError if a rate cannot be used, the offset takes the station out of the envelope's band, the pilot is outside 0 to 0.1, the gain
 *   is no number above zero, or the level is above 12 dB
 * Source: Rec. ITU-R BS.450-3; BS.412-9; 47 CFR 73.322.
 */
export function modulator(audio: AudioSource, modulation: ProgrammeModulation, rate: number, options: ModulatorOptions): ModulatedSource {
  check(audio, modulation, rate, options);
  return new Station(audio, modulation, rate, options);
}

class Station implements ModulatedSource {
  readonly rate: number;
  readonly modulation: ProgrammeModulation;
  readonly #swing: SixTapInterpolator;
  /** FM at a rate far above that of the multiplex: in place of the interpolator and the phasor after it */
  readonly #run: PhasorRun | null;
  readonly add: EnvelopeSource['add'];
  readonly #limiter: Limiter;
  readonly #meter = new Meter();
  readonly #gain: { readonly gain: number };
  readonly #offset: number;
  /** AM only: FM takes the offset into its phase */
  readonly #rotation: Rotation | null;
  #phase = 0;

  constructor(audio: AudioSource, modulation: ProgrammeModulation, rate: number, options: ModulatorOptions) {
    this.rate = rate;
    this.modulation = modulation;
    this.#offset = options.offset ?? 0;
    this.#rotation = modulation.kind === 'am' ? new Rotation(this.#offset, rate) : null;
    const channels = modulation.kind === 'fm' && modulation.stereo ? 2 : 1;
    const { driven, limited } = drive(programmeAudio(audio, modulation, channels), channels, modulation, options.drive);
    this.#gain = driven;
    const doubled = new Doubler(driven, AUDIO_RATE, AUDIO_LIMIT, MULTIPLEX_ATTENUATION, channels);
    const dense = new Doubler(doubled, 2 * AUDIO_RATE, AUDIO_RATE - AUDIO_LIMIT, MULTIPLEX_ATTENUATION, channels);
    this.#limiter = new Limiter(dense, MULTIPLEX_RATE, channels, limited);
    const multiplex = new MultiplexSignal(this.#limiter, modulation, options.pilotShare ?? PILOT_SHARE, this.#meter);
    const toEnvelope =
      channels === 2
        ? {
            source: new Doubler(multiplex, MULTIPLEX_RATE, MULTIPLEX_TOP, MULTIPLEX_ATTENUATION, 1),
            rate: 2 * MULTIPLEX_RATE,
            band: MULTIPLEX_TOP,
          }
        : { source: multiplex, rate: MULTIPLEX_RATE, band: PILOT_FREQUENCY };
    const interval = modulation.kind === 'fm' ? 1 / rate : 0;
    const run =
      modulation.kind === 'fm' && rate >= RUN_FROM * toEnvelope.rate
        ? new PhasorRun(toEnvelope.source, toEnvelope.rate, rate, toEnvelope.band, this.#offset)
        : null;
    this.#run = run;
    this.add = run === null ? undefined : (re, im, from, count, gain) => run.add(re, im, from, count, gain);
    this.#swing = new SixTapInterpolator(toEnvelope.source, toEnvelope.rate, rate, toEnvelope.band, interval);
  }

  next(re: Float64Array, im: Float64Array): void {
    if (this.#run !== null) {
      re.fill(0);
      im.fill(0);
      this.#run.add(re, im, 0, re.length, 1);
      return;
    }
    if (this.#rotation === null) {
      this.#swing.next(im);
      this.#phase = runPhasor(this.#phase, re, im, 1 / this.rate, this.#offset);
      return;
    }
    this.#swing.next(re);
    for (let n = 0; n < re.length; n++) re[n] = 1 + re[n]!;
    this.#rotation.turn(re, im);
  }

  meter(): ModulationMeter {
    const { modulation } = this;
    const densest = this.#meter.densestRms;
    return {
      duration: this.#meter.duration,
      peak: this.#meter.peak,
      rms: this.#meter.rms,
      multiplexPower: modulation.kind === 'fm' && densest > 0 ? multiplexPower(densest, modulation.deviation) : null,
      leastLimiterGain: this.#limiter.leastGain,
      limiting: this.#limiter.share,
      gain: this.#gain.gain,
    };
  }
}

/** The gain ahead of the limiter, and who is to be told what the limiter did. */
function drive(
  audio: SampleSource,
  channels: 1 | 2,
  modulation: ProgrammeModulation,
  given: ProgrammeDrive,
): { readonly driven: SampleSource & { readonly gain: number }; readonly limited: LimiterReport | null } {
  if (given.kind === 'fixed') return { driven: new FixedGain(audio, channels, given.gain), limited: null };
  const ridden = new RiddenGain(audio, channels, (programmeSwing(modulation, given.level) / toneSwing(modulation)) ** 2);
  return { driven: ridden, limited: (before, after) => ridden.limited(before, after, LIMITER_BLOCK / MULTIPLEX_RATE) };
}

class FixedGain implements SampleSource {
  readonly gain: number;
  readonly #source: SampleSource;
  readonly #stereo: boolean;
  constructor(source: SampleSource, channels: 1 | 2, gain: number) {
    this.gain = gain;
    this.#source = source;
    this.#stereo = channels === 2;
  }
  next(first: Float64Array, second: Float64Array): void {
    this.#source.next(first, second);
    for (let n = 0; n < first.length; n++) first[n] = first[n]! * this.gain;
    if (this.#stereo) for (let n = 0; n < second.length; n++) second[n] = second[n]! * this.gain;
  }
}

function check(audio: AudioSource, modulation: ProgrammeModulation, rate: number, options: ModulatorOptions): void {
  const reach = modulation.kind === 'fm' ? modulation.deviation + MULTIPLEX_TOP : AM_STOP;
  const least = Math.max(2 * reach, modulation.kind === 'fm' ? LEAST_FM_RATE : LEAST_AM_RATE);
  if (!(rate >= least && rate <= GREATEST_RATE && rate % RATE_STEP === 0))
    throw new GivenError(
      'programme.rate',
      `${rate} Hz`,
      `the envelope of ${modulation.kind.toUpperCase()} has ${least / 1e3} to ${GREATEST_RATE / 1e3} thousand samples a second, a whole number of thousands`,
      'Round it up.',
    );
  const offset = options.offset ?? 0;
  if (!(Math.abs(offset) + reach <= rate / 2))
    throw new GivenError(
      'programme.offset',
      `${offset} Hz`,
      `with ${reach / 1e3} kHz of the station on either side it goes beyond half of ${rate / 1e3} thousand samples a second`,
      'Raise the rate of the envelope, or leave this station out.',
    );
  if (!(Number.isInteger(audio.rate) && audio.rate >= LEAST_AUDIO_RATE))
    throw new GivenError(
      'programme.audio.rate',
      `${audio.rate} Hz`,
      `audio has a whole number of samples a second, ${LEAST_AUDIO_RATE} or more`,
      'Convert the recording to 48000 Hz.',
    );
  const pilot = options.pilotShare ?? PILOT_SHARE;
  if (!(pilot >= 0 && pilot <= GREATEST_PILOT))
    throw new GivenError(
      'programme.pilotShare',
      `${pilot}`,
      'audio has 0.9 of full deviation, which leaves a pilot up to 0.1',
      'The standard has 0.08 to 0.1.',
    );
  if (options.drive.kind === 'fixed' && !(options.drive.gain > 0 && Number.isFinite(options.drive.gain)))
    throw new GivenError(
      'programme.drive.gain',
      `${options.drive.gain}`,
      'a gain is a number above zero',
      'Give 1 for full scale at full modulation.',
    );
}
