import { describe, expect, test } from 'vitest';
import { type BuiltDot, type Dots, drawDots } from '#draw';
import { GivenError } from '#engine';
import { labelled, outside, overlaps, readDrawing, textsOf } from './drawn.ts';

const MEANT: BuiltDot = { x: 90, headroom: 20, outcome: 'understood' };
const UNDERSTOOD: readonly BuiltDot[] = [
  { x: 40, headroom: 30, outcome: 'understood' },
  { x: 60, headroom: 15, outcome: 'understood' },
  { x: 140, headroom: 22.5, outcome: 'understood' },
];
const OTHERS: readonly BuiltDot[] = [
  { x: 100, headroom: 4, outcome: 'heard' },
  { x: 110, headroom: -12, outcome: 'silent' },
  { x: 120, headroom: null, outcome: 'silent' },
  { x: null, headroom: null, outcome: 'silent' },
  { x: null, headroom: null, outcome: 'silent' },
];
const DATA: Dots = {
  dots: [...UNDERSTOOD, ...OTHERS],
  meant: MEANT,
  x: { label: 'dial for the station', unit: '°', from: 0, to: 180 },
  spread: { x: [50, 100, 130], headroom: [-5, 15, 26] },
};
const draw = (data: Dots = DATA, width?: number): string =>
  drawDots(data, { title: 'Built over and over', ...(width === undefined ? {} : { width }) });

/** Where the specks of a class stand: starts of the pieces of its path [mm]. */
function specks(svg: string, name: string): readonly (readonly [number, number])[] {
  const [path] = labelled(readDrawing(svg).elements, 'dots', name);
  return [...(path?.attributes.d ?? '').matchAll(/M(-?[\d.]+),(-?[\d.]+)/g)].map((m) => [Number(m[1]), Number(m[2])] as const);
}
const ring = (svg: string): readonly [number, number] => {
  const { cx, cy } = labelled(readDrawing(svg).elements, 'meant')[0]!.attributes;
  return [Number(cx), Number(cy)];
};
const ticksOf = (svg: string, name: string) =>
  readDrawing(svg)
    .texts.filter((t) => t.element.attributes['data-tick'] === name)
    .map((t) => ({ value: Number(t.text.replace('−', '-')), at: Number(t.element.attributes[name]) }));

