import {
  BAND_ADAPTATION,
  CRITICAL_BANDS,
  LOW_GROUPS,
  LOW_RANGES,
  LOW_WEIGHTS,
  QUIET,
  SLOPE_RANGES,
  SLOPES,
  TRANSMISSION,
  UPPER_LIMITS,
} from './zwicker-tables.ts';

const TENTH = Math.LN10 / 10;
/** Bands up to 250 Hz, which are weighted and grouped before the rest. */
const LOW_BANDS = 11;
/** Threshold factor s of the core loudness. */
const S = 0.25;
/** Widening of each band's upper limit against rounding, as in the standard's program [Bark]. */
const ROUNDING = 1e-4;

/**
 * Loudness of a stationary sound in free field, heard with both ears [sone].
 *
 * Levels of the low bands are weighted and grouped; each critical band's core loudness is
 * N' = 0.0635 10^(0.025 Q) [(1 - s + s 10^(0.1 (LE - Q)))^0.25 - 1], s = 0.25, with Q the threshold in quiet; upper slopes
 * carry it into the bands above, which it masks or adds to; the area under the pattern over 24 Bark is the loudness.
 *
 * @param level - one-third-octave band levels by ZWICKER_BANDS, 25 Hz to 12.5 kHz [dB SPL]; -60 or less for nothing
 * @param thresholdShift - raises Q of each of CRITICAL_BANDS [dB], for a hearing loss: an extension of ours, which gives a loss with recruitment
 * Source: ISO 532-1:2017, method for stationary sounds (E. Zwicker). Reference: a 1 kHz tone of 40 dB has 1 sone.
 */
export function zwickerLoudness(level: ArrayLike<number>, thresholdShift?: ArrayLike<number>): number {
  return patternArea(coreLoudness(level, thresholdShift));
}

function coreLoudness(level: ArrayLike<number>, shift?: ArrayLike<number>): Float64Array {
  const core = new Float64Array(CRITICAL_BANDS.length + 1);
  let band = 0;
  for (let i = 0; i < CRITICAL_BANDS.length; i++) {
    let excitation: number;
    if (i < LOW_GROUPS.length) {
      let intensity = 0;
      for (let k = 0; k < LOW_GROUPS[i]!; k++, band++) intensity += Math.exp(TENTH * weightedLow(level[band]!, band));
      excitation = intensity > 0 ? Math.log(intensity) / TENTH : Number.NEGATIVE_INFINITY;
    } else excitation = level[LOW_BANDS + i - LOW_GROUPS.length]!;
    excitation -= TRANSMISSION[i]!;
    const quiet = QUIET[i]! + (shift ? shift[i]! : 0);
    if (excitation <= quiet) continue;
    const over = excitation - BAND_ADAPTATION[i]! - quiet;
    const n = 0.0635 * Math.exp(TENTH * 0.25 * quiet) * ((1 - S + S * Math.exp(TENTH * over)) ** 0.25 - 1);
    core[i] = Math.max(0, n);
  }
  // the first band holds thirds far below it, where the threshold falls steeply: part of it is not heard
  core[0] = core[0]! * Math.min(1, 0.4 + 0.32 * core[0]! ** 0.2);
  return core;
}

function weightedLow(level: number, band: number): number {
  let range = 0;
  while (range < LOW_RANGES.length - 1 && level > LOW_RANGES[range]! - LOW_WEIGHTS[range]![band]!) range++;
  return level + LOW_WEIGHTS[range]![band]!;
}

/** Area under the pattern of specific loudness: plateaus at each band's core loudness, joined by falling slopes. */
function patternArea(core: Float64Array): number {
  let area = 0;
  let from = 0;
  let height = 0;
  let range = SLOPE_RANGES.length - 1;
  for (let band = 0; band < core.length; band++) {
    const limit = UPPER_LIMITS[band]! + ROUNDING;
    const column = Math.min(band - 1, 7);
    const top = core[band]!;
    while (from < limit) {
      if (height <= top) {
        // the band stands out of what came from below: its plateau reaches to its upper limit
        if (height < top) {
          range = 0;
          while (range < SLOPE_RANGES.length - 1 && SLOPE_RANGES[range]! > top) range++;
        }
        area += top * (limit - from);
        height = top;
        from = limit;
      } else {
        // the slope from below hides the band until it has fallen to its height or to the end of a range of steepness
        const steepness = SLOPES[range]![column]!;
        let next = Math.max(SLOPE_RANGES[range]!, top);
        let to = from + (height - next) / steepness;
        if (to > limit) {
          to = limit;
          next = height - (to - from) * steepness;
        }
        area += ((to - from) * (height + next)) / 2;
        height = next;
        from = to;
      }
      while (height <= SLOPE_RANGES[range]! && range < SLOPE_RANGES.length - 1) range++;
    }
  }
  return area;
}
