/** Why a text or number is not the quantity that was wanted, for the person who wrote it. */
export interface Refusal {
  readonly ok: false;
  /** as it was written */
  readonly given: string;
  readonly why: string;
  /** what to write instead, with an example */
  readonly mend: string;
}

/** A quantity in SI units, or the reason why there is none. The value is always a finite number. */
export type Reading = { readonly ok: true; readonly value: number } | Refusal;

export function refuse(given: unknown, why: string, mend: string): Refusal {
  return { ok: false, given: showGiven(given), why, mend };
}

/** What was given, short enough for one line of an error. */
export function showGiven(given: unknown): string {
  if (typeof given === 'string') return JSON.stringify(given.length > 60 ? `${given.slice(0, 57)}...` : given);
  if (typeof given === 'number') return String(given);
  if (given === undefined) return 'nothing';
  if (Array.isArray(given)) return given.length === 0 ? 'an empty list' : 'a list';
  if (given !== null && typeof given === 'object') return 'a group of keys in braces';
  return String(given);
}
