import { linear } from '../numeric/index.ts';
import { CONTOUR_FREQUENCY, CONTOURS_2003, CONTOURS_2023, type ContourTable } from './equal-loudness-tables.ts';

/** Edition of ISO 226. The older one is for comparison with what was published before 2023; at 40 phon they differ by at most 0.2 dB. */
export type Iso226Edition = 2003 | 2023;

const LOG_FREQUENCY = CONTOUR_FREQUENCY.map(Math.log);
/** Loudness level of the threshold at 1 kHz, 2.4 phon, times 0.03: the constant 0.072 of ISO 226:2023. */
const THRESHOLD_TERM = 10 ** 0.072;

interface Parameters {
  readonly exponent: number;
  readonly transfer: number;
  readonly threshold: number;
}

function parameters(table: ContourTable, frequency: number): Parameters {
  const at = Math.log(frequency);
  return {
    exponent: linear(LOG_FREQUENCY, table.exponent, at),
    transfer: linear(LOG_FREQUENCY, table.transfer, at),
    threshold: linear(LOG_FREQUENCY, table.threshold, at),
  };
}

/**
 * Sound pressure level of the pure tone that is as loud as a 1 kHz tone of the given level, free field, both ears [dB SPL].
 *
 * 2023: Lf = (10/a) log10{(4e-10)^(0.3 - a) [10^(0.03 LN) - 10^0.072] + 10^(a (Tf + LU)/10)} - LU
 * 2003: Lf = (10/a) log10{4.47e-3 [10^(0.025 LN) - 1.15] + [0.4 10^((Tf + LU)/10 - 9)]^a} - LU + 94
 *
 * @param frequency - [Hz], 20 Hz to 12.5 kHz; between the frequencies of the table its parameters are read in straight lines against log f
 * @param loudnessLevel - LN [phon]
 * Holds for 20 to 90 phon (80 phon from 5 kHz up); below 20 phon the standard gives the formula for information, down to threshold.
 * Source: ISO 226:2023 and ISO 226:2003, clause 4.1 and Table 1.
 */
export function equalLoudnessContour(frequency: number, loudnessLevel: number, edition: Iso226Edition = 2023): number {
  if (edition === 2023) {
    const { exponent: a, transfer, threshold } = parameters(CONTOURS_2023, frequency);
    const sum = 4e-10 ** (0.3 - a) * (10 ** (0.03 * loudnessLevel) - THRESHOLD_TERM) + 10 ** ((a * (threshold + transfer)) / 10);
    return (10 / a) * Math.log10(sum) - transfer;
  }
  const { exponent: a, transfer, threshold } = parameters(CONTOURS_2003, frequency);
  const sum = 4.47e-3 * (10 ** (0.025 * loudnessLevel) - 1.15) + (0.4 * 10 ** ((threshold + transfer) / 10 - 9)) ** a;
  return (10 / a) * Math.log10(sum) - transfer + 94;
}

/**
 * Loudness level of a pure tone in free field, both ears [phon]: the inverse of `equalLoudnessContour`, in closed form.
 *
 * For 2003 as the standard prints it; it rounds 10 log10(0.4e-9) to -94, so there and back differ by up to 0.03 phon.
 *
 * @returns null where the tone lies below the threshold of hearing
 */
export function toneLoudnessLevel(frequency: number, level: number, edition: Iso226Edition = 2023): number | null {
  const { exponent: a, transfer, threshold } = parameters(edition === 2023 ? CONTOURS_2023 : CONTOURS_2003, frequency);
  if (level < threshold) return null;
  if (edition === 2023) {
    const rise = 10 ** ((a * (level + transfer)) / 10) - 10 ** ((a * (threshold + transfer)) / 10);
    return Math.log10(rise / 4e-10 ** (0.3 - a) + THRESHOLD_TERM) / 0.03;
  }
  const rise = (0.4 * 10 ** ((level + transfer) / 10 - 9)) ** a - (0.4 * 10 ** ((threshold + transfer) / 10 - 9)) ** a;
  return 40 * Math.log10(rise / 4.47e-3 + 1.15);
}
