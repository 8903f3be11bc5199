import type { Mark, Path, Positions } from './positions.ts';
import { type Fault, scanWord } from './scan-number.ts';

export type JsonObject = { [key: string]: unknown };

export interface ScanFault extends Fault {
  readonly path: Path;
  readonly mark: Mark;
}

/** Files nested deeper than this are no set files, and would exhaust the stack. */
const DEEPEST = 64;
/** Longer files are refused before a character is read [characters]. */
export const LONGEST_FILE = 5_000_000;

const ESCAPES: Readonly<Record<string, string>> = { '"': '"', '\\': '\\', '/': '/', b: '\b', f: '\f', n: '\n', r: '\r', t: '\t' };

/**
 * Reads JSON and remembers where everything stood.
 *
 * Stricter than the standard asks: a key may stand once only, and numbers must fit. A byte order mark at the very beginning is passed over.
 *
 * Source: RFC 8259.
 */
export function scanJson(text: string, file: string | null, positions: Positions): { readonly value: unknown } | ScanFault {
  if (text.length > LONGEST_FILE)
    return {
      path: [],
      mark: { file, line: 1, column: 1 },
      given: `${(text.length / 1e6).toFixed(0)} million characters`,
      why: `no set file is longer than ${LONGEST_FILE / 1e6} million`,
      mend: 'Give the set file itself, not a recording or a log.',
    };
  try {
    return { value: new Scanner(text, file, positions).document() };
  } catch (error) {
    if (error instanceof ScanError) return error.fault;
    throw error;
  }
}

/** Carries a fault up from the depth of the recursion. */
class ScanError extends Error {
  readonly fault: ScanFault;
  constructor(fault: ScanFault) {
    super(fault.why);
    this.fault = fault;
  }
}

class Scanner {
  private at = 0;
  private line = 1;
  private lineStart = 0;
  private readonly path: (string | number)[] = [];
  private readonly text: string;
  private readonly file: string | null;
  private readonly positions: Positions;

  constructor(text: string, file: string | null, positions: Positions) {
    this.text = text;
    this.file = file;
    this.positions = positions;
  }

  document(): unknown {
    if (this.text.charCodeAt(0) === 0xfeff) {
      this.at = 1;
      this.lineStart = 1;
    }
    this.skipBlanks();
    if (this.at >= this.text.length) this.fail('an empty file', 'there is nothing in it', 'A set file begins with { "version": 1, ...');
    const value = this.value();
    this.skipBlanks();
    if (this.at < this.text.length) this.fail(this.shown(), 'the file goes on after its end', 'Delete what follows the last bracket.');
    return value;
  }

  private value(): unknown {
    this.skipBlanks();
    const c = this.text[this.at];
    if (c === '{') return this.object();
    if (c === '[') return this.list();
    if (c === '"') return this.string();
    if (c === undefined) this.fail('the end of the file', 'a value is missing', 'Finish the file: every { needs its } and every [ its ].');
    if (c === '}' || c === ']' || c === ',' || c === ':')
      this.fail(
        this.shown(),
        'a value is missing here',
        c === ',' ? 'Delete one of the commas, or write the value.' : `Write the value, or delete what leads up to it.`,
      );
    const word = scanWord(this.text, this.at);
    if ('why' in word) this.fail(word.given, word.why, word.mend);
    this.at += word.length;
    return word.value;
  }

  private object(): JsonObject {
    const start = this.open('}');
    const object: JsonObject = {};
    this.positions.begin(object, start);
    if (this.closes('}', start)) return object;
    for (;;) {
      this.skipBlanks();
      const keyMark = this.mark();
      const key = this.key(start);
      this.path.push(key);
      if (Object.hasOwn(object, key)) this.fail(JSON.stringify(key), 'this key stands here twice', 'Keep one of the two.', keyMark);
      if (key === '__proto__') this.fail('"__proto__"', 'this key cannot be used', 'Choose another name.', keyMark);
      this.skipBlanks();
      if (this.text[this.at] !== ':') this.fail(this.shown(), `a colon must stand between the key and its value`, 'Write "key": value.');
      this.at++;
      this.skipBlanks();
      const valueMark = this.mark();
      object[key] = this.value();
      this.positions.entry(object, key, keyMark, valueMark);
      this.path.pop();
      if (!this.goesOn('}', start)) return object;
    }
  }

  private key(start: Mark): string {
    const c = this.text[this.at];
    if (c === '"') return this.string();
    if (c === '}') this.fail('}', 'a comma stands before the closing bracket', 'Delete that comma.');
    if (c === undefined) this.unclosed('{', start);
    return this.fail(this.shown(), 'a key in double quotation marks must stand here', 'Write "key": value.');
  }

