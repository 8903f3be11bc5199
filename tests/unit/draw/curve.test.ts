import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CurveOptions, drawCurve, type Series } from '#draw';
import { GivenError } from '#engine';
import { labelled, outside, overlaps, readDrawing, textsOf } from './drawn.ts';
import { IMPEDANCE, RESPONSE } from './plot-examples.ts';
import { type Element, textOf } from './xml.ts';

const PLAIN: CurveOptions = { title: 'Curve', x: { label: 'x' }, y: { label: 'y' } };
const line = (label: string, points: readonly (readonly [number, number | null])[]): Series => ({
  label,
  points: points.map(([x, y]) => ({ x, y })),
});
const pointsOf = (e: Element): readonly (readonly [number, number])[] =>
  e.attributes.points!.split(' ').map((pair) => pair.split(',').map(Number) as unknown as readonly [number, number]);
const lines = (d: ReturnType<typeof readDrawing>, series: number) =>
  labelled(labelled(d.elements, 'series', `${series}`), 'part', 'line').map(pointsOf);

/** Value to paper, read from the numbers along an axis: a straight line through the first and the last of them. */
function scaleOf(d: ReturnType<typeof readDrawing>, which: 'x' | 'y', log: boolean, factor: number): (v: number) => number {
  const ticks = d.elements
    .filter((e) => e.attributes['data-tick'] === which)
    .map((e) => {
      const [number, prefix = ''] = textOf(e).replace('−', '-').split(' ');
      const value = Number(number) * { '': 1, k: 1e3, m: 1e-3, µ: 1e-6 }[prefix]! * factor;
      // numbers beside the upright axis are written 0.36 of their size below their tick
      const at = which === 'x' ? Number(e.attributes.x) : Number(e.attributes.y) - 0.36 * Number(e.attributes['font-size']);
      return [log ? Math.log(value) : value, at] as const;
    });
  const [a, b] = [ticks[0]!, ticks.at(-1)!];
  for (const [v, at] of ticks) expect(at).toBeCloseTo(a[1] + ((b[1] - a[1]) * (v - a[0])) / (b[0] - a[0]), 1);
  return (v) => a[1] + ((b[1] - a[1]) * ((log ? Math.log(v) : v) - a[0])) / (b[0] - a[0]);
}

describe('impedance against frequency, both axes even', () => {
  const d = readDrawing(drawCurve(IMPEDANCE.series, IMPEDANCE.options));

  test('every point lies where the numbers on the axes say', () => {
    const x = scaleOf(d, 'x', false, 1e6);
    const y = scaleOf(d, 'y', false, 1);
    IMPEDANCE.series.forEach((s, i) => {
      const drawn = lines(d, i);
      expect(drawn.length).toBe(1);
      expect(drawn[0]!.length).toBe(s.points.length);
      drawn[0]!.forEach(([px, py], k) => {
        expect(px).toBeCloseTo(x(s.points[k]!.x), 1);
        expect(py).toBeCloseTo(y(s.points[k]!.y!), 1);
      });
    });
  });

  test('axes are named with the unit their numbers are in', () => {
    expect(textsOf(d, 'axis')).toEqual(['frequency [MHz]', 'impedance [Ω]']);
    expect(textsOf(d, 'tick', 'x')).toEqual(expect.arrayContaining(['88', '90', '108']));
  });

  test('each curve is named at its end, marks carry their labels', () => {
    expect(textsOf(d, 'part', 'name')).toEqual(['resistance', 'reactance']);
    expect([...textsOf(d, 'flag')].sort((a, b) => a.localeCompare(b))).toEqual([
      'Castle community 107.5',
      'Harbour 91.2',
      'Hill 98.4',
      'Mill 99.0',
    ]);
    expect(textsOf(d, 'level', 'name')).toEqual(['resonance']);
    expect(textsOf(d, 'mark', 'name')).toEqual(['here']);
    expect(labelled(d.elements, 'part', 'band').length).toBe(1);
  });

  test('no line of a flag runs through the label of another', () => {
    const flags = labelled(d.elements, 'flag');
    const upright = d.elements.filter(
      (e) => e.name === 'line' && e.attributes['stroke-width'] === '0.25' && e.attributes.x1 === e.attributes.x2,
    );
    expect(upright.length).toBe(4);
    for (const l of upright)
      for (const t of d.texts.filter((text) => flags.includes(text.element))) {
        const [left, right] = [t.corners[0]![0], t.corners[1]![0]];
        const x = Number(l.attributes.x1);
        const top = Math.min(Number(l.attributes.y1), Number(l.attributes.y2));
        expect(x > left && x < right && top < t.corners[2]![1]).toBe(false);
      }
  });

  test('it says in words what it shows', () => {
    const desc = textOf(d.elements.find((e) => e.name === 'desc')!);
    expect(desc).toContain('Across: frequency, 87.5 MHz to 108 MHz.');
    // 600 (87.5/98 - 98/87.5) = -136.29
    expect(desc).toContain('reactance: from −136.3 Ω at 87.5 MHz');
    expect(desc).toContain('Marked: Harbour 91.2;');
  });
});

