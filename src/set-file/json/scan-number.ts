/** What stands where a value is expected and begins like a number or a word. */
const TOKEN = /[^\s,:{}[\]"/]+/y;
const NUMBER = /^-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?$/;

export interface Fault {
  readonly given: string;
  readonly why: string;
  readonly mend: string;
}

/** Reads the bare word at an offset: a number, true, false or null; or says why it is none. */
export function scanWord(text: string, offset: number): { readonly length: number; readonly value: number | boolean | null } | Fault {
  TOKEN.lastIndex = offset;
  const word = TOKEN.exec(text)?.[0];
  if (word === undefined) {
    const code = text.codePointAt(offset)!;
    const given = `the character U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
    return code === 0xfeff
      ? {
          given,
          why: 'it is a byte order mark, which may stand only at the very beginning',
          mend: 'Delete it; the editor may not show it.',
        }
      : { given, why: 'a value cannot begin so', mend: 'Delete that character.' };
  }
  switch (word) {
    case 'true':
      return { length: 4, value: true };
    case 'false':
      return { length: 5, value: false };
    case 'null':
      return { length: 4, value: null };
  }
  if (NUMBER.test(word)) {
    const value = Number(word);
    if (!Number.isFinite(value)) return fault(word, 'the number is too large to be held', 'Write a number below 1e308.');
    if (value === 0 && /[1-9]/.test(word.replace(/[eE].*/, '')))
      return fault(word, 'the number is too small to be held', 'Write 0, or a number above 1e-307.');
    return { length: word.length, value };
  }
  return fault(word, ...whyNot(word));
}

function fault(word: string, why: string, mend: string): Fault {
  return { given: word.length > 40 ? `${word.slice(0, 37)}...` : word, why, mend };
}

function whyNot(word: string): [why: string, mend: string] {
  if (/^[-+]?(nan|inf|infinity)$/i.test(word))
    return ['JSON has no such number, and nothing here can be infinite or undefined', 'Write the number, or leave the key out.'];
  if (/^(true|false|null|none|undefined)$/i.test(word))
    return ['JSON knows only true, false and null, in small letters', 'Write it so, or leave the key out.'];
  if (word.startsWith("'")) return ['text stands in double quotation marks', 'Write "..." in place of \'...\'.'];
  if (/^[\u201c\u201d\u201e]/.test(word)) return ['these are typographic quotation marks', 'Write plain ones: "...".'];
  if (/^\+\d/.test(word)) return ['a number has no plus sign before it', 'Leave the sign out.'];
  if (/^-?0\d/.test(word)) return ['a number does not begin with 0 and another digit', 'Leave the leading zero out.'];
  if (/^-?\.\d/.test(word)) return ['a number has a digit before its point', 'Write 0.5, not .5.'];
  if (/^-?\d+\.(\D|$)/.test(word)) return ['a number has a digit after its point', 'Write 5.0 or 5, not 5..'];
  if (/^-?\d/.test(word)) return ['it is no plain number', 'A number with a unit stands in quotation marks: "12 pF".'];
  return ['text stands in double quotation marks', 'Write "..." around it.'];
}
