import { SOUND_RATE } from '../listen/index.ts';
import { fourierTransform, minimumPhase } from '../numeric/index.ts';
import { pressureOf } from './pressure.ts';

/** Points round the circle from which the response is made. */
const SIZE = 1 << 17;
/** The filter is as short as the curve allows: lengths tried, and the error that ends the search [dB]. */
const LENGTHS = [2048, 4096, 8192, 16384];
const SOUGHT = 0.08;
/** Range over which the error is watched [Hz]. */
const FROM = 50;
const TO = 15_000;

/** An earpiece as a filter at 48 kHz. */
export interface EarpieceFilter {
  /** impulse response [Pa/V] */
  readonly taps: Float64Array;
  /** greatest error of its magnitude between 50 Hz and 15 kHz [dB] */
  readonly error: number;
}

/**
 * Filter from the voltage across an earpiece to sound pressure.
 *
 * Its magnitude is the sensitivity; its phase the least there can be, as that of a diaphragm in a closed cavity is below its higher modes: an
 * estimate, no phase is measured. Nothing comes through at 0 Hz.
 *
 * @param sensitivity - level for one volt rms [dB SPL], over frequency above zero; finite
 * Source: minimum phase from magnitude, see `minimumPhase`.
 */
export function earpieceFilter(sensitivity: (frequency: number) => number): EarpieceFilter {
  const step = SOUND_RATE / SIZE;
  // a curve that falls towards 0 Hz as a power of f has no logarithm there; this is where ln f has its mean over the half step around 0
  const frequency = (k: number): number => (k === 0 ? step / (2 * Math.E) : k * step);
  const logMagnitude = Float64Array.from({ length: SIZE / 2 + 1 }, (_, k) => Math.log(pressureOf(sensitivity(frequency(k)))));
  const whole = minimumPhase(logMagnitude);
  let taps = whole;
  let error = Number.POSITIVE_INFINITY;
  for (const length of LENGTHS) {
    if (error <= SOUGHT) break;
    taps = whole.slice(0, length);
    error = (20 / Math.LN10) * greatestError(taps, logMagnitude);
  }
  return { taps, error };
}

/** Greatest difference of ln |H| from what it is to be, at the points and between them. */
function greatestError(taps: Float64Array, wanted: Float64Array): number {
  const re = new Float64Array(SIZE);
  const im = new Float64Array(SIZE);
  re.set(taps);
  fourierTransform(SIZE).forward(re, im);
  const bend = (k: number): number => Math.abs(wanted[k - 1]! - 2 * wanted[k]! + wanted[k + 1]!);
  const last = Math.ceil((TO / SOUND_RATE) * SIZE);
  let greatest = 0;
  let before = bend(Math.floor((FROM / SOUND_RATE) * SIZE));
  for (let k = Math.floor((FROM / SOUND_RATE) * SIZE); k <= last; k++) {
    const after = bend(k + 1);
    // of a curve that bends once between two points, and shares its bend between them so, this much stands out beyond the straight line from one to the other
    const between = before + after > 0 ? (before * after) / (before + after) : 0;
    greatest = Math.max(greatest, Math.abs(Math.log(Math.hypot(re[k]!, im[k]!)) - wanted[k]!) + between);
    before = after;
  }
  return greatest;
}
