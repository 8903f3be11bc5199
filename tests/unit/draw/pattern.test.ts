import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawPattern, type PatternCut } from '#draw';
import { GivenError } from '#engine';
import { labelled, outside, overlaps, readDrawing, textsOf } from './drawn.ts';
import { FORWARD_NORTH, FREE_UPRIGHT, lobe, OVER_GROUND, STATIONS } from './plot-examples.ts';
import { everyElement, textOf } from './xml.ts';

const pointsOf = (written: string): readonly (readonly [number, number])[] =>
  written.split(' ').map((pair) => pair.split(',').map(Number) as unknown as readonly [number, number]);

/** The plot's middle on the sheet, and the curve about it. */
function curveOf(svg: string) {
  const d = readDrawing(svg);
  const plot = labelled(d.elements, 'part', 'plot')[0]!;
  const [radius, top, span] = ['data-radius', 'data-top', 'data-span'].map((k) => Number(plot.attributes[k])) as [number, number, number];
  const rim = everyElement(plot).find((e) => e.name === 'circle' && Number(e.attributes.r) === radius)!;
  const middle = [Number(rim.attributes.cx), Number(rim.attributes.cy)] as const;
  const curve = pointsOf(labelled(d.elements, 'component', 'total')[0]!.attributes.points!);
  return { d, radius, top, span, middle, curve };
}

describe('a cut round the compass', () => {
  const svg = drawPattern(FORWARD_NORTH, { title: 'Lobe', stations: STATIONS });
  const { d, radius, top, span, middle, curve } = curveOf(svg);

  test('radii are even in decibels, bearings run clockwise from the top', () => {
    expect(curve.length).toBe(361);
    curve.forEach(([x, y], i) => {
      const bearing = (i * Math.PI) / 180;
      const r = radius * Math.max(0, 1 - (top - lobe(bearing)) / span);
      expect(x - middle[0]).toBeCloseTo(r * Math.sin(bearing), 2);
      expect(middle[1] - y).toBeCloseTo(r * Math.cos(bearing), 2);
    });
  });

  test('rings stand at whole decibels and are numbered', () => {
    // 8 dBi forward: the rim is the next multiple of 5
    expect(top).toBe(10);
    expect(textsOf(d, 'ring')).toEqual(expect.arrayContaining(['10', '0', '−10']));
    const rings = d.elements.filter((e) => e.name === 'circle' && e.attributes.cx === `${middle[0]}` && !e.attributes['data-pointer']);
    const radii = rings.map((e) => Number(e.attributes.r)).sort((a, b) => a - b);
    radii.forEach((r, i) => {
      expect(r).toBeCloseTo((radius * (i + 1)) / 6, 2);
    });
    expect(radii.length).toBe(6);
  });

  test('greatest gain and front to back: 8 dBi north, 14 dB', () => {
    expect(textsOf(d, 'text', 'facts').join(' ')).toBe('Greatest gain 8.0 dBi towards 000°. Front to back 14.0 dB.');
    expect(textsOf(d, 'pointer')).toEqual(['8.0 dBi', 'back −6.0 dBi']);
  });

  test('stations have their bearing and the gain that way', () => {
    const harbour = textsOf(d, 'station', '0');
    expect(harbour).toEqual(['Harbour 91.2', `006°, ${lobe(0.1).toFixed(1)} dBi`]);
    // the arrowhead's tip lies on the rim at the bearing
    const tip = pointsOf(d.elements.find((e) => e.name === 'polygon' && e.attributes['data-station'] === '3')!.attributes.points!)[0]!;
    expect(Math.atan2(tip[0] - middle[0], middle[1] - tip[1])).toBeCloseTo(4 - 2 * Math.PI, 3);
  });

  test('texts neither touch nor leave the sheet', () => {
    expect(d.texts.length).toBeGreaterThan(20);
    expect(overlaps(d.texts)).toEqual([]);
    expect(outside(d)).toEqual([]);
  });

  test('it says all that in words', () => {
    const desc = textOf(d.elements.find((e) => e.name === 'desc')!);
    expect(desc).toContain('Greatest gain 8.0 dBi towards 000°');
    expect(desc).toContain('Castle 180°, −6.0 dBi');
    expect(d.root.attributes.role).toBe('img');
  });
});

