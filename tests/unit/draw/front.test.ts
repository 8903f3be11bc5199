import { expect, test } from 'vitest';
import { drawFront, type FrontDot } from '#draw';
import { GivenError } from '#engine';
import { labelled, outside, overlaps, readDrawing } from './drawn.ts';

const DOTS: readonly FrontDot[] = [
  { headroom: 40, distortion: -20, hertzPerDegree: 300e3, rank: 1 },
  { headroom: 35, distortion: -32, hertzPerDegree: 120e3, rank: 2 },
  { headroom: 34.8, distortion: -32.2, hertzPerDegree: 110e3, rank: null },
  { headroom: 20, distortion: -50, hertzPerDegree: 40e3, rank: null },
  { headroom: 22, distortion: -41, hertzPerDegree: 60e3, rank: 3 },
];
const draw = (dots = DOTS, width?: number) => drawFront(dots, { title: 'What can be had', ...(width === undefined ? {} : { width }) });

/** Middle and radius of a dot on the paper [mm]. */
function circle(svg: string, index: number): readonly [number, number, number] {
  const { cx, cy, r } = labelled(readDrawing(svg).elements, 'dot', `${index}`)[0]!.attributes;
  return [Number(cx), Number(cy), Number(r)];
}

test('louder is further right, cleaner is higher, each in proportion', () => {
  const svg = draw();
  const [a, b, d] = [circle(svg, 0), circle(svg, 1), circle(svg, 3)];
  // decibels to millimetres by two dots, the third held against them
  const perX = (a[0] - b[0]) / (40 - 35);
  expect(perX).toBeGreaterThan(0);
  expect(d[0]).toBeCloseTo(a[0] + (20 - 40) * perX, 1);
  const perY = (a[1] - b[1]) / (32 - 20);
  expect(perY).toBeGreaterThan(0);
  expect(d[1]).toBeCloseTo(a[1] - (50 - 20) * perY, 1);
});

test('the slower the dial the larger the dot, and the key says by how much', () => {
  const svg = draw();
  const radii = DOTS.map((d, k) => ({ speed: d.hertzPerDegree, r: circle(svg, k)[2] })).sort((p, q) => p.speed - q.speed);
  radii.slice(1).forEach((p, k) => {
    expect(p.r).toBeLessThan(radii[k]!.r);
  });
  const key = readDrawing(svg).texts.filter((t) => t.element.attributes['data-key'] === 'size');
  // the ends, and the geometric mean of 40 and 300 kHz: 109.5 kHz
  expect(key.map((t) => t.text)).toEqual(['40 kHz a degree', '110 kHz a degree', '300 kHz a degree']);
});

test('sets of the list carry their numbers, and the words tell them in that order', () => {
  const svg = draw();
  const numbers = readDrawing(svg).texts.filter((t) => t.element.attributes['data-number'] !== undefined);
  expect(numbers.map((t) => t.text).sort()).toEqual(['1', '2', '3']);
  const words = /<desc[^>]*>([^<]*)</.exec(svg)![1]!;
  expect(words).toMatch(/Number 1: 40 dB .*Number 2: 35 dB .*Number 3: 22 dB/);
  expect(words).toContain('The cleanest: 20 dB over what the ear needs, distortion 50 dB below programme');
});

test.each([
  [85, DOTS],
  [180, DOTS],
  [120, [DOTS[0]!]],
  [180, []],
] as const)('on a sheet %i mm wide nothing runs into anything or off it', (width, dots) => {
  const drawing = readDrawing(draw(dots, width));
  expect(overlaps(drawing.texts)).toEqual([]);
  expect(outside(drawing)).toEqual([]);
});

test('what is no number is refused by its path', () => {
  expect(() => draw([{ ...DOTS[0]!, distortion: Number.NaN }])).toThrow(GivenError);
  expect(() => draw([DOTS[0]!, { ...DOTS[0]!, hertzPerDegree: 0 }])).toThrow(/dots\[1\]\.hertzPerDegree/);
});
