import { beforeAll, describe, expect, test } from 'vitest';
import { buildSheet, type PaperName } from '../../../src/sheet/index.ts';
import { type Dots, dotsOf, longest, needPoppler, PER_MM, px, type Region, type WordPage, wordsOf } from './poppler.ts';
import { example } from './sets.ts';

/** What a print may be off by [mm]. */
const OFF = 0.3;
/** Darker than this are only lines in ink: those of the tab for glue and of the wire's thickness are lighter. */
const INK = 80;
/** Edges and seams of the strip are so thick [mm]; they are measured over all, and stand for their middles. */
const LINE = 0.25;

let sheets: Readonly<Record<PaperName, { readonly dots: readonly Dots[]; readonly words: readonly WordPage[] }>>;
beforeAll(async () => {
  needPoppler();
  const of = async (paper: PaperName) => {
    const pdf = await buildSheet({ ...example('dipole-and-small-coil.json'), paper });
    return { dots: dotsOf(pdf), words: wordsOf(pdf) };
  };
  sheets = { a4: await of('a4'), letter: await of('letter') };
}, 240_000);

/** Page and place of the first of some words that follow one another. */
function find(pages: readonly WordPage[], phrase: string): { readonly page: number; readonly top: number; readonly bottom: number } {
  const wanted = phrase.split(' ');
  for (const [page, { words }] of pages.entries())
    for (let i = 0; i + wanted.length <= words.length; i++)
      if (wanted.every((w, k) => words[i + k]!.text === w)) return { page, top: words[i]!.top, bottom: words[i]!.bottom };
  throw new Error(`"${phrase}" is on no page`);
}

/** Widest row, first dark dot to last [mm]. */
function widest(dots: Dots, r: Region): number {
  let best = 0;
  for (let y = px(r.top); y < px(r.bottom); y++) {
    let [first, last] = [-1, -1];
    for (let x = px(r.left); x < px(r.right); x++)
      if (dots.dark(x, y)) {
        if (first < 0) first = x;
        last = x;
      }
    if (first >= 0) best = Math.max(best, last - first + 1);
  }
  return best / PER_MM;
}

describe.each(['a4', 'letter'] as const)('%s', (paper) => {
  test('every page has rulers of 100 mm both ways', () => {
    for (const dots of sheets[paper].dots) {
      const [width, height] = [dots.width / PER_MM, dots.height / PER_MM];
      // the edge of a ruler is as long as it says
      expect(Math.abs(longest(dots, { left: 13, right: width - 60, top: height - 17, bottom: height - 14 }).across - 100)).toBeLessThan(
        OFF,
      );
      expect(Math.abs(longest(dots, { left: 4, right: 8, top: height - 125, bottom: height - 12 }).down - 100)).toBeLessThan(OFF);
    }
  });

  test('the strip for winding is pi times 10 mm from seam to seam, its lines 2 mm apart', () => {
    const { words, dots } = sheets[paper];
    const at = find(words, 'Strip for winding');
    const page = dots[at.page]!;
    const region = { left: 14, right: 60, top: at.bottom + 0.5, bottom: at.bottom + 24 };
    // the upper edge, which runs from seam to seam
    const { across } = longest(page, { ...region, bottom: at.bottom + 6 }, INK);
    const { down } = longest(page, region, INK);
    expect(Math.abs(across - (Math.PI * 10 + LINE))).toBeLessThan(OFF);
    // 5 turns of 2 mm and 3 mm beyond the wire at either end
    expect(Math.abs(down - (16 + LINE))).toBeLessThan(OFF);
    // middles of the lines, along an upright line 20 mm from the left seam
    const x = px(15 + 1 + 20);
    const lines: number[] = [];
    for (let y = px(region.top); y < px(region.bottom); y++) if (page.dark(x, y, 110) && !page.dark(x, y - 1, 110)) lines.push(y / PER_MM);
    const gaps = lines.slice(1).map((y, i) => y - lines[i]!);
    expect(gaps.filter((g) => Math.abs(g - 2) < OFF)).toHaveLength(4);
  });

  test('the arc of the dial has a radius of 60 mm', () => {
    const { words, dots } = sheets[paper];
    const from = find(words, 'Scale to cut out');
    const to = find(words, 'True to size');
    expect(to.page).toBe(from.page);
    const page = dots[from.page]!;
    // half a circle with a line of 0.4 mm
    const width = widest(page, { left: 14, right: page.width / PER_MM - 8, top: from.bottom + 1, bottom: to.top - 12 });
    expect(Math.abs(width - 120.4)).toBeLessThan(OFF);
  });

  test('the coil is drawn five times its size', () => {
    const { words, dots } = sheets[paper];
    const from = find(words, 'Drawn five times its size');
    const page = dots[from.page]!;
    // seen from its end it is 10 mm and two wires of 1 mm across
    const width = widest(page, { left: 120, right: page.width / PER_MM - 12, top: from.bottom + 15, bottom: from.bottom + 60 });
    expect(Math.abs(width - 5 * 12)).toBeLessThan(OFF);
  });
});