describe('an upright cut', () => {
  test('over ground the upper half is drawn, the bearing to the right', () => {
    const d = readDrawing(drawPattern(OVER_GROUND, { title: 'Over ground' }));
    const curve = pointsOf(labelled(d.elements, 'component', 'total')[0]!.attributes.points!);
    const level = Math.max(...curve.map(([, y]) => y));
    const rim = d.elements.find((e) => e.name === 'path')!.attributes.d!;
    expect(rim.split(' ').length).toBeGreaterThan(2);
    expect(d.elements.some((e) => e.name === 'circle' && Number(e.attributes.r) > 20)).toBe(false);
    // the first of the equal lobes lies at 30 degrees to the right
    expect(textsOf(d, 'text', 'facts').join(' ')).toContain('6.0 dBi at 30° elevation to the right. Front to back 0.0 dB.');
    expect(curve[30]![1]).toBeLessThan(level - 10);
    expect(textsOf(d, 'spoke')).toEqual(['level', '30°', '60°', 'up', '60°', '30°', 'level']);
    expect(overlaps(d.texts)).toEqual([]);
  });

  test('in free space all round', () => {
    const { d, curve, middle } = curveOf(drawPattern(FREE_UPRIGHT, { title: 'Free', components: ['total', 'horizontal', 'vertical'] }));
    expect(curve[0]![0]).toBeGreaterThan(middle[0]);
    expect(curve[18]![1]).toBeLessThan(middle[1]);
    expect(textsOf(d, 'key')).toEqual(['both polarisations', 'horizontal', 'vertical']);
    expect(overlaps(d.texts)).toEqual([]);
    expect(outside(d)).toEqual([]);
  });
});

describe('edges', () => {
  test('where nothing is radiated it says so', () => {
    const points = FORWARD_NORTH.points.map(({ angle }) => ({ angle, gain: { total: null, horizontal: null, vertical: null } }));
    const d = readDrawing(drawPattern({ kind: 'azimuth', elevation: 0, points }, { title: 'Nothing', stations: STATIONS.slice(0, 1) }));
    expect(textsOf(d, 'text', 'facts').join(' ')).toBe('Nothing is radiated in this cut.');
    expect(textsOf(d, 'station').join(' ')).toContain('nothing');
  });

  test('what cannot be is refused', () => {
    expect(() => drawPattern({ kind: 'azimuth', elevation: 0, points: [] }, { title: 'x' })).toThrow(GivenError);
    expect(() => drawPattern(FORWARD_NORTH, { title: 'x', span: 1 })).toThrow(GivenError);
    expect(() => drawPattern(FORWARD_NORTH, { title: 'x', width: Number.NaN })).toThrow(GivenError);
    expect(() => drawPattern(FORWARD_NORTH, { title: 'x', stations: [{ label: 'y', bearing: Number.NaN }] })).toThrow(GivenError);
  });

  test('random gains, spans and stations: texts clear of each other, on the sheet', () => {
    const station = fc.record({ label: fc.string({ minLength: 1, maxLength: 40 }), bearing: fc.double({ min: -7, max: 7, noNaN: true }) });
    fc.assert(
      fc.property(
        fc.double({ min: -30, max: 20, noNaN: true }),
        fc.integer({ min: 10, max: 100 }),
        fc.array(station, { maxLength: 14 }),
        fc.integer({ min: 80, max: 250 }),
        (lift, span, stations, width) => {
          const cut: PatternCut = {
            kind: 'azimuth',
            elevation: 0,
            points: FORWARD_NORTH.points.map(({ angle }) => {
              const total = lobe(angle + 1) + lift;
              return { angle, gain: { total, horizontal: total, vertical: null } };
            }),
          };
          const d = readDrawing(drawPattern(cut, { title: 'Random', span, stations, width }));
          expect(overlaps(d.texts)).toEqual([]);
          expect(outside(d)).toEqual([]);
        },
      ),
      { numRuns: 60, seed: 11 },
    );
  });
});
