import { SOUND_RATE } from '../listen/index.ts';
import { fourierTransform, minimumPhase } from '../numeric/index.ts';
import { pressureOf } from './pressure.ts';

/** Points round the circle from which the response is made. */
const SIZE = 1 << 16;
/** The filter is as short as the curve allows: lengths tried, and the error that ends the search [dB]. */
const LENGTHS = [2048, 4096, 8192, 16384];
const SOUGHT = 0.05;
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
  const transform = fourierTransform(SIZE);
  const re = new Float64Array(SIZE);
  const im = new Float64Array(SIZE);
  let error = 0;
  for (const length of LENGTHS) {
    re.fill(0);
    im.fill(0);
    re.set(whole.subarray(0, length));
    transform.forward(re, im);
    error = 0;
    for (let k = Math.ceil(FROM / step); k * step <= TO; k++)
      error = Math.max(error, Math.abs(Math.log(Math.hypot(re[k]!, im[k]!)) - logMagnitude[k]!));
    error *= 20 / Math.LN10;
    if (error <= SOUGHT) return { taps: whole.slice(0, length), error };
  }
  return { taps: whole.slice(0, LENGTHS.at(-1)!), error };
}