  private list(): unknown[] {
    const start = this.open(']');
    const list: unknown[] = [];
    this.positions.begin(list, start);
    if (this.closes(']', start)) return list;
    for (;;) {
      this.skipBlanks();
      const mark = this.mark();
      if (this.text[this.at] === ']') this.fail(']', 'a comma stands before the closing bracket', 'Delete that comma.');
      this.path.push(list.length);
      list.push(this.value());
      this.positions.entry(list, list.length - 1, mark, mark);
      this.path.pop();
      if (!this.goesOn(']', start)) return list;
    }
  }

  /** Passes the opening bracket. */
  private open(close: string): Mark {
    const start = this.mark();
    if (this.path.length >= DEEPEST)
      this.fail(
        close === '}' ? '{' : '[',
        `brackets are nested more than ${DEEPEST} deep`,
        'No set file needs so many; check the brackets.',
      );
    this.at++;
    return start;
  }

  /** Whether the bracket closes at once. */
  private closes(close: string, start: Mark): boolean {
    this.skipBlanks();
    if (this.at >= this.text.length) this.unclosed(close === '}' ? '{' : '[', start);
    if (this.text[this.at] !== close) return false;
    this.at++;
    return true;
  }

  /** After an entry: a comma and more to come, or the closing bracket. */
  private goesOn(close: string, start: Mark): boolean {
    this.skipBlanks();
    const c = this.text[this.at];
    if (c === ',' || c === close) {
      this.at++;
      return c === ',';
    }
    if (c === undefined) this.unclosed(close === '}' ? '{' : '[', start);
    return this.fail(
      this.shown(),
      'a comma or a closing bracket must stand here',
      `Write a comma before the next entry, or ${close} after the last.`,
    );
  }

  private unclosed(bracket: string, start: Mark): never {
    this.fail(
      'the end of the file',
      `the ${bracket} of line ${start.line}, column ${start.column} is never closed`,
      `Add the missing ${bracket === '{' ? '}' : ']'}.`,
    );
  }

  private string(): string {
    const start = this.mark();
    const { text } = this;
    let out = '';
    let from = ++this.at;
    for (;;) {
      const code = text.charCodeAt(this.at);
      if (this.at >= text.length || code === 10 || code === 13)
        this.fail(text.slice(from - 1, from + 20), 'the quotation mark is never closed', 'Close it on the same line.', start);
      if (code < 0x20)
        this.fail(
          `the character U+${code.toString(16).toUpperCase().padStart(4, '0')}`,
          'text cannot hold control characters',
          'Delete it, or write \\t for a tab.',
        );
      if (code === 34) {
        out += text.slice(from, this.at++);
        return out;
      }
      if (code === 92) {
        out += text.slice(from, this.at) + this.escape();
        from = this.at;
      } else this.at++;
    }
  }

  private escape(): string {
    const letter = this.text[this.at + 1] ?? '';
    const plain = ESCAPES[letter];
    if (plain !== undefined) {
      this.at += 2;
      return plain;
    }
    const hex = this.text.slice(this.at + 2, this.at + 6);
    if (letter === 'u' && /^[0-9a-fA-F]{4}$/.test(hex)) {
      this.at += 6;
      return String.fromCharCode(Number.parseInt(hex, 16));
    }
    return this.fail(
      `\\${letter}`,
      'this is no escape sequence',
      'Write \\\\ for a backslash, \\n for a new line, \\u00b5 for a character.',
    );
  }

  private skipBlanks(): void {
    for (;;) {
      const code = this.text.charCodeAt(this.at);
      if (code === 10 || code === 13) {
        if (code === 13 && this.text.charCodeAt(this.at + 1) === 10) this.at++;
        this.line++;
        this.lineStart = ++this.at;
      } else if (code === 32 || code === 9) this.at++;
      else break;
    }
    if (this.text[this.at] === '/' || this.text[this.at] === '#')
      this.fail(this.text.slice(this.at, this.at + 2), 'JSON has no comments', 'Put it under the key "notes", or delete it.');
  }

  private mark(): Mark {
    return { file: this.file, line: this.line, column: this.at - this.lineStart + 1 };
  }

  /** The character here, so that a person can see which. */
  private shown(): string {
    const code = this.text.codePointAt(this.at);
    if (code === undefined) return 'the end of the file';
    return code > 0x20 && code < 0x7f ? String.fromCodePoint(code) : `the character U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
  }

  private fail(given: string, why: string, mend: string, mark = this.mark()): never {
    throw new ScanError({ path: [...this.path], mark, given, why, mend });
  }
}