describe('sound pressure against frequency, both axes logarithmic', () => {
  const d = readDrawing(drawCurve(RESPONSE.series, RESPONSE.options));

  test('every point lies where the numbers on the axes say', () => {
    const x = scaleOf(d, 'x', true, 1);
    const y = scaleOf(d, 'y', true, 1);
    const drawn = lines(d, 0)[0]!;
    drawn.forEach(([px, py], k) => {
      expect(px).toBeCloseTo(x(RESPONSE.series[0]!.points[k]!.x), 1);
      expect(py).toBeCloseTo(y(RESPONSE.series[0]!.points[k]!.y!), 1);
    });
    expect(textsOf(d, 'tick', 'x')).toEqual(['100', '1 k', '10 k']);
  });

  test('a curve ends where it has no values; dots stand alone', () => {
    const last = lines(d, 2)[0]!.at(-1)!;
    expect(last[0]).toBeLessThan(lines(d, 0)[0]!.at(-1)![0] - 10);
    expect(labelled(labelled(d.elements, 'series', '3'), 'part', 'dot').length).toBe(4);
    expect(lines(d, 3).length).toBe(0);
  });

  test('names of curves that end together do not touch', () => {
    expect(overlaps(d.texts)).toEqual([]);
    expect(outside(d)).toEqual([]);
  });
});

describe('gaps, ends and nothing', () => {
  test('null interrupts a curve; what is beyond the ends is cut at the frame', () => {
    const d = readDrawing(
      drawCurve(
        [
          line('a', [
            [0, 0],
            [1, 1],
            [2, null],
            [3, 3],
            [4, 40],
          ]),
        ],
        { ...PLAIN, y: { label: 'y', from: 0, to: 4 }, x: { label: 'x', from: 0.5, to: 5 } },
      ),
    );
    const pieces = lines(d, 0);
    expect(pieces.length).toBe(2);
    const y = scaleOf(d, 'y', false, 1);
    const x = scaleOf(d, 'x', false, 1);
    expect(pieces[0]![0]![0]).toBeCloseTo(x(0.5), 1);
    expect(pieces[0]![0]![1]).toBeCloseTo(y(0.5), 1);
    // from (3, 3) to (4, 40) it leaves at y = 4
    expect(pieces[1]![1]![1]).toBeCloseTo(y(4), 1);
    expect(pieces[1]![1]![0]).toBeCloseTo(x(3 + 1 / 37), 1);
  });

  test('one point alone is a dot; the same value all along has an axis; nothing at all has a frame', () => {
    expect(labelled(readDrawing(drawCurve([line('a', [[1, 5]])], PLAIN)).elements, 'part', 'dot').length).toBe(1);
    expect(
      lines(
        readDrawing(
          drawCurve(
            [
              line('a', [
                [1, 5],
                [2, 5],
              ]),
            ],
            PLAIN,
          ),
        ),
        0,
      ).length,
    ).toBe(1);
    expect(textsOf(readDrawing(drawCurve([], PLAIN)), 'axis')).toEqual(['x', 'y']);
    const zero = line('a', [
      [1, 0],
      [2, -3],
    ]);
    expect(lines(readDrawing(drawCurve([zero], { ...PLAIN, y: { label: 'y', scale: 'log' } })), 0).length).toBe(0);
  });

  test('what is no number is refused', () => {
    expect(() => drawCurve([line('a', [[0, Number.NaN]])], PLAIN)).toThrow('series[0].points[0].y');
    expect(() => drawCurve([line('a', [[Number.POSITIVE_INFINITY, 1]])], PLAIN)).toThrow(GivenError);
    expect(() => drawCurve([], { ...PLAIN, x: { label: 'x', from: 2, to: 1 } })).toThrow(GivenError);
    expect(() => drawCurve([], { ...PLAIN, x: { label: 'x', from: 0, scale: 'log' } })).toThrow(GivenError);
    expect(() => drawCurve([], { ...PLAIN, width: 3 })).toThrow(GivenError);
  });

  test('markup in names stays text', () => {
    const evil = '"><script>alert(1)</script>';
    const svg = drawCurve(
      [
        line(evil, [
          [0, 1],
          [1, 2],
        ]),
      ],
      {
        title: evil,
        note: evil,
        x: { label: evil, unit: evil },
        y: { label: evil },
        marks: [{ kind: 'point', x: 0.5, y: 1.5, label: evil }],
      },
    );
    expect(svg).not.toContain('<script');
    expect(readDrawing(svg).elements.some((e) => e.name === 'script')).toBe(false);
  });

  test('random curves and marks: texts clear of each other, on the sheet', () => {
    const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    const name = fc.string({ maxLength: 60 });
    const series = fc.record({ label: name, points: fc.array(fc.record({ x: value, y: fc.option(value) }), { maxLength: 12 }) });
    const mark = fc.oneof(
      fc.record({ kind: fc.constant('x' as const), x: value, label: name }),
      fc.record({ kind: fc.constant('y' as const), y: value, label: name }),
      fc.record({ kind: fc.constant('point' as const), x: value, y: value, label: name }),
    );
    const scale = fc.constantFrom('linear' as const, 'log' as const);
    fc.assert(
      fc.property(fc.array(series, { maxLength: 9 }), fc.array(mark, { maxLength: 8 }), scale, scale, (curves, marks, sx, sy) => {
        const d = readDrawing(
          drawCurve(curves, { title: 'Random', x: { label: 'x', unit: 'Hz', scale: sx }, y: { label: 'y', unit: 'V', scale: sy }, marks }),
        );
        expect(overlaps(d.texts)).toEqual([]);
        expect(outside(d)).toEqual([]);
      }),
      { numRuns: 100, seed: 5 },
    );
  });
});
