import { MU0 } from '../constants.ts';
import type { CurrentInWire } from './ring-inductance.ts';

/** Second antiderivative of 1 / sqrt(x^2 + s^2): x asinh(x / s) - sqrt(x^2 + s^2). */
const neumann = (x: number, s: number): number => x * Math.asinh(x / s) - Math.hypot(x, s);

/**
 * Mutual inductance of two parallel straight filaments.
 *
 * M = (mu0 / 4 pi) [f(g + l1 + l2) - f(g + l1) - f(g + l2) + f(g)],  f(x) = x asinh(x / s) - sqrt(x^2 + s^2)
 *
 * @param l1 - length [m]
 * @param l2 - length [m]
 * @param gap - g, from the end of the first to the start of the second along their direction [m]; minus the length for two side by side
 * @param spacing - s, across [m], above 0
 * @returns [H], currents in the same direction
 * Source: Grover, Inductance Calculations (1946) ch. 6; Neumann's integral in closed form.
 */
export function parallelFilamentMutual(l1: number, l2: number, gap: number, spacing: number): number {
  const f = (x: number) => neumann(x, spacing);
  return (MU0 / (4 * Math.PI)) * (f(gap + l1 + l2) - f(gap + l1) - f(gap + l2) + f(gap));
}

/**
 * Share of a straight round wire in the inductance of its circuit, flux outside the metal, exact in its length.
 *
 * L = (mu0 / 2 pi) [l asinh(l / a) - sqrt(l^2 + a^2) + a]: two filaments a radius apart, the geometric mean distance of a thin tube from itself.
 *
 * @param length - l [m]
 * @param radius - a [m]
 * @returns [H]
 * Source: Rosa, Bull. Bur. Stand. 4 (1908) 301, before his approximation for long wires.
 */
export function straightWireInductance(length: number, radius: number): number {
  return (MU0 / (2 * Math.PI)) * (neumann(length, radius) + radius);
}

/**
 * Rosa's formula for a straight round wire much longer than thick.
 *
 * L = (mu0 / 2 pi) l [ln(2 l / a) - 3/4], uniform current;  - 1, surface current
 *
 * @returns [H]
 * Holds for: l well above a: 1 % low at l = 40 a.
 * Source: Rosa, Bull. Bur. Stand. 4 (1908) 301.
 */
export function longWireInductance(length: number, radius: number, current: CurrentInWire): number {
  return (MU0 / (2 * Math.PI)) * length * (Math.log((2 * length) / radius) - (current === 'uniform' ? 3 / 4 : 1));
}

/**
 * Inductance of two equal parallel wires, side by side, that carry the current out and back.
 *
 * L = 2 (L_wire - M)
 *
 * @param length - of each [m]
 * @param radius - [m]
 * @param spacing - centre to centre [m], at least the wire's diameter
 * @returns [H]; 0 for no length
 */
export function wirePairInductance(length: number, radius: number, spacing: number): number {
  if (length === 0) return 0;
  return 2 * (straightWireInductance(length, radius) - parallelFilamentMutual(length, length, -length, spacing));
}

/**
 * What a pair of wires gains when another pair carries on in its direction at the same spacing.
 *
 * 2 * 2 (M in line - M across)
 *
 * @param l1 - of each wire of the one pair [m]
 * @param l2 - of each wire of the other pair [m]
 * @param radius - of the thinner wire [m]
 * @returns [H]
 */
export function pairsInLineMutual(l1: number, l2: number, radius: number, spacing: number): number {
  if (l1 === 0 || l2 === 0) return 0;
  return 4 * (parallelFilamentMutual(l1, l2, 0, radius) - parallelFilamentMutual(l1, l2, 0, spacing));
}

/**
 * Inductance of the current that runs along a winding while it goes round it: a tube of the coil's radius and length.
 *
 * @param length - of the winding [m]
 * @param radius - of the winding [m]
 * @returns [H]
 * Holds for: the way back lying well outside the coil; 8 % low against the helix integral for 3 to 10 turns, itself 0.3 to 3 % of the coil.
 */
export function axialCurrentInductance(length: number, radius: number): number {
  return straightWireInductance(length, radius);
}
