import { PDFDocument } from '@cantoo/pdf-lib';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Block } from '../../../src/sheet/flow/block.ts';
import { place } from '../../../src/sheet/flow/place.ts';
import { FOOT, PAPERS, TOP } from '../../../src/sheet/pdf/paper.ts';
import { PdfPen } from '../../../src/sheet/pdf/pdf-pen.ts';
import { Type } from '../../../src/sheet/pdf/type.ts';
import { printable } from '../../../src/sheet/printable.ts';
import { paintSvg } from '../../../src/sheet/svg/paint-svg.ts';
import { readSvg } from '../../../src/sheet/svg/read-svg.ts';

const made = async () => {
  const doc = await PDFDocument.create();
  const type = await Type.of(doc);
  return { type, pen: new PdfPen(doc.addPage(), 297, type) };
};

test('a character that no font has is refused, not lost', async () => {
  const { type } = await made();
  expect(() => type.runs('5 中', 'plain')).toThrow(/U\+4E2D/);
  expect(
    type
      .runs('5 Ω µ ± φ ≤ −', 'plain')
      .map((r) => r.text)
      .join(''),
  ).toMatch(/^5 . . ± . . .$/u);
});

test('any text whatever can be printed once made printable', async () => {
  const { type } = await made();
  fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (text) => type.width(printable(text, type), 'plain') >= 0));
});

test.each([
  ['Łódź', 'Lódz'],
  ['Ёлка, Жук, Щука', 'Yolka, Zhuk, Shchuka'],
  ['Ωμέγα', 'Ωμεγα'],
  ['a\nb', 'a b'],
  ['広', '[U+5E83]'],
  ['📻', '[U+1F4FB]'],
  ['Größe ½', 'Größe ½'],
])('%s is printed %s', async (text, as) => {
  const { type } = await made();
  expect(printable(text, type)).toBe(as);
});

test('an element of a drawing that is not known is refused', async () => {
  const { pen } = await made();
  const svg = (inner: string) => readSvg(`<svg width="10mm" height="10mm" viewBox="0 0 10 10">${inner}</svg>`);
  expect(() => paintSvg(svg('<ellipse rx="1"/>'), pen)).toThrow(/ellipse/);
  expect(() => paintSvg(svg('<polygon points="0,0 1,1" fill="#000000" fill-opacity="0.5"/>'), pen)).toThrow(/seen through/);
  expect(() => readSvg('<svg><g></svg>')).toThrow(RangeError);
  expect(svg('<text x="1" y="1">a &lt; b &amp;lt;</text>').children[0]!.text).toBe('a < b &lt;');
});

test('blocks keep to their pages, in order and whole', () => {
  const size = fc.record({
    height: fc.double({ min: 1, max: 200, noNaN: true }),
    wide: fc.boolean(),
    withNext: fc.boolean(),
    newPage: fc.boolean(),
    floats: fc.boolean(),
    kept: fc.boolean(),
  });
  fc.assert(
    fc.property(fc.array(size, { maxLength: 30 }), (sizes) => {
      const blocks = sizes.map(
        (s): Block => ({
          width: s.wide ? 200 : 100,
          height: s.wide ? Math.min(60, s.height) : s.height,
          above: 2,
          ...(s.withNext && s.height < 60 && !s.wide && !s.floats ? { withNext: true as const } : {}),
          ...(s.newPage ? { newPage: true as const } : {}),
          ...(s.floats ? { floats: true as const } : {}),
          ...(s.kept && !s.wide && !s.floats && s.height < 20 ? { keptWithNext: true as const } : {}),
          paint: () => {},
        }),
      );
      const groups: Block[][] = [];
      blocks.forEach((b, i) => {
        if (i > 0 && (blocks[i - 1]!.withNext || blocks[i - 1]!.keptWithNext)) groups.at(-1)!.push(b);
        else groups.push([b]);
      });
      const room = (g: readonly Block[]): number => (g.some((b) => b.width > 180) ? 160 : 250);
      fc.pre(groups.every((g) => g.reduce((sum, b) => sum + b.height + 2, 0) < room(g)));
      const pages = place(blocks, PAPERS.a4);
      const order = pages.flatMap((p) => p.placed.map((b) => b.block));
      // a drawing may come later than what follows it: never sooner, and drawings and the rest keep their orders
      const leads = groups.map((g) => g[0]!);
      expect(order.length).toBe(blocks.length);
      for (const floating of [true, false]) {
        const own = groups.filter((g) => (g[0]!.floats === true) === floating).flat();
        expect(order.filter((b) => own.includes(b))).toEqual(own);
      }
      leads.forEach((lead, i) => {
        if (!lead.floats) for (const before of leads.slice(i + 1)) expect(order.indexOf(before)).toBeGreaterThan(order.indexOf(lead));
      });
      for (const { paper, placed } of pages) {
        placed.forEach(({ block, y }, i) => {
          expect(y).toBeGreaterThanOrEqual(i === 0 ? TOP : placed[i - 1]!.y + placed[i - 1]!.block.height);
          expect(y + block.height).toBeLessThanOrEqual(paper.height - FOOT + 1e-6);
        });
        if (placed !== pages.at(-1)!.placed) expect(placed.at(-1)!.block.withNext).toBeUndefined();
      }
    }),
  );
});
