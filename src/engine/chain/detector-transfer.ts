import { outputAtRest } from './harmonic-balance.ts';
import { OperatingPoint } from './operating-point.ts';
import type { Receiver } from './receiver.ts';

/** Steady output of a set's detector against the radio amplitude across it, with what it tends to either way. */
export interface DetectorTransfer {
  /** [V] */
  readonly output: Float64Array;
  /** square law of a weak signal: V = beta A^2/(2 R0) times R0 beside the load [V] */
  readonly squareLaw: Float64Array;
  /** the peak of the carrier, which no detector without gain passes [V] */
  readonly peak: Float64Array;
}

/** @param amplitudes - across the law [V peak] */
export function detectorTransfer({ detector, audio }: Receiver, amplitudes: Float64Array): DetectorTransfer {
  const point = new OperatingPoint(detector.law);
  const load = audio.harmonics[0]!.load.re;
  const { zeroBiasResistance: r0, currentSensitivity } = detector;
  const beside = (r0 * load) / (r0 + load);
  return {
    output: amplitudes.map((a) => outputAtRest(point, [a, 0, 0], load)),
    squareLaw: amplitudes.map((a) => ((currentSensitivity * a * a) / (2 * r0)) * beside),
    peak: amplitudes.slice(),
  };
}
