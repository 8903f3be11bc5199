import { DIMENSIONS, type DimensionName, readNumberAtHead, readQuantity, showGiven } from '#units';
import { LONGEST_FILE } from '../json/scan.ts';
import type { Problem } from '../problem.ts';

/** A column that is wanted: its name in complaints, how a header may call it, and what it holds. */
export interface Column {
  readonly name: string;
  readonly header: RegExp;
  readonly dimension: DimensionName;
}

/** Rows of numbers in SI units, with the line and the columns each stood in. */
export interface CsvTable {
  readonly rows: readonly { readonly line: number; readonly at: readonly number[]; readonly values: readonly number[] }[];
}

export type CsvOutcome = { readonly ok: true; readonly table: CsvTable } | { readonly ok: false; readonly problems: readonly Problem[] };

interface Cell {
  readonly text: string;
  /** column in the line, from 1 */
  readonly at: number;
}
interface Line {
  readonly line: number;
  readonly cells: readonly Cell[];
}

const MOST_ROWS = 100_000;
/** After so many complaints the rest would say the same. */
const MOST_PROBLEMS = 20;
const MOST_HEADER_LINES = 2;

/**
 * Reads columns of quantities from text: separated by semicolons or tabs (then a comma is the decimal sign), by commas, or by blanks.
 *
 * Heads are optional. Units may stand in the head, `distance (km)`, `U/mV`, in a line of their own below it, or in every cell; where there are
 * none, SI units are taken. Blank lines and lines that begin with # are passed over.
 */
export function readColumns(text: string, file: string | null, columns: readonly Column[]): CsvOutcome {
  if (text.length > LONGEST_FILE)
    return refused(file, 1, 1, '', `${(text.length / 1e6).toFixed(0)} million characters`, 'no table is that long', 'Give fewer rows.');
  const { separator, lines } = splitLines(text);
  if (lines.length === 0)
    return refused(file, 1, 1, '', 'an empty file', 'there are no rows in it', `Give rows of ${columns.map((c) => c.name).join(' and ')}.`);
  const firstRow = lines.findIndex((l) => l.cells.some((c) => readNumberAtHead(c.text).ok));
  const heads = lines.slice(0, firstRow < 0 ? lines.length : firstRow);
  if (firstRow < 0 || heads.length > MOST_HEADER_LINES)
    return refused(
      file,
      lines[0]!.line,
      1,
      '',
      showGiven(lines[0]!.cells[0]?.text ?? ''),
      'no row of numbers follows the head',
      'Give one or two lines of heads at most, then the rows.',
    );
  if (lines.length - firstRow > MOST_ROWS)
    return refused(file, 1, 1, '', `${lines.length} rows`, `${MOST_ROWS} are the most that can be used`, 'Give fewer rows.');
  const layout = layOut(heads, lines[firstRow]!, columns, file, separator);
  return 'problems' in layout ? layout : readRows(lines.slice(firstRow), columns, layout, file, separator);
}

function refused(
  file: string | null,
  line: number,
  column: number,
  path: string,
  given: string,
  why: string,
  mend: string,
): CsvOutcome & { ok: false } {
  return { ok: false, problems: [{ path, file, line, column, given, why, mend }] };
}

function splitLines(text: string): { readonly separator: string; readonly lines: readonly Line[] } {
  const kept = text
    .replace(/^\ufeff/, '')
    .split(/\r\n|\n|\r/)
    .map((content, i) => ({ content, line: i + 1 }))
    .filter(({ content }) => content.trim() !== '' && !content.trimStart().startsWith('#'));
  const separator = [';', '\t', ','].find((s) => kept.some((l) => l.content.includes(s))) ?? ' ';
  return { separator, lines: kept.map(({ content, line }) => ({ line, cells: splitCells(content, separator) })) };
}

function splitCells(content: string, separator: string): Cell[] {
  const cells: Cell[] = [];
  if (separator === ' ') {
    for (const m of content.matchAll(/\S+/g)) cells.push({ text: m[0], at: m.index + 1 });
    return cells;
  }
  let from = 0;
  for (const part of content.split(separator)) {
    const lead = part.length - part.trimStart().length;
    cells.push({ text: part.trim().replace(/^"(.*)"$/, '$1'), at: from + lead + 1 });
    from += part.length + 1;
  }
  // a separator at the end of a line opens no further column
  if (cells.length > 1 && cells.at(-1)!.text === '') cells.pop();
  return cells;
}

interface Layout {
  /** which cell of a line each wanted column is */
  readonly index: readonly number[];
  /** the unit of bare numbers in each */
  readonly unit: readonly string[];
}

