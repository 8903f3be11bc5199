/** Signs that people write or paste, and the plain ones that stand for them. */
const SAME: Readonly<Record<string, string>> = {
  '\u00a0': ' ',
  '\u2009': ' ',
  '\u202f': ' ',
  '\u2212': '-',
  '\u2010': '-',
  '\u2011': '-',
  '\u2013': '-',
  '\u2032': "'",
  '\u2019': "'",
  '\u2033': '"',
  '\u201c': '"',
  '\u201d': '"',
  '\u00b5': 'u',
  '\u03bc': 'u',
  '\u03a9': 'ohm',
  '\u2126': 'ohm',
  '\u00ba': '°',
  '\u2103': '°C',
  '\u2109': '°F',
  '\u00b2': '^2',
  '\u2044': '/',
  '\u00bc': ' 1/4',
  '\u00bd': ' 1/2',
  '\u00be': ' 3/4',
  '\u215b': ' 1/8',
  '\u215c': ' 3/8',
  '\u215d': ' 5/8',
  '\u215e': ' 7/8',
};

/** Letters of other alphabets that cannot be told from ours by eye. */
const LOOKS_LIKE: Readonly<Record<string, string>> = {
  а: 'a',
  е: 'e',
  о: 'o',
  р: 'p',
  с: 'c',
  х: 'x',
  м: 'm',
  к: 'k',
  т: 't',
  н: 'H',
  Н: 'H',
  М: 'M',
  А: 'A',
  В: 'B',
  К: 'K',
  О: 'O',
  Г: 'r',
  ν: 'v',
  ο: 'o',
  ρ: 'p',
  κ: 'k',
  Η: 'H',
  Μ: 'M',
  Κ: 'K',
  Ζ: 'Z',
  Α: 'A',
  Ν: 'N',
};

/** Turns typographic signs into plain ones, and runs of blanks into one. */
export function tidyText(text: string): string {
  return Array.from(text, (c) => SAME[c] ?? c)
    .join('')
    .replace(/\s+/g, ' ')
    .trim();
}

/** Says which character of a tidied text is foreign to quantities; null if none is. */
export function foreignCharacter(text: string): string | null {
  for (const c of text) {
    if (c === '°' || (c >= ' ' && c <= '~')) continue;
    const code = c.codePointAt(0)!;
    const point = `U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
    const twin = code >= 0xff01 && code <= 0xff5e ? String.fromCharCode(code - 0xfee0) : LOOKS_LIKE[c];
    const shown =
      code < 0x20 || (code >= 0x7f && code < 0xa0) || (code >= 0x200b && code <= 0x200f) || code === 0xfeff ? point : `"${c}" (${point})`;
    return twin ? `it contains ${shown}, which only looks like "${twin}"` : `it contains ${shown}, which no quantity has`;
  }
  return null;
}
