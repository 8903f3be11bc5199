import type { Modulation } from '../place/index.ts';
import { AM_AUDIO_LIMIT, AUDIO_LIMIT, carsonBandwidth, SUBCARRIER_FREQUENCY } from '../programme/index.ts';

/** Stations farther from the reference than this are left out [Hz], or than a fifth of the reference: an envelope must be slow beside its carrier. */
const WINDOW = 1.5e6;
const WINDOW_SHARE = 0.2;
/** Rates are multiples of this [Hz]; audio is taken down to it in one step, and from it to 48 kHz in another. */
export const AUDIO_STEP = 96_000;
/** Least rates for one station [Hz]: with the detector's resting conductance in the circuit, what its changes lose between samples is then below 0.02 dB in the audio fundamental. */
const LEAST_FM = 480_000;
const LEAST_AM = 96_000;
/** With several stations the rate stands above twice the spectrum by this factor: room for the taps to tell one edge from the other. */
export const ROOM = 1.1;
/** Audio that must stay clear of what folds back [Hz]. */
const AUDIO = 20_000;

/** How far from the reference stations are taken in [Hz]. */
export const listeningWindow = (reference: number): number => Math.min(WINDOW, WINDOW_SHARE * reference);

/** Half of the spectrum that a station's modulation takes up [Hz]: half of Carson's bandwidth, or the highest audio of AM. */
export const halfWidthOf = (modulation: Modulation): number =>
  modulation.kind === 'am'
    ? AM_AUDIO_LIMIT
    : carsonBandwidth(modulation.deviation, modulation.stereo ? SUBCARRIER_FREQUENCY + AUDIO_LIMIT : AUDIO_LIMIT) / 2;

/** A station's place in the sampled band. */
export interface Occupied {
  /** carrier from the reference [Hz] */
  readonly offset: number;
  readonly halfWidth: number;
  readonly kind: Modulation['kind'];
}

/** Greatest distance from the reference at which there is any spectrum [Hz]. */
export const spectrumHalfWidth = (stations: readonly Occupied[]): number =>
  stations.reduce((w, s) => Math.max(w, Math.abs(s.offset) + s.halfWidth), 0);

/**
 * Sample rate of the envelopes.
 *
 * At least twice the spectrum's greatest distance W from the reference, so that every station is told apart, with room for the taps; then beats of two
 * stations, up to 2 W, cannot fold back into the audio band.
 */
export function envelopeRate(stations: readonly Occupied[]): number {
  const least = stations.some((s) => s.kind === 'fm') ? LEAST_FM : LEAST_AM;
  const w = spectrumHalfWidth(stations);
  const needed = stations.length > 1 ? Math.max(2 * w + AUDIO, 2 * ROOM * w) : 2 * w + AUDIO;
  return AUDIO_STEP * Math.ceil(Math.max(least, needed) / AUDIO_STEP);
}

/** Taps on the e.m.f.: more where stations reach towards the edge of the sampled band. */
export const tapsFor = (stations: number): number => (stations > 1 ? 12 : 8);
