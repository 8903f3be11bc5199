import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DialScale, drawDial, drawDialStrip } from '#draw';
import { dialTable, GivenError, tankModel } from '#engine';
import { TANKS } from './coil-examples.ts';
import { angleFor, MEDIUM_WAVE_DIAL, tuned, VHF_DIAL } from './dial-examples.ts';
import { type Drawn, labelled, outside, overlaps, readDrawing, textsOf } from './drawn.ts';
import type { Element } from './xml.ts';

const degrees = (angle: number) => (angle * 180) / Math.PI;
const line = (e: Element) => ['x1', 'y1', 'x2', 'y2'].map((k) => Number(e.attributes[k])) as [number, number, number, number];

/** Middle of the shaft's hole, and degrees clockwise from straight up at which a line seen from there lies. */
function seen(d: Drawn) {
  const shaft = labelled(d.elements, 'part', 'shaft')[0]!;
  const [cx, cy] = [Number(shaft.attributes.cx), Number(shaft.attributes.cy)];
  return {
    radiusOf: (x: number, y: number) => Math.hypot(x - cx, y - cy),
    clockOf: (x: number, y: number) => degrees(Math.atan2(x - cx, cy - y)),
  };
}
const marksOf = (d: Drawn) => {
  const { clockOf } = seen(d);
  return labelled(d.elements, 'hertz').map((e) => ({ hertz: Number(e.attributes['data-hertz']), clock: clockOf(line(e)[0], line(e)[1]) }));
};

describe('a dial to print', () => {
  const d = readDrawing(drawDial(VHF_DIAL, { clockwise: 'rising' })!);

  test('is true to size', () => {
    const { radiusOf } = seen(d);
    for (const e of labelled(d.elements, 'hertz')) expect(radiusOf(line(e)[0], line(e)[1])).toBeCloseTo(60, 2);
    expect(d.root.attributes.width).toBe(`${d.width}mm`);
    expect(Number(labelled(d.elements, 'part', 'shaft')[0]!.attributes.r)).toBe(3.25);
  });

  test('every frequency stands where the capacitor tunes to it', () => {
    const marks = marksOf(d);
    expect(marks.length).toBeGreaterThan(10);
    // rising clockwise: full capacitance on the left, 90 degrees before the top. The degree between two points is read in proportion
    for (const m of marks) expect(m.clock).toBeCloseTo(90 - degrees(angleFor(m.hertz)), 1);
  });

  test('the other sense mirrors it', () => {
    for (const m of marksOf(readDrawing(drawDial(VHF_DIAL, { clockwise: 'falling' })!)))
      expect(m.clock).toBeCloseTo(degrees(angleFor(m.hertz)) - 90, 1);
  });

  test('the numbers are round, and in the unit of the band', () => {
    for (const text of textsOf(d, 'number', 'frequency')) expect(Number(text) * 2).toBe(Math.round(Number(text) * 2));
    expect(textsOf(d, 'unit', 'frequency')).toEqual(['MHz']);
    const medium = readDrawing(drawDial(MEDIUM_WAVE_DIAL)!);
    expect(textsOf(medium, 'unit', 'frequency')).toEqual(['kHz']);
    for (const text of textsOf(medium, 'number', 'frequency')) expect(Number(text) % 20 === 0 || Number(text) % 50 === 0).toBe(true);
  });

  test('both best points of a station are marked, the loudest solid', () => {
    const { clockOf } = seen(d);
    const marks = labelled(d.elements, 'best');
    expect(marks).toHaveLength(4 * 2 + 1);
    const talk = marks.filter((e) => e.attributes['data-station'] === '0');
    talk.forEach((e, i) => {
      expect(clockOf(line(e)[0], line(e)[1])).toBeCloseTo(90 - degrees(VHF_DIAL.stations[0]!.points[i]!.angle), 2);
      expect('stroke-dasharray' in e.attributes).toBe(i === 1);
    });
  });

  test('what is out of reach is said, not drawn', () => {
    expect(textsOf(d, 'text', 'key').join(' ')).toContain('Not on this dial: Beyond the hill 110.');
  });

  test('long names and those of other scripts stand whole', () => {
    const names = d.texts.filter((t) => t.element.attributes['data-part'] === 'name').map((t) => t.text);
    expect(names.join(' ')).toContain('Estuary Two, with a name that goes on and on 95.4');
    expect(names).toContain('ラジオ灯台 89.1');
  });

  test('a capacitor that goes more than once round has no such dial, but a strip', () => {
    const far: DialScale = {
      rotation: 40,
      points: [
        { angle: 0, frequency: 2e6 },
        { angle: 40, frequency: 1e6 },
      ],
      stations: [],
    };
    expect(drawDial(far)).toBeNull();
    expect(readDrawing(drawDialStrip(far)).texts.length).toBeGreaterThan(5);
  });

  test('a dial on which nothing is tuned to has its degrees', () => {
    const none: DialScale = {
      rotation: 3,
      points: [
        { angle: 0, frequency: null },
        { angle: 3, frequency: null },
      ],
      stations: [],
    };
    expect(textsOf(readDrawing(drawDial(none)!), 'number', 'frequency')).toEqual([]);
    expect(textsOf(readDrawing(drawDial(none)!), 'number', 'degree').length).toBeGreaterThan(5);
  });

  test('what cannot be is refused', () => {
    expect(() => drawDial({ ...VHF_DIAL, rotation: 0 })).toThrow(GivenError);
    expect(() => drawDial({ ...VHF_DIAL, points: [...VHF_DIAL.points].reverse() })).toThrow(GivenError);
    expect(() => drawDial(VHF_DIAL, { radius: 2 })).toThrow(GivenError);
    expect(() => drawDialStrip(VHF_DIAL, { width: 10 })).toThrow(GivenError);
  });

  test("a tank's own table makes a dial", () => {
    const tank = tankModel(TANKS['air-wound']!, false);
    const scale = { rotation: tank.rotation, points: dialTable(tank, 91), stations: [] };
    for (const m of marksOf(readDrawing(drawDial(scale)!))) {
      const i = scale.points.findIndex((p) => p.frequency! <= m.hertz);
      const [above, below] = [scale.points[i - 1]!, scale.points[i]!];
      expect(m.clock).toBeLessThanOrEqual(90 - degrees(above.angle) + 1e-3);
      expect(m.clock).toBeGreaterThanOrEqual(90 - degrees(below.angle) - 1e-3);
    }
  });
});

