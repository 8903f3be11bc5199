import { mkdirSync, writeFileSync } from 'node:fs';
import type { Claim, Comparison } from './claim.ts';

interface Row {
  figure: string;
  against: string;
  unit: string;
  values: number;
  worst: number;
}
const rows = new Map<string, Row>();

/** Error in the claim's own unit: per cent of the published value, or the plain difference. */
function errorOf(claim: Claim, c: Comparison): number | null {
  const difference = Math.abs(c.got - c.expected);
  if (claim.errorUnit !== '%') return difference;
  return c.expected === 0 ? null : (100 * difference) / Math.abs(c.expected);
}

/** Notes the comparisons of a claim for the README's accuracy table. */
export function note(claim: Claim, comparisons: readonly Comparison[]): void {
  const row = rows.get(claim.figure) ?? { figure: claim.figure, against: claim.against, unit: claim.errorUnit, values: 0, worst: 0 };
  for (const c of comparisons) {
    const error = errorOf(claim, c);
    if (error === null) continue;
    row.values++;
    row.worst = Math.max(row.worst, error);
  }
  rows.set(claim.figure, row);
}

/** Leaves the rows where scripts/accuracy.mjs finds them. */
export function writeAccuracy(): void {
  mkdirSync('.cache', { recursive: true });
  writeFileSync('.cache/accuracy.json', JSON.stringify([...rows.values()], null, 1));
}
