/**
 * A figure is one number a person may doubt, with the way it came about.
 *
 * Stages compute plain numbers and hand out figures only on request, so that a search that evaluates thousands of
 * sets never pays for explanations. Faces turn figures into text; the engine writes no prose.
 */

/** One number that was put into a formula. */
export interface Term {
  /** the symbol as it stands in the formula, plain text: `Q_L`, `f0` */
  readonly symbol: string;
  /** what it is, in the trade's words: `loaded Q` */
  readonly meaning: string;
  /** value in `unit`; null where nature gives none */
  readonly value: number | null;
  /** SI unit, or `dB re ...`, or `1` for a pure number */
  readonly unit: string;
}

/** How a figure came about: formula, the numbers put in, where the formula is from, where it holds. */
export interface Working {
  readonly formula: string;
  readonly terms: readonly Term[];
  /** standard, book or paper with its clause or equation; or `measured by the user`; or `estimate` with the reason */
  readonly source: string;
  /** range of validity and what is left out */
  readonly holds?: string;
}

/** A value with unit, method and working. `null` is a physical "no": there is no such value (it does not tune, nothing is heard). */
export interface Figure {
  /** dotted path from the stage: `tank.coil.inductance`; unique within one result */
  readonly name: string;
  /** the trade's words for it */
  readonly label: string;
  readonly value: number | null;
  /** SI unit with convention where it matters: `V rms`, `V/m rms`, `dB re 1 uV/m`, `dB SPL`, `1`, `Hz`, `rad` */
  readonly unit: string;
  /** a few words: `ring sum`, `measured`, `P.1546 land curves` */
  readonly method: string;
  /** likely range where one is known (roughly 80 % of cases), in `unit` */
  readonly low?: number;
  readonly high?: number;
  readonly working: Working;
}

/** Shorthand that keeps stage files readable. */
export function term(symbol: string, meaning: string, value: number | null, unit: string): Term {
  return { symbol, meaning, value, unit };
}
