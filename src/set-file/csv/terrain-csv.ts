import type { TerrainProfile } from '#engine';
import { faultsOfProfile } from '../checks/profile.ts';
import type { Problem } from '../problem.ts';
import { type CsvTable, readColumns } from './table.ts';

const COLUMNS = [
  { name: 'distance', header: /dist|^d\b|^d_|^x\b|entfernung|km/i, dimension: 'length' },
  { name: 'height', header: /height|elev|alt|^h\b|^h_|^z\b|höhe|hoehe/i, dimension: 'length' },
] as const;

/**
 * Reads a terrain profile: a column of distances from the mast, ascending from 0, and one of heights above sea level.
 *
 * @param file - name for complaints
 */
export function readTerrainCsv(
  text: string,
  file: string | null = null,
):
  | { readonly ok: true; readonly value: TerrainProfile; readonly table: CsvTable }
  | { readonly ok: false; readonly problems: readonly Problem[] } {
  const read = readColumns(text, file, COLUMNS);
  if (!read.ok) return read;
  const { rows } = read.table;
  const value = { distance: rows.map((r) => r.values[0]!), height: rows.map((r) => r.values[1]!) };
  const problems = faultsOfProfile(value.distance, value.height).map(({ row, list, given, why, mend }) => ({
    path: list,
    file,
    line: rows[row]?.line ?? 1,
    column: rows[row]?.at[list === 'distance' ? 0 : 1] ?? 1,
    given,
    why,
    mend,
  }));
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value, table: read.table };
}
