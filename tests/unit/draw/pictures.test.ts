import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawBands, drawProfile, drawStations, type LevelsByBand, type StationAround } from '#draw';
import { BANDS, GivenError } from '#engine';
import { type Drawn, labelled, outside, overlaps, readDrawing, textsOf } from './drawn.ts';
import { AROUND, BAND_LEVELS, HILL, NOT_HEARD, OPEN } from './picture-examples.ts';
import { type Element, textOf } from './xml.ts';

const points = (e: Element) => e.attributes.points!.split(' ').map((p) => p.split(',').map(Number) as [number, number]);
const descOf = (d: Drawn) => textOf(d.elements.find((e) => e.name === 'desc')!);
/** Value along an even axis, from two of its numbers. */
function axisOf(d: Drawn, which: 'x' | 'y'): (at: number) => number {
  const ticks = labelled(d.elements, 'tick', which).map((e) => ({
    value: Number(textOf(e).replace('−', '-')),
    // numbers beside the upright axis are written 0.36 of their size below their tick
    at: which === 'x' ? Number(e.attributes.x) : Number(e.attributes.y) - 0.36 * Number(e.attributes['font-size']),
  }));
  const [a, b] = [ticks[0]!, ticks.at(-1)!];
  return (at) => a.value + ((b.value - a.value) * (at - a.at)) / (b.at - a.at);
}