describe('a dot for each set built', () => {
  test('each stands where the numbers of the axes say: a second reading of the picture by its ticks', () => {
    const svg = draw();
    const [xs, ys] = [ticksOf(svg, 'x'), ticksOf(svg, 'y')];
    const perX = (xs.at(-1)!.at - xs[0]!.at) / (xs.at(-1)!.value - xs[0]!.value);
    const perY = (ys.at(-1)!.at - ys[0]!.at) / (ys.at(-1)!.value - ys[0]!.value);
    expect(perX).toBeGreaterThan(0);
    expect(perY).toBeLessThan(0);
    const found = [...specks(svg, 'understood'), ring(svg)];
    [...UNDERSTOOD, MEANT].forEach((d, k) => {
      expect(found[k]![0], `${k}`).toBeCloseTo(xs[0]!.at + (d.x! - xs[0]!.value) * perX, 1);
      // numbers of the upright axis stand with their middle at the value: 0.36 of 2.8 mm above the base line
      expect(found[k]![1], `${k}`).toBeCloseTo(ys[0]!.at - 0.36 * 2.8 + (d.headroom! - ys[0]!.value) * perY, 1);
    });
  });

  test('one path for each class, of its own shape, however many there are', () => {
    const many = Array.from({ length: 3000 }, (_, k) => ({ ...UNDERSTOOD[k % 3]!, x: 20 + (k % 140) }));
    const svg = draw({ ...DATA, dots: [...many, ...OTHERS] });
    expect(labelled(readDrawing(svg).elements, 'dots')).toHaveLength(4);
    expect(specks(svg, 'understood')).toHaveLength(3000);
    // some 20 characters each
    expect(svg.length).toBeLessThan(3000 * 25);
    const first = (name: string): string =>
      /^M[^a-z]*([a-z][^M]*)/.exec(labelled(readDrawing(svg).elements, 'dots', name)[0]!.attributes.d!)![1]!;
    expect(new Set(['understood', 'heard', 'silent', 'lost'].map((c) => first(c).replaceAll(/\d*\.?\d*[1-9]\d*/g, 'n'))).size).toBe(4);
  });

  test('those that never get there stand beside the frame with their count, as high as their share', () => {
    const lost = specks(draw(), 'lost');
    expect(lost).toHaveLength(2);
    const svg = draw();
    const right = Math.max(...ticksOf(svg, 'x').map((t) => t.at));
    for (const [x] of lost) expect(x).toBeGreaterThan(right);
    expect(textsOf(readDrawing(svg), 'strip')).toEqual(['not reached', '2 of 8']);
    const half = Array.from({ length: 400 }, (_, k) => (k % 2 ? UNDERSTOOD[0]! : OTHERS[3]!));
    const filled = specks(draw({ ...DATA, dots: half }), 'lost').map(([, y]) => y);
    // half of a frame 80 mm high, less half a row at either end
    expect(Math.max(...filled) - Math.min(...filled)).toBeGreaterThan(36);
    expect(Math.max(...filled) - Math.min(...filled)).toBeLessThan(40);
    expect(labelled(readDrawing(draw({ ...DATA, dots: UNDERSTOOD })).elements, 'strip')).toHaveLength(0);
  });

  test('bands and middles stand where they were given; no sound at all stands on the lower edge', () => {
    const svg = draw();
    const [xs, ys] = [ticksOf(svg, 'x'), ticksOf(svg, 'y')];
    const perX = (xs.at(-1)!.at - xs[0]!.at) / (xs.at(-1)!.value - xs[0]!.value);
    const { elements } = readDrawing(svg);
    const corners = labelled(elements, 'band', 'x')[0]!
      .attributes.points!.split(' ')
      .map((p) => p.split(',').map(Number));
    expect(Math.min(...corners.map(([x]) => x!))).toBeCloseTo(xs[0]!.at + (50 - xs[0]!.value) * perX, 1);
    expect(Math.max(...corners.map(([x]) => x!))).toBeCloseTo(xs[0]!.at + (130 - xs[0]!.value) * perX, 1);
    expect(Number(labelled(elements, 'middle', 'x')[0]!.attributes.x1)).toBeCloseTo(xs[0]!.at + (100 - xs[0]!.value) * perX, 1);
    const bottom = Math.max(...corners.map(([, y]) => y!));
    // a cross begins at its upper left corner, a radius above its middle
    const lowest = Math.max(...specks(svg, 'silent').map(([, y]) => y));
    expect(bottom - lowest).toBeCloseTo(1.1, 1);
    const zero = labelled(elements, 'level', 'ear')[0]!.attributes;
    const tick = ys.find((t) => t.value === 0)!;
    expect(Number(zero.y1)).toBeCloseTo(tick.at - 0.36 * 2.8, 1);
  });

  test('the words give the counts, the spreads and the set as meant', () => {
    const words = /<desc[^>]*>([^<]*)</.exec(draw())![1]!;
    expect(words).toContain(
      '8 sets built on paper. understood: 3; heard, but not understood: 1; not heard: 2; station not reached on the dial: 2.',
    );
    expect(words).toContain('Of no sound at all, drawn on the lower edge: 1.');
    expect(words).toContain('from 50° to 130° in 80 of 100, half of them below 100°');
    expect(words).toContain('As meant: 90°, 20 dB.');
    expect(textsOf(readDrawing(draw()), 'key', 'class')).toEqual([
      'understood: 3',
      'heard, but not understood: 1',
      'not heard: 2',
      'station not reached on the dial: 2',
      'the set as meant',
    ]);
  });

  test.each([
    [85, DATA],
    [180, DATA],
    [
      120,
      {
        ...DATA,
        x: { label: 'off what was meant', unit: 'Hz' },
        dots: UNDERSTOOD.map((d) => ({ ...d, x: 1e4 * d.x! - 9e5 })),
        meant: { ...MEANT, x: 0 },
        spread: { x: null, headroom: null },
      },
    ],
    [85, { ...DATA, dots: [OTHERS[3]!], meant: OTHERS[3]!, spread: { x: null, headroom: null } }],
    [180, { ...DATA, dots: [], spread: { x: null, headroom: null } }],
  ] as const)('on a sheet %i mm wide nothing runs into anything or off it', (width, data) => {
    const drawing = readDrawing(draw(data, width));
    expect(overlaps(drawing.texts)).toEqual([]);
    expect(outside(drawing)).toEqual([]);
  });

  test('what is no number is refused by its path', () => {
    expect(() => draw({ ...DATA, dots: [...UNDERSTOOD, { ...MEANT, x: Number.NaN }] })).toThrow(/dots\[3\]\.x/);
    expect(() => draw({ ...DATA, meant: { ...MEANT, headroom: Number.POSITIVE_INFINITY } })).toThrow(GivenError);
  });
});
