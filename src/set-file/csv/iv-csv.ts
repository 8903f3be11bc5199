import { faultsOfLaw } from '../checks/law.ts';
import type { Problem } from '../problem.ts';
import { type CsvTable, readColumns } from './table.ts';

const COLUMNS = [
  { name: 'voltage', header: /volt|^[vu]\b|^[vu]_|spannung/i, dimension: 'voltage' },
  { name: 'current', header: /curr|amp|^i\b|^i_|strom/i, dimension: 'current' },
] as const;

/** A measured current-voltage law. */
export interface MeasuredLaw {
  /** [V] ascending */
  readonly voltage: readonly number[];
  /** [A] */
  readonly current: readonly number[];
}

/**
 * Reads a measured detector: a column of voltages, ascending to both sides of 0 V, and one of currents that never falls.
 *
 * @param file - name for complaints
 */
export function readIvCsv(
  text: string,
  file: string | null = null,
):
  | { readonly ok: true; readonly value: MeasuredLaw; readonly table: CsvTable }
  | { readonly ok: false; readonly problems: readonly Problem[] } {
  const read = readColumns(text, file, COLUMNS);
  if (!read.ok) return read;
  const { rows } = read.table;
  const value = { voltage: rows.map((r) => r.values[0]!), current: rows.map((r) => r.values[1]!) };
  const problems = faultsOfLaw(value.voltage, value.current).map(({ row, list, given, why, mend }) => ({
    path: list,
    file,
    line: rows[row]?.line ?? 1,
    column: rows[row]?.at[list === 'voltage' ? 0 : 1] ?? 1,
    given,
    why,
    mend,
  }));
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value, table: read.table };
}
