import { OperatingPoint } from './operating-point.ts';
import type { Reception } from './receiver.ts';
import { radioHalf } from './rf-half.ts';

/** The slope of a station as the detector meets it. */
export interface SlopeCurve {
  /** amplitude across the detector's law [V peak] */
  readonly amplitude: Float64Array;
  /** mean current into the output [A] */
  readonly current: Float64Array;
}

/**
 * What the detector has of a station whose carrier stands at one frequency after another, its output held: the curve on which frequency becomes
 * amplitude.
 *
 * @param angle - of the dial [rad]
 * @param output - steady voltage at the detector's output [V]
 * @param frequencies - [Hz], near the station: the aerial's impedance is known there
 */
export function slopeCurve(reception: Reception, index: number, angle: number, output: number, frequencies: Float64Array): SlopeCurve {
  const { receiver, signals } = reception;
  const signal = signals[index]!;
  const rf = radioHalf(receiver, signal, angle, signal.received.station.frequency);
  const point = new OperatingPoint(receiver.detector.law);
  const current = new Float64Array(frequencies.length);
  const amplitude = frequencies.map((f, i) => {
    rf.solve(f);
    const drive = Math.SQRT2 * signal.emf * Math.hypot(rf.vRe, rf.vIm);
    point.solve(drive, rf.zRe, rf.zIm, output, drive);
    current[i] = point.current;
    return point.amplitude;
  });
  return { amplitude, current };
}
