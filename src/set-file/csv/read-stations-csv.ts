import { DIMENSIONS, nearestWord, readNumberAtHead, readQuantity, showGiven } from '#units';
import { LONGEST_FILE } from '../json/scan.ts';
import type { Problem } from '../problem.ts';
import { type Cell, splitRecords } from './records.ts';
import { STATION_COLUMNS, STEREO_WORDS, type StationColumn, type StationKey } from './station-columns.ts';

/** Stations as a table gives them, each value as it would stand in a set file; undefined for an empty cell. */
export interface StationTable {
  readonly file: string | null;
  /** columns that are there */
  readonly columns: readonly StationKey[];
  readonly rows: readonly StationRow[];
  /** heads of columns that are no part of a station: what stands in them is not taken */
  readonly ignored: readonly string[];
}

export interface StationRow {
  readonly values: Readonly<Partial<Record<StationKey, string | boolean>>>;
  /** where the row begins, and where each of its cells is */
  readonly line: number;
  readonly at: Readonly<Partial<Record<StationKey, { readonly line: number; readonly column: number }>>>;
}

export type StationTableOutcome =
  | { readonly ok: true; readonly value: StationTable }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** More than any list of what can be received at one place. */
const MOST_ROWS = 1000;
const MOST_PROBLEMS = 20;
const HEADS = `name, frequency, power, polarisation, mast height, distance, bearing, stereo, programme`;

/**
 * Reads a table of stations: a head of plain words in any order (name, frequency, power, polarisation, mast height, distance, bearing, stereo,
 * programme), then one row a station.
 *
 * Values are written as people write them (`99.2 MHz`, `8 kW`, `ESE`, `yes`); a unit may stand in the head instead, `frequency (MHz)`. Cells are
 * separated by commas, or by semicolons or tabs, and then a comma is the decimal sign. An empty cell leaves the value out.
 *
 * @param file - name for complaints
 */
export function readStationsCsv(text: string, file: string | null = null): StationTableOutcome {
  const refused = (line: number, column: number, given: string, why: string, mend: string): StationTableOutcome => ({
    ok: false,
    problems: [{ path: '', file, line, column, given, why, mend }],
  });
  if (text.length > LONGEST_FILE)
    return refused(1, 1, `${(text.length / 1e6).toFixed(0)} million characters`, 'no list of stations is that long', 'Give fewer rows.');
  const split = splitRecords(text);
  if (!split.ok) return refused(split.line, split.column, showGiven(split.given), split.why, 'Close it, or write two quotes for one.');
  const [head, ...body] = split.records;
  if (!head) return refused(1, 1, 'an empty file', 'there are no rows in it', `Give a head (${HEADS}), then a row for each station.`);
  const problems: Problem[] = [];
  const complain = (path: string, cell: Pick<Cell, 'line' | 'column'>, given: string, why: string, mend: string): void => {
    problems.push({ path, file, line: cell.line, column: cell.column, given, why, mend });
  };
  const { found, ignored } = layOut(head, complain);
  if (problems.length > 0) return { ok: false, problems };
  if (body.length === 0)
    return refused(head[0]!.line, 1, 'a head alone', 'no row follows the head', 'Give at least one station: a set listens for something.');
  if (body.length > MOST_ROWS)
    return refused(1, 1, `${body.length} rows`, `${MOST_ROWS} are the most that can be used`, 'Give fewer rows.');
  const rows: StationRow[] = [];
  for (const cells of body) {
    if (problems.length >= MOST_PROBLEMS) break;
    rows.push(readRow(cells, head, found, split.separator, complain));
  }
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, value: { file, columns: found.map((f) => f.column.key), rows, ignored } };
}

interface Found {
  readonly column: StationColumn;
  /** which cell of a row */
  readonly index: number;
  /** of bare numbers; null where the cells give it */
  readonly unit: string | null;
}

type Complain = (path: string, cell: Pick<Cell, 'line' | 'column'>, given: string, why: string, mend: string) => void;

