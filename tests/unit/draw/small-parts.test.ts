import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawCurve, drawingStyles } from '#draw';
import { lengthText } from '../../../src/draw/aerial/length-text.ts';
import { spread } from '../../../src/draw/placing/spread.ts';
import { linearTicks, logTicks, niceStep } from '../../../src/draw/plot/ticks.ts';
import { escapeXml } from '../../../src/draw/svg/escape.ts';
import { textWidth, wrapText } from '../../../src/draw/svg/text-width.ts';
import { MEASURED, widestOf } from './drawn.ts';
import { parseXml } from './xml.ts';

describe('text', () => {
  test('published: advance widths of DejaVu Sans and Liberation Sans are never above the estimate', () => {
    expect(MEASURED.size).toBeGreaterThan(110);
    for (const c of MEASURED) expect(textWidth(c, 1), c).toBeGreaterThanOrEqual(widestOf(c));
  });

  test('lines are no wider than asked, and nothing is lost', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), fc.integer({ min: 10, max: 100 }), (text, width) => {
        const lines = wrapText(text, 3, width);
        for (const line of lines) expect(textWidth(line, 3)).toBeLessThanOrEqual(width);
        expect(lines.join('').replaceAll(/\s/g, '')).toBe(text.replaceAll(/\s/g, ''));
      }),
      { numRuns: 200, seed: 3 },
    );
  });

  test('a number stays with its unit', () => {
    const text = 'bent of 15 mm and 10 mm and 3 turns Ø 60 mm';
    for (let width = 30; width < 90; width++) for (const line of wrapText(text, 3, width)) expect(line).not.toMatch(/(\d|Ø)$/);
  });

  test('any text survives the way through a file', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (text) => {
        const back = parseXml(`<a b="${escapeXml(text)}">${escapeXml(text)}</a>`);
        const clean = [...text].map((c) => {
          const code = c.codePointAt(0)!;
          if (code === 9 || code === 10 || code === 13) return ' ';
          return code < 32 || (code >= 0xd800 && code <= 0xdfff) || code === 0xfffe || code === 0xffff ? '\ufffd' : c;
        });
        expect(back.attributes.b).toBe(clean.join(''));
        expect(back.children.join('')).toBe(clean.join(''));
      }),
      { numRuns: 300, seed: 2 },
    );
  });

  test('the checker of files refuses what is not well-formed', () => {
    for (const bad of [
      '<a>',
      '<a></b>',
      '<a b=c/>',
      '<a b="1" b="2"/>',
      '<a>&x;</a>',
      '<a>&</a>',
      '<a/><b/>',
      '<a b="<"/>',
      '<a>\u0001</a>',
      'x',
    ])
      expect(() => parseXml(bad), bad).toThrow();
  });
});

describe('lengths', () => {
  test.each([
    [0.00056, '0.56 mm'],
    [0.006, '6 mm'],
    [0.00525, '5.25 mm'],
    [0.0131, '13.1 mm'],
    [0.09996, '100 mm'],
    [0.7204, '720 mm'],
    [1.44, '1440 mm'],
    [9.9994, '9999 mm'],
    [9.9996, '10 m'],
    [12.345, '12.35 m'],
    [30, '30 m'],
  ])('%f m is %s', (length, text) => {
    expect(lengthText(length)).toBe(text);
  });
});

