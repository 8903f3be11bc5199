import { BANDS } from '../bands.ts';
import { maskingSpread } from './masking-spread.ts';
import { SII_IMPORTANCE, SII_INTERNAL_NOISE, SII_SPEECH } from './sii-tables.ts';

const N = BANDS.length;
/** Threshold of two ears below that of one [dB], ANSI S3.5-1997. */
export const BINAURAL_ADVANTAGE = 1.7;

/**
 * Speech intelligibility index by one-third octaves, 0 to 1.
 *
 * V = E - 24; B = max(N, V); Z from B and N by spread of masking; D = max(Z, X + T);
 * L = 1 - (E - U - 10)/160, 0 to 1, U always of normal effort; K = (E - D + 15)/30, 0 to 1; SII = sum I L K.
 *
 * @param speech - equivalent speech spectrum level E, by BANDS [dB SPL/Hz]
 * @param noise - equivalent noise spectrum level N, by BANDS [dB SPL/Hz]
 * @param hearingThreshold - equivalent hearing threshold level T, by BANDS [dB HL]; less 1.7 dB for two ears
 * @param contributions - receives I L K of each band where given; they add to the index
 * Source: ANSI S3.5-1997 (R2017), clauses 4 to 6, Table 3; L is held at zero below, as it must be.
 */
export function speechIntelligibilityIndex(
  speech: Float64Array,
  noise: Float64Array,
  hearingThreshold: Float64Array,
  contributions?: Float64Array,
): number {
  const masker = new Float64Array(N);
  const masking = new Float64Array(N);
  for (let i = 0; i < N; i++) masker[i] = Math.max(noise[i]!, speech[i]! - 24);
  maskingSpread(noise, masker, masking);
  let index = 0;
  for (let i = 0; i < N; i++) {
    const e = speech[i]!;
    const disturbance = Math.max(masking[i]!, SII_INTERNAL_NOISE[i]! + hearingThreshold[i]!);
    const distortion = clip(1 - (e - SII_SPEECH.normal[i]! - 10) / 160);
    const audibility = clip((e - disturbance + 15) / 30);
    const contribution = SII_IMPORTANCE[i]! * distortion * audibility;
    if (contributions) contributions[i] = contribution;
    index += contribution;
  }
  return index;
}

const clip = (x: number): number => Math.min(Math.max(x, 0), 1);