function layOut(head: readonly Cell[], complain: Complain): { readonly found: readonly Found[]; readonly ignored: readonly string[] } {
  const found: Found[] = [];
  const unknown: Cell[] = [];
  for (const [index, cell] of head.entries()) {
    const column = STATION_COLUMNS.find((c) => (c.heads as readonly string[]).includes(headWords(cell.text)));
    if (!column) {
      if (cell.text !== '') unknown.push(cell);
      continue;
    }
    if (found.some((f) => f.column === column))
      complain(column.key, cell, showGiven(cell.text), 'there is such a column already', 'Delete one of the two.');
    found.push({ column, index, unit: unitOf(cell, column, complain) });
  }
  const missing = STATION_COLUMNS.filter((c) => !found.some((f) => f.column === c)).map((c) => c.heads[0]);
  const ignored: string[] = [];
  for (const cell of unknown) {
    const near = nearestWord(headWords(cell.text), missing);
    if (near) complain('', cell, showGiven(cell.text), 'there is no such column', `Did you mean "${near}"?`);
    else ignored.push(cell.text);
  }
  if (missing.includes('name'))
    complain('name', head[0]!, showGiven(head[0]!.text), 'no column is headed "name"', `The first row is the head: ${HEADS}.`);
  return { found, ignored };
}

/** `mastHeight`, `Mast_height [m]`: mast height. */
const headWords = (text: string): string =>
  text
    .replace(/[([].*$/, '')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replaceAll(/[\s_-]+/g, ' ')
    .trim()
    .toLowerCase();

function unitOf(cell: Cell, { key, heads, dimension }: StationColumn, complain: Complain): string | null {
  const unit = /[([]\s*([^)\]]*?)\s*[)\]]/.exec(cell.text)?.[1];
  if (unit === undefined || dimension === null) return null;
  if (!readQuantity(`1 ${unit}`, dimension).ok)
    complain(
      key,
      cell,
      showGiven(unit),
      `it is no unit of ${DIMENSIONS[dimension].label}`,
      `Write a head such as "${heads[0]} (${DIMENSIONS[dimension].symbol})", or a unit in each cell.`,
    );
  return unit;
}

function readRow(
  cells: readonly Cell[],
  head: readonly Cell[],
  found: readonly Found[],
  separator: string,
  complain: Complain,
): StationRow {
  const values: Partial<Record<StationKey, string | boolean>> = {};
  const at: Partial<Record<StationKey, { line: number; column: number }>> = {};
  const extra = cells.slice(head.length).find((c) => c.text !== '');
  if (extra) {
    complain(
      '',
      extra,
      showGiven(extra.text),
      `the head has ${head.length} columns, and this row more`,
      separator === ',' ? 'Put a value with a comma in it in double quotes.' : 'Give one value to each column.',
    );
    // nothing in it stands where it belongs
    return { values, line: cells[0]!.line, at };
  }
  for (const { column, index, unit } of found) {
    const cell = cells[index];
    if (!cell) continue;
    at[column.key] = { line: cell.line, column: cell.column };
    const value = cell.text === '' ? undefined : readCell(cell, column, unit, separator, complain);
    if (value !== undefined) values[column.key] = value;
  }
  return { values, line: cells[0]!.line, at };
}

function readCell(
  cell: Cell,
  { key, heads, dimension }: StationColumn,
  unit: string | null,
  separator: string,
  complain: Complain,
): string | boolean | undefined {
  const { text } = cell;
  if (key === 'name') return text;
  if (key === 'stereo') {
    const stereo = STEREO_WORDS.get(text.toLowerCase());
    if (stereo === undefined) complain(key, cell, showGiven(text), 'stereo is yes or no', 'Write yes or no, or leave the cell empty.');
    return stereo;
  }
  if (dimension === null) return text.toLowerCase();
  // where commas do not separate, one comma can only be the decimal sign
  const plain = separator !== ',' && /^[^.,]*,[^.,]*$/.test(text) ? text.replace(',', '.') : text;
  const number = readNumberAtHead(plain);
  const written = unit !== null && number.ok && number.rest === '' ? `${plain} ${unit}` : plain;
  const reading = readQuantity(written, dimension);
  if (reading.ok) return written;
  complain(key, cell, showGiven(text), `${heads[0]}: ${reading.why}`, reading.mend);
  return undefined;
}
