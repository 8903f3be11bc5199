import type { DescribingFunction } from '../detector/index.ts';
import { C, type Complex } from '../numeric/index.ts';
import { DetectorSolver } from './detector-solver.ts';

/** Phases of the beat of two carriers at which the detector is solved. */
const PHASES = 128;
/** Audio that must stay clear [Hz]. */
const AUDIO = 20_000;

/**
 * Bound on what folds back on the audio band because the detector is asked at samples only.
 *
 * The mean current under the two strongest carriers is a Fourier series in the phase of their beat. A beat, widened by modulation, lies below 2 W, so its
 * n-th harmonic can reach the sample rate, and fold to audio, only from n = (rate - 20 kHz)/(2 W) on; all of those together, by the mean.
 *
 * @param open - open voltages of the two strongest at the detector, nothing drawn [V peak]
 * @param impedance - there [ohm]
 * @param output - output voltage at rest [V]
 * @param halfWidth - W, of all spectrum about the reference [Hz]
 * @returns amplitude of the sum by the mean current [1]; 0 where there is nothing to beat
 * Holds for: two carriers; products of three are left out.
 */
export function foldingBound(
  law: DescribingFunction,
  open: readonly [Complex, Complex],
  impedance: Complex,
  output: number,
  halfWidth: number,
  rate: number,
): number {
  const solver = new DetectorSolver(law);
  solver.between(impedance.re, impedance.im, 0, 0);
  solver.output = output;
  const current = Float64Array.from({ length: PHASES }, (_, m) => {
    const d = C.add(open[0], C.mul(open[1], C.cis((2 * Math.PI * (m + 0.5)) / PHASES)));
    solver.solve(C.abs(d), output);
    return solver.current;
  });
  const harmonic = (n: number): number => {
    let re = 0;
    let im = 0;
    current.forEach((i, m) => {
      const angle = (2 * Math.PI * n * (m + 0.5)) / PHASES;
      re += (i * Math.cos(angle)) / PHASES;
      im += (i * Math.sin(angle)) / PHASES;
    });
    return Math.hypot(re, im);
  };
  const first = Math.max(1, Math.ceil((rate - AUDIO) / (2 * halfWidth)));
  let sum = 0;
  for (let n = first; n < PHASES / 2; n++) sum += 2 * harmonic(n);
  const mean = harmonic(0);
  return mean > 0 ? sum / mean : 0;
}
