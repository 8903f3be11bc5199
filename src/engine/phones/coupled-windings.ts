import type { Transformer } from './description.ts';

/** Inductance matrix of a transformer's two windings. */
export interface CoupledWindings {
  /** [H] */
  readonly primary: number;
  readonly secondary: number;
  readonly mutual: number;
  /** coupling coefficient k, 0 to 1 */
  readonly coupling: number;
}

/**
 * The pair of coupled windings that has exactly the primary inductance and leakage that were measured.
 *
 * Open secondary: Lp = L1. Shorted secondary: Lk = L1 - M^2/L2 = L1 (1 - k^2), so k = sqrt(1 - Lk/Lp). Both windings embrace
 * the same core, so L2 = L1/n^2 with n the turns ratio, and M = k L1/n. All of the leakage is carried by k; none stands apart.
 *
 * @param t - turns ratio n (primary over secondary), primary inductance and leakage seen from the primary [H]
 * Open-circuit voltage ratio is k/n: at 1 % leakage 0.04 dB below the turns ratio.
 * Source: F. E. Terman, Radio Engineers' Handbook (1943), sec. 2 (coupled inductances); derivation above.
 */
export function coupledWindings(t: Pick<Transformer, 'ratio' | 'primaryInductance' | 'leakageInductance'>): CoupledWindings {
  const coupling = Math.sqrt(1 - t.leakageInductance / t.primaryInductance);
  return {
    primary: t.primaryInductance,
    secondary: t.primaryInductance / (t.ratio * t.ratio),
    mutual: (coupling * t.primaryInductance) / t.ratio,
    coupling,
  };
}

/**
 * Turns ratio (primary over secondary) at which a source gives most power to a load: sqrt(Zp/Zs).
 *
 * @param source - resistance on the primary [ohm]
 * @param load - impedance magnitude on the secondary [ohm]
 * Holds for an ideal transformer between resistances. Source: textbook.
 */
export const matchingTurnsRatio = (source: number, load: number): number => Math.sqrt(source / load);
