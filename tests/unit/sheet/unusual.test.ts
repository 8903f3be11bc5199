import { beforeAll, describe, expect, test } from 'vitest';
import { buildSheet, PAPERS } from '../../../src/sheet/index.ts';
import { needPoppler, textOf, type Word, type WordPage, wordsOf } from './poppler.ts';
import { example, LONG_NAME, UNUSUAL } from './sets.ts';

beforeAll(needPoppler, 240_000);

/** Type set level on a line is no higher than this, the title apart [mm]: what is higher is turned, and its box is not its room. */
const LEVEL = 5.6;
/** Boxes of poppler are those of the font, higher than its letters: lines may touch by this [mm]. */
const TOUCH = 0.75;
/** Printers leave so much unprinted [mm]: common practice, no source. */
const EDGE = 3;

const overlap = (a: Word, b: Word): boolean =>
  Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.3 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > TOUCH;

function overlaps({ words }: WordPage): readonly string[] {
  // names round the dial are turned; whether they keep clear of each other the tests of the dial say
  const [from, to] = ['Scale', 'True'].map((first) => words.find((w, i) => w.text === first && words[i + 1]!.text === 'to')?.top ?? 0);
  const level = words.filter((w) => w.bottom - w.top <= LEVEL && !(w.top > from! && w.bottom < to!));
  return level.flatMap((a, i) =>
    level.slice(i + 1).flatMap((b) => (overlap(a, b) ? [`${a.text} | ${b.text} at ${a.left.toFixed(1)}, ${a.top.toFixed(1)}`] : [])),
  );
}

describe.each(Object.entries(UNUSUAL))('%s', (name, make) => {
  test.each(name.length % 2 === 0 ? (['a4'] as const) : (['letter'] as const))(
    'on %s nothing lies over another, and nothing over the edge',
    async (paper) => {
      const pages = wordsOf(await buildSheet({ ...make(), paper }));
      expect(pages.length).toBeGreaterThan(4);
      for (const page of pages) {
        const sizes = [page.width, page.height].sort((a, b) => a - b);
        expect(sizes[0]).toBeCloseTo(PAPERS[paper].width, 1);
        expect(sizes[1]).toBeCloseTo(PAPERS[paper].height, 1);
        expect(overlaps(page)).toEqual([]);
        for (const w of page.words) {
          expect(Math.min(w.left, w.top, page.width - w.right, page.height - w.bottom), w.text).toBeGreaterThan(EDGE);
        }
      }
    },
  );
});

test('the watch for overlaps sees one', () => {
  const word = { text: 'a', left: 10, right: 20, top: 10, bottom: 14 };
  expect(overlaps({ width: 210, height: 297, words: [word, { ...word, left: 19, right: 25, top: 12, bottom: 16 }] })).toHaveLength(1);
});

test('names are printed whole, in letters there are, and it is said', async () => {
  const text = textOf(await buildSheet(UNUSUAL['names long and foreign']()));
  const close = text.replaceAll(' ', '');
  expect(close).toContain(LONG_NAME.replaceAll(' ', ''));
  // BGN/PCGN romanisation of the letters; Unicode numbers from the Unicode charts
  expect(text).toContain('Radio Zhukovka');
  expect(close).toContain('[U+4E2D592E5E8364AD96FB53F0]');
  expect(text).toContain('Lódz bez batarei [U+2615]');
  expect(text).toContain('no type for some letters');
});

test('a set without reach says so, and what is missing', async () => {
  const text = textOf(await buildSheet(UNUSUAL['one turn, out of reach']()));
  expect(text).toContain('out of reach of the dial');
  expect(text).toContain('no strip is needed');
  expect(text).not.toMatch(/NaN|undefined|null|Infinity/);
});

test('the strip comes in pieces where the paper is narrower than the former is round', async () => {
  const text = textOf(await buildSheet(UNUSUAL['a coil too wide for one strip, out of reach']()));
  expect(text).toContain('piece 1 of');
  // pi times 160 mm
  expect(text).toContain('503 mm from seam to seam');
});

test('a coil that is the aerial', async () => {
  const text = textOf(await buildSheet(example('loop-by-the-mast.json')));
  expect(text).toContain('The coil is the aerial too');
});
