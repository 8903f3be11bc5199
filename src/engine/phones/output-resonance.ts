import type { PhonesDescription } from './description.ts';

/** Parallel resonance at the detector's output. */
export interface OutputResonance {
  readonly frequency: number;
  /** choke and primary in parallel [H] */
  readonly inductance: number;
  /** bypass, winding and earpiece as the output sees them [F] */
  readonly capacitance: number;
}

/**
 * Where the inductance across the output (choke, primary) resonates with the capacitance across it: f = 1/(2 pi sqrt(L C)).
 *
 * A piezo behind a transformer counts with C/n^2. The blocking capacitor is taken as a short, losses and leakage as absent.
 * Null where there is no inductance, or where a magnetic earpiece leaves no capacitance but the bypass.
 */
export function outputResonance(d: PhonesDescription): OutputResonance | null {
  let reciprocal = d.choke ? 1 / d.choke.inductance : 0;
  let capacitance = d.bypass;
  const n = d.transformer?.ratio ?? 1;
  if (d.transformer) {
    reciprocal += 1 / d.transformer.primaryInductance;
    capacitance += d.transformer.capacitance;
  }
  if (d.earpiece.kind === 'piezo') capacitance += d.earpiece.capacitance / (n * n);
  else if (!d.choke) return null;
  if (reciprocal === 0 || capacitance === 0) return null;
  const inductance = 1 / reciprocal;
  return { frequency: 1 / (2 * Math.PI * Math.sqrt(inductance * capacitance)), inductance, capacitance };
}
