import type { Type } from './pdf/type.ts';

/** Letters with a stroke or a shape of their own, which no decomposition takes apart. */
const LATIN: Readonly<Record<string, string>> = {
  ł: 'l',
  Ł: 'L',
  đ: 'd',
  Đ: 'D',
  ħ: 'h',
  Ħ: 'H',
  ı: 'i',
  ŧ: 't',
  Ŧ: 'T',
  ŋ: 'ng',
  Ŋ: 'NG',
  ə: 'e',
  Ə: 'E',
};
/** Cyrillic, written as is usual in English: BGN/PCGN 1947 for Russian, without its rules of context; Ukrainian, Serbian and Macedonian letters as usual. */
const CYRILLIC: Readonly<Record<string, string>> = {
  а: 'a',
  б: 'b',
  в: 'v',
  г: 'g',
  ґ: 'g',
  д: 'd',
  ђ: 'dj',
  е: 'e',
  ё: 'yo',
  є: 'ye',
  ж: 'zh',
  з: 'z',
  и: 'i',
  і: 'i',
  ї: 'yi',
  й: 'y',
  ј: 'j',
  к: 'k',
  л: 'l',
  љ: 'lj',
  м: 'm',
  н: 'n',
  њ: 'nj',
  о: 'o',
  п: 'p',
  р: 'r',
  с: 's',
  т: 't',
  ћ: 'c',
  у: 'u',
  ў: 'w',
  ф: 'f',
  х: 'kh',
  ц: 'ts',
  ч: 'ch',
  џ: 'dz',
  ш: 'sh',
  щ: 'shch',
  ъ: '',
  ы: 'y',
  ь: '',
  э: 'e',
  ю: 'yu',
  я: 'ya',
};

/**
 * A text in letters that can be printed: as it is; without accents that no font has; Cyrillic in Latin letters; anything else by its Unicode
 * numbers, `[U+4E2D 592E]`, so that nothing is lost in silence. Line breaks become spaces.
 */
export function printable(text: string, type: Pick<Type, 'has'>): string {
  let out = '';
  let codes: string[] = [];
  const close = (): void => {
    if (codes.length > 0) out += `[U+${codes.join(' ')}]`;
    codes = [];
  };
  for (const character of text.normalize('NFC')) {
    const as = /^[\s\p{Zl}\p{Zp}]$/u.test(character) ? ' ' : written(character, type);
    if (as === null) codes.push(character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0'));
    else {
      close();
      out += as;
    }
  }
  close();
  return out;
}

function written(character: string, type: Pick<Type, 'has'>): string | null {
  const every = (t: string): boolean => [...t].every((c) => type.has(c));
  if (every(character)) return character;
  // marks that set the direction of writing, or join letters, print nothing
  if (/^\p{Cf}$/u.test(character)) return '';
  const lower = character.toLowerCase();
  const cyrillic = CYRILLIC[lower];
  if (cyrillic !== undefined) return lower === character ? cyrillic : cyrillic.charAt(0).toUpperCase() + cyrillic.slice(1);
  const plain = LATIN[character] ?? character.normalize('NFKD').replace(/\p{M}/gu, '');
  return plain !== '' && plain !== character && every(plain) ? plain : null;
}

/** Every text within a value made printable, keys too; `changed` is told each that came out otherwise. */
export function printableWithin<T>(value: T, type: Pick<Type, 'has'>, changed: (as: string) => void): T {
  const text = (t: string): string => {
    const as = printable(t, type);
    if (as !== t) changed(as);
    return as;
  };
  const within = (v: unknown): unknown => {
    if (typeof v === 'string') return text(v);
    if (Array.isArray(v)) return v.map(within);
    if (typeof v !== 'object' || v === null || ArrayBuffer.isView(v)) return v;
    return Object.fromEntries(Object.entries(v).map(([k, inner]) => [text(k), within(inner)]));
  };
  return within(value) as T;
}
