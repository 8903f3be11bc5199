import type { Figure } from '../figure.ts';
import type { Listening } from '../listen/index.ts';
import type { DifferenceFrequency } from './difference-frequency.ts';
import type { ToneWithHarmonics } from './harmonics.ts';
import type { Leakage } from './leakage.ts';
import type { ResponsePoint } from './response.ts';
import type { Sinad } from './sinad.ts';
import type { SpeechHeard } from './speech-heard.ts';
import type { StereoResidue } from './stereo-residue.ts';

/** A test tone in the sound, the station alone and without noise. */
export interface ToneMeasured extends ToneWithHarmonics {
  /** of the fundamental: earpiece voltage [dB re 1 V rms], sound pressure on the coupler [dB SPL] */
  readonly level: number;
  readonly soundLevel: number;
  /** peak deviation [Hz] or depth [1] */
  readonly swing: number;
}

/** Measures of a station, from the sound of a set. */
export interface ListeningMeasures {
  readonly station: string;
  /** of the dial [rad] */
  readonly angle: number;
  /** the test tone at rated swing and with the power of programme */
  readonly rated: ToneMeasured;
  readonly programme: ToneMeasured;
  /** the rated tone beside noise, neighbours carrying speech-shaped noise, within AUDIO_BAND */
  readonly sinad: Sinad;
  readonly intermodulation: DifferenceFrequency;
  readonly response: readonly ResponsePoint[];
  /** null where no neighbour is near enough to be followed */
  readonly leakage: Leakage | null;
  /** null for a station in mono */
  readonly stereo: StereoResidue | null;
  readonly speech: SpeechHeard;
  /** all stations together, as they were followed */
  readonly listening: Listening;
  figures(): readonly Figure[];
}

/** Audio that is counted [Hz]; it leaves out the pilot. Source: band in which FM receivers are measured, IEC 60315-4 (from memory). */
export const AUDIO_BAND = { low: 200, high: 15_000 } as const;