function layOut(
  heads: readonly Line[],
  first: Line,
  columns: readonly Column[],
  file: string | null,
  separator: string,
): Layout | (CsvOutcome & { ok: false }) {
  const names = heads[0]?.cells ?? [];
  const found = columns.map((c) => names.findIndex((cell) => c.header.test(cell.text)));
  const named = found.every((i) => i >= 0) && new Set(found).size === columns.length;
  if (!named && first.cells.length !== columns.length) {
    const wanted = columns.map((c) => c.name).join(' and ');
    const decimalComma = separator === ',' ? ' If the commas are decimal signs, separate the columns by semicolons.' : '';
    return refused(
      file,
      first.line,
      1,
      '',
      `${first.cells.length} columns`,
      `${columns.length} are wanted: ${wanted}`,
      `Give those columns, or name them in the head.${decimalComma}`,
    );
  }
  const index = named ? found : columns.map((_, i) => i);
  const unit: string[] = [];
  for (const [i, column] of columns.entries()) {
    const own = heads[1]?.cells[index[i]!]?.text;
    const head = names[index[i]!];
    const known = own === undefined ? unitInHead(head?.text ?? '', column.dimension) : own.replace(/^[([]|[)\]]$/g, '');
    if (known !== null && !isUnit(known, column.dimension))
      return refused(
        file,
        heads[0]!.line,
        head?.at ?? 1,
        column.name,
        showGiven(known),
        `it is no unit of ${DIMENSIONS[column.dimension].label}`,
        `Write a head such as "${column.name} (${DIMENSIONS[column.dimension].symbol})".`,
      );
    unit.push(known ?? DIMENSIONS[column.dimension].symbol);
  }
  return { index, unit };
}

function isUnit(text: string, dimension: DimensionName): boolean {
  return readQuantity(`1 ${text}`, dimension).ok;
}

/** The unit that a head names in brackets, whatever it is, or after a blank, a stroke or an underline if it is one; null for none. */
function unitInHead(head: string, dimension: DimensionName): string | null {
  const bracketed = /[([]\s*([^)\]]*?)\s*[)\]]/.exec(head);
  if (bracketed) return bracketed[1]!;
  const last = head.split(/[\s/_]+/).at(-1)!;
  return last !== '' && isUnit(last, dimension) ? last : null;
}

function readRows(
  lines: readonly Line[],
  columns: readonly Column[],
  { index, unit }: Layout,
  file: string | null,
  separator: string,
): CsvOutcome {
  const rows: { line: number; at: number[]; values: number[] }[] = [];
  const problems: Problem[] = [];
  for (const { line, cells } of lines) {
    const values: number[] = [];
    const at: number[] = [];
    for (const [i, column] of columns.entries()) {
      const cell = cells[index[i]!];
      if (!cell || cell.text === '') {
        const decimalComma = separator === ',' ? '' : ' A comma is the decimal sign here.';
        problems.push({
          path: column.name,
          file,
          line,
          column: cell?.at ?? 1,
          given: 'nothing',
          why: `this row has no ${column.name}`,
          mend: `Complete the row, or delete it.${decimalComma}`,
        });
        continue;
      }
      const reading = readCell(cell.text, column.dimension, unit[i]!, separator);
      if (reading.ok) {
        values.push(reading.value);
        at.push(cell.at);
      } else
        problems.push({
          path: column.name,
          file,
          line,
          column: cell.at,
          given: showGiven(cell.text),
          why: reading.why,
          mend: reading.mend,
        });
    }
    const extra = cells.length - Math.max(columns.length, Math.max(...index) + 1);
    if (separator === ',' && extra > 0 && cells.length > lines[0]!.cells.length)
      problems.push({
        path: '',
        file,
        line,
        column: 1,
        given: `${cells.length} columns`,
        why: 'this row has more columns than the first',
        mend: 'If the commas are decimal signs, separate the columns by semicolons.',
      });
    if (problems.length >= MOST_PROBLEMS) break;
    rows.push({ line, at, values });
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, table: { rows } };
}

function readCell(text: string, dimension: DimensionName, unit: string, separator: string): ReturnType<typeof readQuantity> {
  // where commas do not separate, one comma can only be the decimal sign
  const plain = separator !== ',' && /^[^.,]*,[^.,]*$/.test(text) ? text.replace(',', '.') : text;
  const number = readNumberAtHead(plain);
  return readQuantity(number.ok && number.rest === '' ? `${plain} ${unit}` : plain, dimension);
}
