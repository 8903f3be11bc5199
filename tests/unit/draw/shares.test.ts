import { expect, test } from 'vitest';
import { drawShares } from '#draw';
import { GivenError } from '#engine';
import { labelled, outside, overlaps, readDrawing } from './drawn.ts';

const BAND = [250, 315, 400, 500, 630, 800, 1000];
const SHARES = { band: BAND, share: [0, 0.05, 0.1, 0.1, 0.2, 0.05, 0.1], most: [0.1, 0.1, 0.1, 0.2, 0.2, 0.1, 0.2] };
const draw = (shares = SHARES, width?: number) =>
  drawShares(shares, { title: 'Shares', whole: 'index', ...(width === undefined ? {} : { width }) });

/** Height of a bar on the paper. */
function heightOf(svg: string, band: number, part: string): number {
  const { elements } = readDrawing(svg);
  const bar = labelled(labelled(elements, 'band', `${band}`), 'part', part)[0];
  if (!bar) return 0;
  const ys = bar.attributes.points!.split(' ').map((p) => Number(p.split(',')[1]));
  return Math.max(...ys) - Math.min(...ys);
}

test('bars are as high as what they stand for', () => {
  const svg = draw();
  const full = heightOf(svg, 4, 'share');
  expect(full).toBeGreaterThan(10);
  for (const part of ['share', 'most'] as const)
    for (const [i, value] of SHARES[part].entries()) expect(heightOf(svg, i, part)).toBeCloseTo((full * value) / 0.2, 2);
});

test('the words say what all bands give together, and where most is lost', () => {
  expect(draw()).toContain('Together they give 60 % of the index, of 100 % that they could.');
  expect(draw({ ...SHARES, share: [0.1, 0.1, 0.1, 0, 0.2, 0.1, 0.2] })).toContain('Most is lost at 500 Hz.');
});

test.each([85, 180])('texts keep apart and on a sheet %i mm wide', (width) => {
  const drawing = readDrawing(draw(SHARES, width));
  expect(overlaps(drawing.texts)).toEqual([]);
  expect(outside(drawing)).toEqual([]);
});

test.each([
  ['more than the most', { ...SHARES, share: SHARES.share.map(() => 0.3) }],
  ['less than nothing', { ...SHARES, share: SHARES.share.map(() => -0.1) }],
  ['no number', { ...SHARES, share: SHARES.share.map(() => Number.NaN) }],
  ['lists of unequal length', { ...SHARES, share: [0.1] }],
  ['frequencies that fall', { ...SHARES, band: [...BAND].reverse() }],
  ['one band', { band: [1000], share: [0.1], most: [0.2] }],
])('%s is refused', (_, shares) => expect(() => draw(shares)).toThrow(GivenError));