describe('a dial laid out straight', () => {
  const d = readDrawing(drawDialStrip(VHF_DIAL, { rightwards: 'falling' }));

  test('is even in degrees', () => {
    const base = labelled(d.elements, 'part', 'scale')[0]!;
    const [from, , to] = line(base);
    for (const e of labelled(d.elements, 'best')) {
      const [station, k] = [Number(e.attributes['data-station']), e.attributes['data-best'] === 'loudest' ? 0 : 1];
      const angle = VHF_DIAL.stations[station]!.points[k]!.angle;
      expect((line(e)[0] - from) / (to - from)).toBeCloseTo(angle / Math.PI, 4);
    }
  });

  test('names stand below with their degrees', () => {
    const angle = degrees(angleFor(101.7e6) - 0.6 * (Math.PI / 180));
    expect(textsOf(d, 'text', 'station').join(' ')).toContain(`4 Lantern 101.7: ${angle.toFixed(1)}°`);
  });
});

test('any dial: no text runs into another or off the sheet, and marks keep in order', () => {
  const station = fc.record({
    label: fc.string({ unit: 'grapheme', maxLength: 40 }),
    frequency: fc.double({ min: 150e3, max: 108e6, noNaN: true }),
    shares: fc.array(fc.double({ min: -0.2, max: 1.2, noNaN: true }), { maxLength: 2 }),
  });
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 7, noNaN: true }),
      fc.double({ min: 100e3, max: 100e6, noNaN: true }),
      fc.double({ min: 1.001, max: 5, noNaN: true }),
      fc.double({ min: 0.3, max: 3, noNaN: true }),
      fc.array(station, { maxLength: 12 }),
      fc.constantFrom('rising' as const, 'falling' as const),
      fc.double({ min: 30, max: 120, noNaN: true }),
      (rotation, lowest, span, bend, stations, sense, radius) => {
        const scale: DialScale = {
          rotation,
          points: Array.from({ length: 61 }, (_, i) => ({
            angle: (rotation * i) / 60,
            frequency: lowest * span ** (1 - (i / 60) ** bend),
          })),
          stations: stations.map(({ label, frequency, shares }) => ({
            label,
            frequency,
            points: shares.map((s) => ({ angle: s * rotation })),
          })),
        };
        const round = drawDial(scale, { clockwise: sense, radius });
        const all = [...(round === null ? [] : [round]), drawDialStrip(scale, { rightwards: sense })].map(readDrawing);
        expect(round === null).toBe(rotation > (350 * Math.PI) / 180);
        for (const d of all) {
          expect(overlaps(d.texts)).toEqual([]);
          expect(outside(d)).toEqual([]);
        }
        if (round !== null && rotation < 6) {
          const marks = marksOf(all[0]!)
            .sort((a, b) => a.hertz - b.hertz)
            .map((m) => m.clock);
          for (let i = 1; i < marks.length; i++) expect(Math.sign(marks[i]! - marks[i - 1]!)).toBe(sense === 'rising' ? 1 : -1);
        }
      },
    ),
    { numRuns: 60 },
  );
});

test('the made-up dial is what its formula says', () => {
  expect(tuned(angleFor(99.2e6))).toBeCloseTo(99.2e6, 0);
});
