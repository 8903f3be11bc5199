/** Widths in ems, rounded up from the widest of the common sans-serif faces; what is not listed counts as a wide em. */
const NARROW = { width: 0.42, of: " !'(),./:;I[\\]fijl|rt" };
const MIDDLE = { width: 0.65, of: 'abcdeghknopqsuvxyz0123456789"*?_`{}JLF-–' };
const WIDE = { width: 0.87, of: 'ABCDEGHKMNOPQRSTUVXYZ&#$+<=>^~µ°ΩφλΔ²³×−±Øäöüéèßø€≤≥' };

const WIDTHS: ReadonlyMap<string, number> = new Map(
  [NARROW, MIDDLE, WIDE].flatMap(({ width, of }) => [...of].map((character) => [character, width] as const)),
);

/**
 * Width of a line of text, on the safe side for any usual sans-serif face.
 *
 * @param size - of the type, in any unit
 * @returns width in that unit
 */
export function textWidth(text: string, size: number): number {
  let ems = 0;
  for (const character of text) ems += WIDTHS.get(character) ?? 1.02;
  return ems * size;
}

/** Words, a number or a sign together with the word it belongs to. */
function wordsOf(text: string): readonly string[] {
  const words: string[] = [];
  let held = '';
  for (const word of text.split(/\s+/).filter((w) => w !== '')) {
    const whole = held === '' ? word : `${held} ${word}`;
    const binds = /^[\d.,−+-]+$|^[×Ø+±]$/.test(word);
    held = binds ? whole : '';
    if (!binds) words.push(whole);
  }
  return held === '' ? words : [...words, held];
}

/** Breaks a text at its spaces into lines no wider than `width`, numbers kept with their units; a word that is too long alone is broken anywhere. */
export function wrapText(text: string, size: number, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of wordsOf(text)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer, size) <= width) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const character of word) {
      if (line !== '' && textWidth(line + character, size) > width) {
        lines.push(line);
        line = '';
      }
      line += character;
    }
  }
  if (line !== '') lines.push(line);
  return lines;
}