describe('ticks', () => {
  test('steps are 1, 2 or 5 of a decade, ticks are whole multiples within the range, about as many as wanted', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e4, max: 1e4, noNaN: true }),
        fc.double({ min: 1e-3, max: 1e5, noNaN: true }),
        fc.integer({ min: 2, max: 12 }),
        (from, range, wanted) => {
          const step = niceStep(range, wanted);
          expect([1, 2, 5]).toContain(Number((step / 10 ** Math.floor(Math.log10(step) + 1e-9)).toPrecision(6)));
          const { major, places } = linearTicks(from, from + range, wanted);
          expect(major.length).toBeGreaterThanOrEqual(Math.floor(wanted / 2));
          expect(major.length).toBeLessThanOrEqual(2 * wanted + 1);
          for (const t of major) {
            expect(t).toBeGreaterThanOrEqual(from - 1e-6 * range);
            expect(t).toBeLessThanOrEqual(from + range + 1e-6 * range);
            expect(Math.abs(t / step - Math.round(t / step))).toBeLessThan(1e-6);
          }
          // no two are written alike
          expect(new Set(major.map((t) => t.toFixed(places!))).size).toBe(major.length);
        },
      ),
      { numRuns: 300, seed: 1 },
    );
  });

  test('decades, with 2 and 5 where there are few, none where there is hardly one', () => {
    expect(logTicks(20, 20000, 7).major).toEqual([100, 1000, 10000]);
    expect(logTicks(1, 100, 8).major).toEqual([1, 2, 5, 10, 20, 50, 100]);
    expect(logTicks(1e-6, 1e6, 6).major).toEqual([1e-6, 1e-4, 1e-2, 1, 100, 1e4, 1e6]);
    expect(logTicks(88, 108, 5).major).toEqual([90, 95, 100, 105]);
  });
});

describe('spread', () => {
  const wish = fc.record({ at: fc.double({ min: -50, max: 150, noNaN: true }), size: fc.double({ min: 0.5, max: 12, noNaN: true }) });

  test('none touch, order is kept, all within where they fit', () => {
    fc.assert(
      fc.property(fc.array(wish, { maxLength: 12 }), (wishes) => {
        const at = spread(wishes, 0, 100);
        const total = wishes.reduce((sum, w) => sum + w.size, 0);
        const order = wishes.map((_, i) => i).sort((a, b) => at[a]! - at[b]!);
        order.forEach((i, k) => {
          expect(at[i]! - wishes[i]!.size / 2).toBeGreaterThanOrEqual(-1e-9);
          if (total <= 100) expect(at[i]! + wishes[i]!.size / 2).toBeLessThanOrEqual(100 + 1e-9);
          const j = order[k + 1];
          if (j === undefined) return;
          expect(at[j]! - at[i]!).toBeGreaterThanOrEqual((wishes[i]!.size + wishes[j]!.size) / 2 - 1e-9);
          expect(wishes[i]!.at).toBeLessThanOrEqual(wishes[j]!.at);
        });
      }),
      { numRuns: 300, seed: 4 },
    );
  });

  test('limit: what has room stays where it wants to be', () => {
    expect(
      spread(
        [
          { at: 70, size: 4 },
          { at: 20, size: 4 },
        ],
        0,
        100,
      ),
    ).toEqual([70, 20]);
  });

  test('two that want the same place share the displacement', () => {
    expect(
      spread(
        [
          { at: 50, size: 4 },
          { at: 50, size: 4 },
        ],
        0,
        100,
      ),
    ).toEqual([48, 52]);
  });
});

describe('colours', () => {
  const luminance = (hex: string) => {
    const [r, g, b] = [1, 3, 5].map((i) => {
      const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    }) as [number, number, number];
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const colours = (css: string) => new Map([...css.matchAll(/--drawing-([a-z0-9-]+),(#[0-9a-f]{6})/g)].map((m) => [m[1]!, m[2]!]));

  test('published: WCAG 2.2, 1.4.3 and 1.4.11: texts 4.5 to 1 on their paper, by day and by night', () => {
    const [day, night] = drawingStyles().split('@media').map(colours);
    for (const set of [day!, night!]) {
      const paper = luminance(set.get('paper')!);
      expect(set.size).toBe(11);
      for (const [role, colour] of set) {
        if (role === 'paper' || role === 'faint') continue;
        const [light, dark] = [Math.max(paper, luminance(colour)), Math.min(paper, luminance(colour))];
        expect((light + 0.05) / (dark + 0.05), `${role} ${colour}`).toBeGreaterThan(4.5);
      }
    }
  });

  test('where the style comes from is the reader’s choice', () => {
    const options = { title: 'x', x: { label: 'x' }, y: { label: 'y' } };
    expect(drawCurve([], options)).toContain(`<style>${drawingStyles()}</style>`);
    for (const theme of ['light', 'dark', 'host'] as const) expect(drawCurve([], { ...options, theme })).not.toContain('<style');
    expect(drawCurve([], { ...options, theme: 'host' })).toContain('class="f-paper"');
  });
});
