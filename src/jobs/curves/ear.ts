import { BANDS, BINAURAL_ADVANTAGE, hearingLevelOver, SII_IMPORTANCE } from '#engine';
import { onBench } from '../bench.ts';
import type { Answer } from '../document.ts';
import { type CurvesGiven, standing } from './given.ts';

/** What reaches the ear by third octaves; all levels as the earpiece's coupler reads them [dB SPL]. */
export interface EarCurves {
  /** [Hz] */
  readonly band: readonly number[];
  readonly programme: Float64Array;
  /** distortion, other stations and noise of the set */
  readonly disturbance: Float64Array;
  readonly roomNoise: Float64Array;
  /** of this listener */
  readonly threshold: Float64Array;
  /** level from which a band is heard: threshold or what masks it, whichever is more */
  readonly needed: Float64Array;
  /** programme over that [dB] */
  readonly headroom: Float64Array;
  /** what each band adds to the intelligibility index, and the most it could */
  readonly siiShare: Float64Array;
  readonly siiMost: readonly number[];
  readonly sii: number;
}

/** Null where the dial does not reach the station. */
export function earCurves(given: CurvesGiven): Promise<Answer<EarCurves | null>> {
  return onBench(given.document, (bench) => {
    const { heard } = standing(bench, given);
    if (!heard) return null;
    const { sound, hearing } = heard.evaluation;
    const own = hearingLevelOver(bench.situation.listener.ear.hearingLevel);
    const advantage = sound.ears === 2 ? BINAURAL_ADVANTAGE : 0;
    return {
      band: BANDS,
      programme: sound.programme,
      disturbance: sound.disturbance,
      roomNoise: hearing.roomNoise,
      threshold: sound.threshold.map((t, i) => t + own(BANDS[i]!) - advantage),
      needed: sound.programme.map((p, i) => p - hearing.headroom[i]!),
      headroom: hearing.headroom,
      siiShare: hearing.siiShares,
      siiMost: SII_IMPORTANCE,
      sii: hearing.sii,
    };
  });
}
