import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { buildSheet, type PaperName, type SheetInput } from '../../../src/sheet/index.ts';
import { needPoppler, textOf, wordsOf } from './poppler.ts';
import { example, UNUSUAL } from './sets.ts';

beforeAll(needPoppler, 240_000);

/** Above the room for text, and below it with the ruler and the number of the page [mm]. */
const TOP = 13;
const FOOT = 24;
/** So much of every page but the last is used: about two thirds, words counted alone, under which a rule or the edge of a drawing may still stand. */
const USED = 0.6;

/** Every second of the demo sets: each takes some seconds. */
const EXAMPLES = readdirSync('examples')
  .filter((name) => 'tank' in (JSON.parse(readFileSync(`examples/${name}`, 'utf8')) as object))
  .filter((_, k) => k % 2 === 0);

/** What a link to a demo set has, roughly: the code of a sheet. */
const code = 'x9Za'.repeat(330);

const sheets: readonly (readonly [string, PaperName, () => SheetInput])[] = [
  ...EXAMPLES.map((name) => [name, 'a4', () => example(name)] as const),
  ...Object.entries(UNUSUAL).map(([name, make]) => [name, 'letter', make] as const),
];

test.each(sheets)('%s on %s: no page but the last is left much empty', async (_, paper, make) => {
  const pdf = await buildSheet({ ...make(), paper, code });
  const pages = wordsOf(pdf);
  const used = pages.map(({ height, words }) => {
    const room = height - TOP - FOOT;
    // words of the foot, and of the upright ruler, are outside the room for text
    const bottoms = words.filter((w) => w.left > 14 && w.bottom < height - FOOT + 2).map((w) => w.bottom);
    return (Math.max(TOP, ...bottoms) - TOP) / room;
  });
  expect(used.slice(0, -1).filter((u) => u < USED)).toEqual([]);
  const text = textOf(pdf);
  expect(text).toContain('What is joined to what');
  expect(text).toContain('How it may lie on the bench');
});
