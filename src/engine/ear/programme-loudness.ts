import { BANDS } from '../bands.ts';
import { zwickerLoudness } from './zwicker-loudness.ts';
import { CRITICAL_BANDS, ZWICKER_BANDS } from './zwicker-tables.ts';

/** Loudness in two ears over loudness in one [1]: ISO 532-2:2017 (Moore & Glasberg 2007), from memory. */
const TWO_EARS_OVER_ONE = 1.5;
/** Level that stands for nothing in a band, as in the standard's own examples [dB]. */
const NOTHING = -60;
const FIRST = ZWICKER_BANDS.indexOf(BANDS[0]!);

/**
 * Loudness of the programme alone, in quiet [sone], ISO 532-1; zero where nothing is heard.
 *
 * @param field - free-field band levels by BANDS [dB SPL]; the bands outside hold nothing
 * @param hearingLevel - [dB HL] over frequency, raises the threshold in quiet of each critical band; null for normal hearing
 */
export function programmeLoudness(field: Float64Array, ears: 1 | 2, hearingLevel: ((frequency: number) => number) | null): number {
  const level = new Float64Array(ZWICKER_BANDS.length).fill(NOTHING);
  for (let i = 0; i < BANDS.length; i++) level[FIRST + i] = Math.max(field[i]!, NOTHING);
  const sones = zwickerLoudness(level, hearingLevel ? CRITICAL_BANDS.map(hearingLevel) : undefined);
  return ears === 2 ? sones : sones / TWO_EARS_OVER_ONE;
}
