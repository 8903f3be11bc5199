import { type EarDescription, type Hearing, hear, type SoundAtEar } from '../ear/index.ts';
import { normalCumulative } from '../numeric/index.ts';
import type { Evaluation } from './evaluate.ts';
import type { Rung } from './ladder.ts';

/** How well a station is heard. */
export type Outcome =
  /** every word */
  | 'clear'
  /** most words, with attention */
  | 'understandable'
  /** a voice, but few words */
  | 'faint'
  /** nothing */
  | 'silent'
  /** the dial does not reach it */
  | 'out-of-reach';

/** What stands most in the way. */
export type Limit = 'nothing' | 'too-weak' | 'room-noise' | 'neighbours' | 'distortion' | 'set-noise' | 'will-not-tune';

/** What a station comes to at the ear; faces make one sentence of it. */
export interface Verdict {
  readonly outcome: Outcome;
  readonly limit: Limit;
  /** the rung between aerial and earpiece that costs most, and how much [dB]; what the detector costs is its nature, and the aerial's heat comes before */
  readonly costliest: { readonly rung: string; readonly stage: Rung['stage']; readonly decibels: number } | null;
  /** chance that it is heard at all, over the spread of places and of earpieces, 0 to 1 */
  readonly odds: number;
  /** sound level of speech [dB SPL], null where there is none */
  readonly level: number | null;
  readonly loudnessLevel: number | null;
  readonly sii: number;
  /** true where the sound could reach a level at which hearing needs care (85 dB(A)) */
  readonly loud: boolean;
}

/**
 * Headroom of the best band at which speech is just noticed [dB]: its peaks stand some 12 dB above its rms level, and the ear follows peaks.
 * Source: speech detection at 6.6 dB SPL measured (reference SPEECH-measured), which is 12 dB below the tone threshold by band; SII counts 15 dB.
 */
const JUST_NOTICED = -12;

/** Outcome by intelligibility and headroom. Limits 0.75 and 0.45 after ANSI S3.5 (good and poor communication, from memory). */
export function outcomeOf(h: Hearing): Outcome {
  if (Math.max(...h.headroom) <= JUST_NOTICED) return 'silent';
  if (h.sii >= 0.75) return 'clear';
  return h.sii >= 0.45 ? 'understandable' : 'faint';
}

/**
 * @param sound - what reached the ear in the evaluation
 * @param weaker - the same station with its field lowered by `step` dB, which shows how steeply its headroom follows the field
 * @param fieldSpread - standard deviation of the field [dB]
 * @param earpieceSpread - standard deviation of the earpiece's sensitivity [dB]
 */
export function verdict(
  ear: EarDescription,
  sound: SoundAtEar,
  e: Evaluation,
  weaker: { readonly hearing: Hearing; readonly step: number },
  fieldSpread: number,
  earpieceSpread: number,
  rungs: readonly Rung[],
): Verdict {
  const outcome = outcomeOf(e.hearing);
  const margin = Math.max(...e.hearing.headroom) - JUST_NOTICED;
  const slope = Math.max(0.2, (Math.max(...e.hearing.headroom) - Math.max(...weaker.hearing.headroom)) / weaker.step);
  const sigma = Math.hypot(slope * fieldSpread, earpieceSpread, 0.1);
  const costs = rungs.filter((r) => r.cost !== null && (r.stage === 'tank' || r.stage === 'phones')).sort((a, b) => b.cost! - a.cost!);
  const worst = costs[0];
  return {
    outcome,
    limit: outcome === 'clear' ? 'nothing' : limitOf(ear, sound, e),
    costliest: worst ? { rung: worst.figure.label, stage: worst.stage, decibels: worst.cost! } : null,
    odds: normalCumulative(margin / sigma),
    level: outcome === 'silent' ? null : e.hearing.level,
    loudnessLevel: e.hearing.loudnessLevel,
    sii: e.hearing.sii,
    loud: e.hearing.levelA > 85,
  };
}

/** The impairment whose removal would raise intelligibility most. "Too weak" is tried as 20 dB more of everything the set makes. */
function limitOf(ear: EarDescription, s: SoundAtEar, e: Evaluation): Limit {
  const louder = hear(ear, { ...s, programme: s.programme.map((l) => l + 20), disturbance: s.disturbance.map((l) => l + 20) });
  const clean = hear(ear, { ...s, disturbance: s.disturbance.map(() => -200) });
  const quiet = hear(ear, { ...s, attenuation: s.attenuation.map(() => 200) });
  const gains: [Limit, number][] = [
    ['too-weak', louder.sii - e.hearing.sii],
    ['room-noise', quiet.sii - e.hearing.sii],
    [worstDisturbance(e), clean.sii - e.hearing.sii],
  ];
  gains.sort((a, b) => b[1] - a[1]);
  return gains[0]![1] > 0.01 ? gains[0]![0] : 'too-weak';
}

function worstDisturbance(e: Evaluation): Limit {
  const by: [Limit, number][] = [
    ['neighbours', e.neighbours],
    ['distortion', e.distortion],
    ['set-noise', e.noise],
  ];
  return by.sort((a, b) => b[1] - a[1])[0]![0];
}
