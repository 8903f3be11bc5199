import { type PDFDocument, type PDFFont, PDFName, type PDFPage, StandardFonts } from '@cantoo/pdf-lib';

/** A style of type; all come with every reader of PDF files, and none is shipped. */
export type Face = 'plain' | 'bold' | 'fixed';

/** A stretch of text in one font. */
export interface Run {
  readonly font: PDFFont;
  readonly text: string;
  /** [ems] */
  readonly width: number;
}

/** Signs with two places in Unicode, of which a font may know only one. */
const TWINS: readonly (readonly [string, string])[] = [
  ['\u03a9', '\u2126'],
  ['\u0394', '\u2206'],
  ['\u03bc', '\u00b5'],
];

/**
 * The fonts of a sheet. What the chosen face lacks, such as `Ω`, is taken from the symbols; what no font has is refused: the library would put a
 * question mark in its place without a word.
 */
export class Type {
  readonly #faces: Readonly<Record<Face, readonly PDFFont[]>>;
  readonly #sets = new Map<PDFFont, ReadonlySet<number>>();
  readonly #widths = new Map<PDFFont, Map<string, number>>();

  private constructor(faces: Readonly<Record<Face, readonly PDFFont[]>>) {
    this.#faces = faces;
    for (const font of new Set(Object.values(faces).flat())) {
      this.#sets.set(font, new Set(font.getCharacterSet()));
      this.#widths.set(font, new Map());
    }
  }

  static async of(doc: PDFDocument): Promise<Type> {
    const [plain, bold, fixed, symbols] = await Promise.all(
      [StandardFonts.Helvetica, StandardFonts.HelveticaBold, StandardFonts.Courier, StandardFonts.Symbol].map((f) => doc.embedFont(f)),
    );
    return new Type({ plain: [plain!, symbols!], bold: [bold!, symbols!], fixed: [fixed!, symbols!] });
  }

  /** Makes the fonts known to a page. */
  lendTo(page: PDFPage): void {
    for (const font of this.#sets.keys()) page.node.setFontDictionary(nameOf(font), font.ref);
  }

  /** Whether a character can be printed. */
  has(character: string): boolean {
    return this.#find(character, 'plain') !== null;
  }

  /** @throws RangeError for a character that no font has */
  runs(text: string, face: Face): readonly Run[] {
    const out: { font: PDFFont; text: string; width: number }[] = [];
    for (const character of text) {
      const found = this.#find(character, face);
      if (!found)
        throw new RangeError(`U+${character.codePointAt(0)!.toString(16).toUpperCase()} in ${JSON.stringify(text)} cannot be printed.`);
      const width = this.#width(found.font, found.as);
      const last = out.at(-1);
      if (last?.font === found.font) {
        last.text += found.as;
        last.width += width;
      } else out.push({ font: found.font, text: found.as, width });
    }
    return out;
  }

  /** Width of a text [ems]. */
  width(text: string, face: Face): number {
    return this.runs(text, face).reduce((sum, r) => sum + r.width, 0);
  }

  #find(character: string, face: Face): { readonly font: PDFFont; readonly as: string } | null {
    const ways = [character, ...TWINS.flatMap(([a, b]) => (character === a ? [b] : character === b ? [a] : []))];
    for (const font of this.#faces[face]) for (const as of ways) if (this.#sets.get(font)!.has(as.codePointAt(0)!)) return { font, as };
    return null;
  }

  /** Character by character, as they are printed: the library's widths of whole words count kerning that it does not print. */
  #width(font: PDFFont, character: string): number {
    const known = this.#widths.get(font)!;
    const found = known.get(character) ?? font.widthOfTextAtSize(character, 1000) / 1000;
    known.set(character, found);
    return found;
  }
}

/** What a page calls a font. */
export const nameOf = (font: PDFFont): PDFName => PDFName.of(font.name);