describe('a programme in bands', () => {
  const d = readDrawing(drawBands(BAND_LEVELS, { title: 'Bands' }));

  test('every bar is as high as its level, and filled from what is needed on', () => {
    const level = axisOf(d, 'y');
    const needed = Array.from(BAND_LEVELS.needed!);
    for (let i = 0; i < BANDS.length; i++) {
      const part = (name: string) => labelled(labelled(d.elements, 'band', `${i}`), 'part', name).map(points)[0];
      expect(level(part('programme')![0]![1])).toBeCloseTo(BAND_LEVELS.programme[i]!, 2);
      const heard = part('heard');
      expect(heard !== undefined).toBe(BAND_LEVELS.programme[i]! > needed[i]!);
      if (heard) expect(level(Math.max(...heard.map((p) => p[1])))).toBeCloseTo(needed[i]!, 2);
    }
  });

  test('the headroom over each is the difference', () => {
    const written = textsOf(d, 'headroom', 'number').map((t) => Number(t.replace('−', '-')));
    expect(written).toEqual(BANDS.map((_, i) => Math.round(BAND_LEVELS.programme[i]! - BAND_LEVELS.needed![i]!) + 0));
  });

  test('the words say how many bands are heard', () => {
    const heard = BANDS.filter((_, i) => BAND_LEVELS.programme[i]! > BAND_LEVELS.needed![i]!).length;
    expect(descOf(d)).toContain(`${heard} of 18 bands are heard.`);
    expect(descOf(readDrawing(drawBands(NOT_HEARD, { title: 'Bands' })))).toContain('No band of the programme is heard.');
  });

  test('a silent band has no bar, and stretches no axis', () => {
    const silent = readDrawing(drawBands(NOT_HEARD, { title: 'Bands' }));
    expect(labelled(silent.elements, 'band', '3')).toEqual([]);
    expect(labelled(silent.elements, 'band', '4')).toHaveLength(1);
    for (const t of textsOf(silent, 'number')) expect(Number(t.replace('−', '-'))).toBeGreaterThan(-30);
  });

  test('what cannot be is refused', () => {
    expect(() => drawBands({ ...BAND_LEVELS, programme: [1] }, { title: '' })).toThrow(GivenError);
    expect(() => drawBands({ ...BAND_LEVELS, threshold: BANDS.map(() => Number.NaN) }, { title: '' })).toThrow(GivenError);
  });

  test('any levels: nothing runs into anything', () => {
    const row = fc.array(fc.double({ min: -250, max: 120, noNaN: true }), { minLength: 18, maxLength: 18 });
    fc.assert(
      fc.property(row, row, fc.option(row), fc.integer({ min: 60, max: 200 }), (programme, threshold, roomNoise, width) => {
        const levels: LevelsByBand = { band: BANDS, programme, threshold, ...(roomNoise ? { roomNoise } : {}) };
        const drawn = readDrawing(drawBands(levels, { title: 'Bands', width }));
        expect(overlaps(drawn.texts)).toEqual([]);
        expect(outside(drawn)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});

describe('the ground between', () => {
  const d = readDrawing(drawProfile(HILL, { title: 'Ground' }));

  test('surface and path lie where their heights are', () => {
    const [metres, km] = [axisOf(d, 'y'), axisOf(d, 'x')];
    const surface = points(labelled(d.elements, 'ground', 'surface')[0]!);
    surface.forEach(([x, y], i) => {
      expect(km(x) * 1e3).toBeCloseTo(HILL.profile.distance[i]!, -1);
      expect(metres(y)).toBeCloseTo(HILL.profile.height[i]!, 1);
    });
    const ray = labelled(d.elements, 'ray', 'line')[0]!.attributes;
    expect(metres(Number(ray.y1))).toBeCloseTo(HILL.profile.height[0]! + 110, 1);
    expect(metres(Number(ray.y2))).toBeCloseTo(HILL.profile.height.at(-1)! + 8, 1);
  });

  test('the zone holds the points whose way is half a wavelength longer', () => {
    const [metres, km] = [axisOf(d, 'y'), axisOf(d, 'x')];
    const half = 299_792_458 / HILL.frequency / 2;
    const [from, to] = [
      [0, HILL.profile.height[0]! + 110],
      [9000, HILL.profile.height.at(-1)! + 8],
    ] as const;
    const [upper] = labelled(d.elements, 'zone', 'edge').map(points);
    const straight = Math.hypot(to[0] - from[0], to[1] - from[1]);
    for (const [x, y] of upper!.slice(8, -8)) {
      const p = [km(x) * 1e3, metres(y)] as const;
      const way = Math.hypot(p[0] - from[0], p[1] - from[1]) + Math.hypot(to[0] - p[0], to[1] - p[1]);
      // the formula for the radius leaves out higher powers of height over distance
      expect((way - straight) / half).toBeCloseTo(1, 1);
    }
  });

  test('it says what the hill does', () => {
    expect(textsOf(d, 'text', 'facts').join(' ')).toMatch(/^The ground stands 103\.9 m into the path 5\.7 km from the mast/);
    expect(descOf(readDrawing(drawProfile(OPEN, { title: 'Ground' })))).toContain('it takes nothing away');
    const flat = { ...OPEN, profile: { distance: [0, 4000], height: [10, 10] } };
    expect(descOf(readDrawing(drawProfile(flat, { title: 'Ground' })))).toContain('No height is known between the two.');
  });

  test('a profile that cannot be is refused', () => {
    expect(() => drawProfile({ ...OPEN, profile: { distance: [0, 0], height: [1, 1] } }, { title: '' })).toThrow(GivenError);
    expect(() => drawProfile({ ...OPEN, frequency: 0 }, { title: '' })).toThrow(GivenError);
  });

  test('any profile: nothing runs into anything', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({ step: fc.double({ min: 1, max: 9000, noNaN: true }), height: fc.double({ min: -50, max: 3000, noNaN: true }) }),
          { minLength: 1, maxLength: 30 },
        ),
        fc.double({ min: 0, max: 400, noNaN: true }),
        fc.double({ min: 150e3, max: 108e6, noNaN: true }),
        fc.string({ unit: 'grapheme', maxLength: 60 }),
        (steps, mastHeight, frequency, mast) => {
          let sum = 0;
          const profile = { distance: [0, ...steps.map((s) => (sum += s.step))], height: [20, ...steps.map((s) => s.height)] };
          const drawn = readDrawing(drawProfile({ profile, mastHeight, siteHeight: 3, frequency }, { title: 'Ground', mast }));
          expect(overlaps(drawn.texts)).toEqual([]);
          expect(outside(drawn)).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('stations around a place', () => {
  const spots = (d: Drawn) => {
    const here = labelled(d.elements, 'place', 'here')[0]!.attributes;
    return labelled(d.elements, 'part', 'spot').map((e) => {
      const [x, y] = [Number(e.attributes.cx) - Number(here.cx), Number(e.attributes.cy) - Number(here.cy)];
      return { bearing: (Math.atan2(x, -y) + 2 * Math.PI) % (2 * Math.PI), reach: Math.hypot(x, y) };
    });
  };
  const ringsOf = (d: Drawn) =>
    labelled(d.elements, 'ring').map((e) => ({ metres: Number(e.attributes['data-ring']), reach: Number(e.attributes.r) }));

  test('each lies at its bearing', () => {
    spots(readDrawing(drawStations(AROUND, { title: '' }))).forEach((s, i) => {
      expect(s.bearing).toBeCloseTo(AROUND[i]!.bearing, 3);
    });
  });

  test('on an even disc at its distance, on a logarithmic one at its logarithm, by the rings', () => {
    const even = readDrawing(drawStations(AROUND, { title: '', rings: 'linear' }));
    const ring = ringsOf(even).at(-1)!;
    spots(even).forEach((s, i) => {
      expect(s.reach / ring.reach).toBeCloseTo(AROUND[i]!.distance / ring.metres, 3);
    });
    const log = readDrawing(drawStations(AROUND, { title: '', rings: 'log' }));
    const [first, last] = [ringsOf(log)[0]!, ringsOf(log).at(-1)!];
    spots(log).forEach((s, i) => {
      const share = Math.log(AROUND[i]!.distance / first.metres) / Math.log(last.metres / first.metres);
      expect((s.reach - first.reach) / (last.reach - first.reach)).toBeCloseTo(share, 3);
    });
  });

  test('the field stands beside the name, and which rings they are is said', () => {
    const d = readDrawing(drawStations(AROUND, { title: '' }));
    // 120 mV/m over 1 uV/m: 20 log10(120000)
    expect(textsOf(d, 'station', '0')).toEqual(['Fen Talk', '110°, 2.6 km', `${Math.round(20 * Math.log10(120_000))} dBµV/m`]);
    expect(textsOf(d, 'text', 'rings')[0]).toContain('logarithmic');
    expect(textsOf(readDrawing(drawStations(AROUND.slice(0, 2), { title: '' })), 'text', 'rings')[0]).toContain('even');
  });

  test('no station, and what cannot be', () => {
    expect(descOf(readDrawing(drawStations([], { title: '' })))).toBe('No stations.');
    expect(() => drawStations([{ ...AROUND[0]!, distance: 0 }], { title: '' })).toThrow(GivenError);
  });

  test('any stations: nothing runs into anything', () => {
    const station: fc.Arbitrary<StationAround> = fc.record({
      label: fc.string({ unit: 'grapheme', maxLength: 40 }),
      bearing: fc.double({ min: -7, max: 7, noNaN: true }),
      distance: fc.double({ min: 0, max: 12, noNaN: true }).map((e) => Math.exp(e)),
      field: fc.double({ min: 0, max: 3, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(station, { maxLength: 14 }),
        fc.constantFrom(undefined, 'log' as const, 'linear' as const),
        (stations, rings) => {
          const drawn = readDrawing(drawStations(stations, { title: 'Around', ...(rings ? { rings } : {}) }));
          expect(overlaps(drawn.texts)).toEqual([]);
          expect(outside(drawn)).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
  });
});
