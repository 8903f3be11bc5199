import { beforeAll, expect, test } from 'vitest';
import { buildSheet, type SheetInput, sheetPages } from '../../../src/sheet/index.ts';
import { needPoppler, wordsOf } from './poppler.ts';
import { example, UNUSUAL } from './sets.ts';

beforeAll(needPoppler, 240_000);

interface Placed {
  readonly text: string;
  readonly left: number;
  readonly base: number;
  readonly right: number;
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

/** Level stretches of text of a page, where its groups put them [mm]: read by tags alone. */
function textsOf(svg: string): readonly Placed[] {
  const out: Placed[] = [];
  const shifts = [{ x: 0, y: 0, scale: 1 }];
  for (const [, tag, attributes, text] of svg.matchAll(/<(g|\/g|text)\b([^>]*)>([^<]*)/g)) {
    const here = shifts.at(-1)!;
    const value = (key: string): number => Number(new RegExp(` ${key}="([^"]*)"`).exec(attributes!)![1]);
    if (tag === '/g') shifts.pop();
    else if (tag === 'g') {
      const [x, y, scale] = /translate\((\S+) (\S+)\) scale\((\S+)\)/.exec(attributes!)!.slice(1).map(Number) as [number, number, number];
      shifts.push({ x: here.x + here.scale * x, y: here.y + here.scale * y, scale: here.scale * scale });
    } else if (!attributes!.includes('rotate')) {
      const left = here.x + here.scale * value('x');
      const plain = text!.replace(/&([^;]+);/g, (_, name: string) => ENTITIES[name]!);
      out.push({ text: plain, left, base: here.y + here.scale * value('y'), right: left + here.scale * value('textLength') });
    }
  }
  return out;
}

const SETS: readonly (readonly [string, () => SheetInput])[] = [
  ['demo', () => example('dipole-and-small-coil.json')],
  ['names long and foreign', UNUSUAL['names long and foreign']],
];

test.each(SETS)('%s: what the screen shows stands where poppler finds it on paper', async (_, make) => {
  const [pages, printed] = [await sheetPages(make()), wordsOf(await buildSheet(make()))];
  expect(pages).toHaveLength(printed.length);
  let compared = 0;
  pages.forEach((page, i) => {
    const { width, height, words } = printed[i]!;
    expect([page.width, page.height]).toEqual([expect.closeTo(width, 1), expect.closeTo(height, 1)]);
    for (const { text, left, base, right } of textsOf(page.svg)) {
      // a word alone on its stretch, so that poppler has the same
      if (!/^[A-Za-z]{4,}$/.test(text)) continue;
      const same = words.filter((w) => w.text === text && Math.abs(w.left - left) < 0.5 && Math.abs(w.right - right) < 0.5);
      expect(same.filter((w) => w.top < base && w.bottom > base - 0.5).length, `${text} on page ${i + 1}`).toBeGreaterThan(0);
      compared++;
    }
  });
  expect(compared).toBeGreaterThan(20);
});

test('a page asks for nothing that a strict page may not have', async () => {
  const pages = await sheetPages({ ...example('rod-too-far.json'), paper: 'letter', code: 'set1=<&">' });
  for (const { svg } of pages) {
    expect(svg).not.toMatch(/<script|<style|style=|href|url\(|data:|foreignObject/);
    expect(svg.match(/<svg /g)).toHaveLength(1);
    expect((svg.match(/<g /g) ?? []).length).toBe((svg.match(/<\/g>/g) ?? []).length);
  }
  // the code stands in groups of five
  expect(pages.at(-1)!.svg.includes('set1= &lt;&amp;&quot;&gt;')).toBe(true);
});
