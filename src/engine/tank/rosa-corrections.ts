import { MU0 } from '../constants.ts';
import type { CurrentInWire } from './ring-inductance.ts';
import { sheetInductance } from './sheet-solenoid.ts';

/**
 * Rosa's correction of the self-inductance of a turn for round wire instead of tape (A, or G in Grover).
 *
 * k_s = 5/4 - ln(2 p / d), uniform current;  3/2 - ln(2 p / d), surface current
 *
 * @param fill - d / p, wire diameter over pitch
 * Source: Rosa, Bull. Bur. Stand. 2 (1906) 161; Grover, Inductance Calculations (1946) table 38.
 */
export function rosaSelfCorrection(fill: number, current: CurrentInWire): number {
  return (current === 'uniform' ? 5 / 4 : 3 / 2) - Math.log(2 / fill);
}

/**
 * Rosa's correction of the mutual inductances of the turns (B, or H in Grover).
 *
 * k_m = (2 / N) sum_{n<N} (N - n) [ln n - ln R_n],  ln R_n = ((n+1)^2 ln(n+1) + (n-1)^2 ln(n-1)) / 2 - n^2 ln n - 3/2
 *
 * @param turns - whole turns; infinity gives ln(2 pi) - 3/2
 * Source: Rosa, Bull. Bur. Stand. 2 (1906) 161; Grover, Inductance Calculations (1946) table 39.
 */
export function rosaMutualCorrection(turns: number): number {
  if (turns === Number.POSITIVE_INFINITY) return Math.log(2 * Math.PI) - 3 / 2;
  let sum = 0;
  for (let n = 1; n < turns; n++) {
    const below = n > 1 ? (n - 1) ** 2 * Math.log(n - 1) : 0;
    const log = ((n + 1) ** 2 * Math.log(n + 1) + below) / 2 - n * n * Math.log(n) - 3 / 2;
    sum += (turns - n) * (Math.log(n) - log);
  }
  return (2 / turns) * sum;
}

/**
 * Inductance of a single-layer coil of round wire by the current sheet with Rosa's corrections: an independent check on the ring sum.
 *
 * L = L_sheet - mu0 (D/2) N (k_s + k_m),  l = N p
 *
 * @param turns - N, whole turns
 * @param diameter - D, to the middle of the wire [m]
 * @param wireDiameter - d [m]
 * @param pitch - p [m]
 * @returns [H]
 * Holds for: many turns; 0.1 to 0.9 % above the ring sum for 3 to 10 turns.
 * Source: Rosa & Grover, Sci. Paper 169 (1912); NBS Circular 74 p. 253.
 */
export function nagaokaRosaInductance(
  turns: number,
  diameter: number,
  wireDiameter: number,
  pitch: number,
  current: CurrentInWire,
): number {
  const correction = rosaSelfCorrection(wireDiameter / pitch, current) + rosaMutualCorrection(turns);
  return sheetInductance(turns, diameter, turns * pitch) - (MU0 * diameter * turns * correction) / 2;
}
