/** One cell of a table, and where it begins in the text, counted from 1. */
export interface Cell {
  /** blanks at its ends left out, unless it stands in quotes */
  readonly text: string;
  readonly line: number;
  readonly column: number;
}

export type Records =
  | { readonly ok: true; readonly separator: string; readonly records: readonly (readonly Cell[])[] }
  | { readonly ok: false; readonly line: number; readonly column: number; readonly given: string; readonly why: string };

const SEPARATORS = [';', '\t', ','];

/**
 * Splits a table of text cells, of which the first row is a head: separated by semicolons, tabs or commas, whichever the head has.
 *
 * A cell in quotes may hold separators, line ends and doubled quotes. Blank lines and lines that begin with # are passed over.
 * Source: RFC 4180, with its CRLF widened to every line end.
 */
export function splitRecords(given: string): Records {
  const text = given.replace(/^\ufeff/, '').replaceAll(/\r\n?/g, '\n');
  const head = text.split('\n').find((line) => !passedOver(line)) ?? '';
  const separator = SEPARATORS.find((s) => head.replaceAll(/"[^"]*"/g, '').includes(s)) ?? ',';
  const records: Cell[][] = [];
  let at = 0;
  let line = 1;
  while (at < text.length) {
    const end = endOfLine(text, at);
    if (passedOver(text.slice(at, end))) {
      at = end + 1;
      line += 1;
      continue;
    }
    const start = at;
    let lineStart = start;
    const cells: Cell[] = [];
    for (;;) {
      while (text[at] === ' ') at++;
      const place = { line, column: at - lineStart + 1 };
      if (text[at] !== '"') {
        let to = at;
        while (to < text.length && text[to] !== separator && text[to] !== '\n') to++;
        cells.push({ text: text.slice(at, to).trim(), ...place });
        at = to;
      } else {
        const close = closingQuote(text, at);
        if (close < 0) return { ok: false, ...place, given: text.slice(at, at + 20), why: 'this quote is never closed' };
        const content = text.slice(at + 1, close);
        cells.push({ text: content.replaceAll('""', '"'), ...place });
        const breaks = content.split('\n').length - 1;
        line += breaks;
        if (breaks > 0) lineStart = at + 1 + content.lastIndexOf('\n') + 1;
        at = close + 1;
        while (text[at] === ' ') at++;
        if (at < text.length && text[at] !== separator && text[at] !== '\n')
          return {
            ok: false,
            line,
            column: at - lineStart + 1,
            given: text.slice(at, Math.min(at + 20, endOfLine(text, at))),
            why: 'something follows the closing quote of a cell',
          };
      }
      if (text[at] !== separator) break;
      at += 1;
    }
    records.push(cells);
    at += 1;
    line += 1;
  }
  return { ok: true, separator, records };
}

const passedOver = (line: string): boolean => line.trim() === '' || line.trimStart().startsWith('#');

function endOfLine(text: string, from: number): number {
  const end = text.indexOf('\n', from);
  return end < 0 ? text.length : end;
}

/** Where the quote that opens a cell is closed; two quotes are one of the text. -1 where it is not. */
function closingQuote(text: string, open: number): number {
  let at = text.indexOf('"', open + 1);
  while (at >= 0 && text[at + 1] === '"') at = text.indexOf('"', at + 2);
  return at;
}
