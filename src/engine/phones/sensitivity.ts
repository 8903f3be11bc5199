import { linear } from '../numeric/index.ts';
import type { Earpiece } from './description.ts';

/** A single figure or a narrow measurement is held over at least the telephone speech band [Hz]; outside it nothing is promised. */
const HELD_FROM = 300;
const HELD_TO = 3400;
/** Fall outside the held range [dB per octave]: a diaphragm below its leak and above its resonance behaves as a second-order system. Estimate. */
const FALL = 12;

/**
 * Sensitivity from per milliwatt to per volt: S(dB/V) = S(dB/mW) + 10 log10(1000/Z).
 *
 * @param perMilliwatt - [dB SPL for 1 mW]
 * @param impedance - magnitude at 1 kHz [ohm]
 * Source: IEC 60268-7 definitions.
 */
export const sensitivityPerVolt = (perMilliwatt: number, impedance: number): number => perMilliwatt + 10 * Math.log10(1000 / impedance);

/** The way back: S(dB/mW) = S(dB/V) - 10 log10(1000/Z). */
export const sensitivityPerMilliwatt = (perVolt: number, impedance: number): number => perVolt - 10 * Math.log10(1000 / impedance);

/**
 * Sound pressure level for one volt rms across the earpiece, over frequency [dB SPL].
 *
 * Straight lines in dB against log f between the points given. Beyond the first and last point the level is held as far as the
 * speech band of a telephone (300 Hz, 3.4 kHz), then falls by 12 dB per octave: an estimate.
 *
 * @param impedance - magnitude of the earpiece at 1 kHz [ohm], used where the sensitivity is per milliwatt
 */
export function sensitivityCurve(e: Pick<Earpiece, 'sensitivity' | 'sensitivityAt'>, impedance: number): (frequency: number) => number {
  const offset = e.sensitivityAt === '1 V' ? 0 : sensitivityPerVolt(0, impedance);
  const x = Float64Array.from(e.sensitivity, (p) => Math.log(p.frequency));
  const y = Float64Array.from(e.sensitivity, (p) => p.level + offset);
  const { from, to } = heldRange(e.sensitivity);
  const low = Math.log(from);
  const high = Math.log(to);
  return (frequency) => {
    const at = Math.log(frequency);
    const outside = at < low ? low - at : at > high ? at - high : 0;
    return linear(x, y, at) - (FALL / Math.LN2) * outside;
  };
}

/** Range over which the curve stands before it falls [Hz]. */
export function heldRange(points: Earpiece['sensitivity']): { readonly from: number; readonly to: number } {
  return { from: Math.min(points[0]!.frequency, HELD_FROM), to: Math.max(points[points.length - 1]!.frequency, HELD_TO) };
}
