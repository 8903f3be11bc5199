import type { ProgrammeModulation } from '../modulation.ts';

/** Audio of a programme, left and right, full scale 1, at `rate` [Hz]; endless: it repeats or falls silent after its end, as its maker says. */
export interface AudioSource {
  readonly rate: number;
  /** Fills both arrays (of equal length) with the samples that follow; block size never changes the result. */
  next(left: Float64Array, right: Float64Array): void;
}

/**
 * A station's signal as complex envelope about its own carrier (or about another frequency, where its maker was given an offset), unit amplitude at
 * rest, sample by sample at `rate` [Hz].
 *
 * State is kept between calls; block size never changes the result, to the bit.
 */
export interface EnvelopeSource {
  readonly rate: number;
  /** Fills both arrays (of equal length) with real and imaginary parts of the samples that follow. */
  next(re: Float64Array, im: Float64Array): void;
  /** Adds `gain` times the samples that follow to `count` places of both arrays from `from` on; where it is there it is quicker than the other. */
  readonly add?: ((re: Float64Array, im: Float64Array, from: number, count: number, gain: number) => void) | undefined;
}

/** How loud a programme is sent. */
export type ProgrammeDrive =
  /** audio times `gain`: full scale is full modulation after pre-emphasis; the limiter only guards against more */
  | { readonly kind: 'fixed'; readonly gain: number }
  /** the gain is ridden slowly so that the programme's rms swing is `programmeSwing` of this level: 0 dB is the multiplex power limit */
  | { readonly kind: 'ridden'; readonly level: number };

/** What a modulator did so far, from the start of the programme. */
export interface ModulationMeter {
  /** length metered [s] */
  readonly duration: number;
  /** greatest swing of the whole signal with the pilot: deviation [Hz peak] or depth [1] */
  readonly peak: number;
  /** rms swing of the whole signal with the pilot: deviation [Hz rms] or depth [1] */
  readonly rms: number;
  /** multiplex power over the densest 60 s, or over all where it was less [dBr]; null in AM, which knows no such figure, and in silence */
  readonly multiplexPower: number | null;
  /** most the limiter ever took off, as a share of the signal: 1 for never at work, 0.5 for 6 dB */
  readonly leastLimiterGain: number;
  /** share of the time that the limiter was taking off more than 0.1 dB */
  readonly limiting: number;
  /** gain ahead of the limiter as it stands [1] */
  readonly gain: number;
}

/** A station's envelope with the meter of its transmitter. Sample k stands at the time k/rate of the audio, in FM at (k + 1/2)/rate: the modulator reads ahead. */
export interface ModulatedSource extends EnvelopeSource {
  readonly modulation: ProgrammeModulation;
  meter(): ModulationMeter;
}
