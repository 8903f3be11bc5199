/** Text tables for a terminal: columns as wide as they must be, numbers to the right. */

export interface Column {
  readonly head: string;
  readonly align: 'left' | 'right';
}

/** Rows set in columns, with a rule under the heads, which may have several lines; the last column is not padded. */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[]): string {
  const heads = columns.map((c) => c.head.split('\n'));
  const width = columns.map((_, k) => Math.max(...heads[k]!.map(size), ...rows.map((r) => size(r[k] ?? ''))));
  const deep = Math.max(...heads.map((h) => h.length));
  const headLines = Array.from({ length: deep }, (_, i) => heads.map((h) => h[i - deep + h.length] ?? ''));
  const line = (cells: readonly string[]): string =>
    columns
      .map((c, k) => {
        const cell = cells[k] ?? '';
        const gap = ' '.repeat(width[k]! - size(cell));
        if (c.align === 'right') return gap + cell;
        return k === columns.length - 1 ? cell : cell + gap;
      })
      .join('  ')
      .trimEnd();
  return [...headLines.map(line), width.map((w) => '─'.repeat(w)).join('  '), ...rows.map(line)].join('\n');
}

/** Width on screen: colour codes take none. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: escape sequences begin with one
const ESCAPES = /\u001b\[[0-9;]*m/g;
function size(text: string): number {
  return [...text.replace(ESCAPES, '')].length;
}

/** Text broken at spaces to a width, later lines indented. */
export function wrap(text: string, width: number, indent = ''): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && size(line) + 1 + size(word) > width) {
      lines.push(line);
      line = indent + word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line].join('\n');
}
