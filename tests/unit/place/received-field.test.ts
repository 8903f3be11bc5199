import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Coordinates,
  fieldLevel,
  fieldOfLevel,
  GivenError,
  type Place,
  receive,
  receiveAll,
  receivedFigures,
  type Site,
  type Station,
} from '#engine';
import { mediumWave, placeOf, station } from './given.ts';

const level = (s: Station, given: Parameters<typeof placeOf>[0] = {}): number => fieldLevel(receive(placeOf(given), s).field);

describe('choice of method', () => {
  test('limit: measured, terrain, curves, ground wave, in that order', () => {
    const place = placeOf({});
    expect(receive(place, station).method).toBe('broadcast-curves');
    expect(receive(place, mediumWave).method).toBe('ground-wave');
    const terrain = { distance: [0, 6e3, 12e3], height: [10, 40, 20] };
    expect(receive(place, { ...station, terrain }).method).toBe('terrain');
    expect(receive(place, { ...station, terrain, measuredField: 0.02 }).method).toBe('measured');
  });

  test('limit: a method that cannot serve the band gives way and says so', () => {
    const smooth = receive(placeOf({ method: 'smooth-earth' }), mediumWave);
    expect(smooth.method).toBe('ground-wave');
    expect(smooth.remarks.join(' ')).toContain('ground-wave method is used instead');
    const low = receive(placeOf({ method: 'ground-wave' }), station);
    expect(low.method).toBe('smooth-earth');
  });

  test('limit: what was measured is what is received, indoors too', () => {
    const building = { kind: 'traditional', probability: 0.5 } as const;
    const received = receive(placeOf({ site: { building } }), { ...station, measuredField: 0.0123 });
    expect(received.field).toBeCloseTo(0.0123, 12);
    expect(received.spread).toBe(2);
  });
});

describe('polarisation', () => {
  test('limit: horizontal and vertical make up the field; mixed halves the power over curves', () => {
    for (const polarisation of ['horizontal', 'vertical', 'mixed'] as const) {
      for (const method of ['broadcast-curves', 'free-space', 'smooth-earth'] as const) {
        const r = receive(placeOf({ method }), { ...station, polarisation });
        expect(Math.hypot(r.horizontal, r.vertical)).toBeCloseTo(r.field, 12);
        if (polarisation === 'horizontal') expect(r.vertical).toBe(0);
        if (polarisation === 'vertical') expect(r.horizontal).toBe(0);
      }
    }
    const mixed = receive(placeOf({ method: 'broadcast-curves' }), { ...station, polarisation: 'mixed' });
    expect(mixed.horizontal / mixed.field).toBeCloseTo(Math.SQRT1_2, 12);
  });

  test('limit: mixed over smooth earth is each half by itself', () => {
    const place = placeOf({ method: 'smooth-earth' });
    const half = { ...station, power: station.power / 2 };
    const mixed = receive(place, { ...station, polarisation: 'mixed' });
    expect(mixed.horizontal).toBeCloseTo(receive(place, half).field, 12);
    expect(mixed.vertical).toBeCloseTo(receive(place, { ...half, polarisation: 'vertical' }).field, 12);
    // near the ground the vertical wave is the stronger
    expect(mixed.vertical).toBeGreaterThan(mixed.horizontal);
  });
});

describe('medium wave', () => {
  test('limit: over sea water near by nothing is lost, over poor ground much is', () => {
    const close = { ...mediumWave, position: { distance: 1e3, bearing: 0 } };
    const sea = receive(placeOf({ site: { ground: { permittivity: 80, conductivity: 5 } } }), close);
    expect(fieldLevel(sea.field)).toBeCloseTo(20 * Math.log10(0.3e6 * Math.sqrt(5)), 1);
    const sand = { permittivity: 4, conductivity: 0.0003 };
    expect(level(mediumWave, { site: { ground: sand } })).toBeLessThan(level(mediumWave) - 10);
  });

  test('limit: half the power where half is horizontal', () => {
    expect(level({ ...mediumWave, polarisation: 'mixed' })).toBeCloseTo(level(mediumWave) - 10 * Math.log10(2), 9);
  });

  test('limit: falls with distance, through every join', () => {
    let last = Number.POSITIVE_INFINITY;
    for (let distance = 500; distance < 900e3; distance *= 1.05) {
      const { field } = receive(placeOf({}), { ...mediumWave, position: { distance, bearing: 0 } });
      expect(field).toBeLessThan(last);
      if (last < Number.POSITIVE_INFINITY) expect(field).toBeGreaterThan(last / 1.6);
      last = field;
    }
  });
});

describe('indoors', () => {
  test('limit: outdoors less the loss of the wall, and the room adds its own spread', () => {
    const out = receive(placeOf({}), station);
    const inside = receive(placeOf({ site: { building: { kind: 'traditional', probability: 0.5 } } }), station);
    const loss = fieldLevel(out.field) - fieldLevel(inside.field);
    // P.2109 at 0.1 GHz: 14.22 dB for the median room (reference/antennas.md 6.6)
    expect(loss).toBeGreaterThan(14);
    expect(loss).toBeLessThan(14.5);
    // from its 10 % and 90 % rooms, 5.93 and 23.06 dB, a normal law would spread (23.06 - 5.93)/2.563 = 6.7 dB
    const room = Math.sqrt(inside.spread ** 2 - out.spread ** 2);
    expect(Math.abs(room - 6.7)).toBeLessThan(0.4);
    expect(inside.exposure.ratio).toBe(out.exposure.ratio);
  });
});

describe('noise and exposure', () => {
  test('published: P.372 residential at 100 MHz, 17.1 dB (reference/antennas.md 6.6); never below the galaxy', () => {
    const hundred = { ...station, frequency: 100e6 };
    expect(receive(placeOf({}), hundred).noiseFigure).toBeCloseTo(17.1, 6);
    expect(receive(placeOf({ site: { radioNoise: 'quiet-rural' } }), hundred).noiseFigure).toBeCloseTo(6, 6);
    // 1 MHz: c itself, P.372 table 1
    expect(receive(placeOf({}), { ...mediumWave, frequency: 1e6 }).noiseFigure).toBeCloseTo(72.5, 6);
  });

  test('limit: at the foot of a strong mast the caution shows, across the town it does not', () => {
    const foot = receive(placeOf({}), { ...station, power: 100e3, mastHeight: 40, position: { distance: 30, bearing: 0 } });
    expect(foot.exposure.caution).toBe(true);
    expect(foot.exposure.ratio).toBeGreaterThan(1);
    expect(receive(placeOf({}), station).exposure.caution).toBe(false);
  });

  test('limit: reference levels meet where bands meet', () => {
    const at = (frequency: number) => receive(placeOf({}), { ...station, polarisation: 'vertical', frequency }).exposure.level;
    expect(at(29.99e6)).toBeCloseTo(27.7, 1);
    expect(at(30.01e6)).toBe(27.7);
    expect(at(400.01e6)).toBeCloseTo(27.5, 1);
    expect(at(1e6)).toBe(83);
  });
});

describe('steps and figures', () => {
  const places: readonly [string, Place, Station][] = [
    ['curves', placeOf({}), station],
    ['near', placeOf({}), { ...station, position: { distance: 300, bearing: 1 } }],
    [
      'capped',
      placeOf({ site: { surroundings: 'open', height: 40 } }),
      { ...station, mastHeight: 900, position: { distance: 3e3, bearing: 1 } },
    ],
    ['smooth', placeOf({ method: 'smooth-earth' }), { ...station, polarisation: 'mixed' }],
    ['ground wave', placeOf({}), { ...mediumWave, polarisation: 'mixed' }],
    [
      'terrain indoors',
      placeOf({ site: { building: { kind: 'thermally-efficient', probability: 0.8 } } }),
      { ...station, terrain: { distance: [0, 5e3, 12e3], height: [0, 150, 10] } },
    ],
    ['measured', placeOf({}), { ...station, measuredField: 0.004 }],
    ['free space', placeOf({ method: 'free-space' }), station],
  ];

  test.each(places)('limit: the steps add up to the field: %s', (_, place, s) => {
    const received = receive(place, s);
    const sum = received.steps.reduce((total, step) => total + step.decibels, 0);
    expect(Math.abs(sum - fieldLevel(received.field))).toBeLessThan(1e-9);
    for (const step of received.steps) expect(step.source.length).toBeGreaterThan(8);
  });

  test.each(places)('limit: each figure has one name, a number, a formula and a source: %s', (_, place, s) => {
    const figures = receivedFigures(receive(place, s));
    expect(new Set(figures.map((f) => f.name)).size).toBe(figures.length);
    for (const figure of figures) {
      expect(Number.isFinite(figure.value), figure.name).toBe(true);
      expect(figure.working.formula.length, figure.name).toBeGreaterThan(0);
      expect(figure.working.source.length, figure.name).toBeGreaterThan(0);
      for (const t of figure.working.terms) expect(t.value === null || Number.isFinite(t.value), `${figure.name} ${t.symbol}`).toBe(true);
      if (figure.low !== undefined) {
        expect(figure.low).toBeLessThan(figure.value!);
        expect(figure.high).toBeGreaterThan(figure.value!);
      }
    }
    for (const name of [
      'distance',
      'bearing',
      'freeSpaceField',
      'field',
      'horizontal',
      'vertical',
      'spread',
      'noiseFigure',
      'exposure.ratio',
    ]) {
      expect(
        figures.some((f) => f.name === `place.${name}`),
        name,
      ).toBe(true);
    }
  });

  test('limit: the capped place is capped', () => {
    const [, place, s] = places.find(([name]) => name === 'capped')!;
    const received = receive(place, s);
    expect(received.steps.at(-1)!.label).toContain('free space');
    expect(fieldLevel(received.field)).toBeCloseTo(received.steps[0]!.decibels, 9);
  });
});

describe('what cannot be', () => {
  const bad: readonly [string, string, Partial<Site>, Partial<Station>, Place['method']?][] = [
    ['aerial under the ground', 'place.site.height', { height: -1 }, {}],
    ['height that is no number', 'place.site.height', { height: Number.NaN }, {}],
    ['ground of air', 'place.site.ground.permittivity', { ground: { permittivity: 1, conductivity: 0 } }, {}],
    ['no power', 'place.stations[0].power', {}, { power: 0 }],
    ['infinite power', 'place.stations[0].power', {}, { power: Number.POSITIVE_INFINITY }],
    ['light', 'place.stations[0].frequency', {}, { frequency: 5e14 }],
    ['a bearing that is no number', 'place.stations[0].position.bearing', {}, { position: { distance: 1e3, bearing: Number.NaN } }],
    ['the far side of the world', 'place.stations[0].position', {}, { position: { distance: 1.5e7, bearing: 0 } }],
    ['inside the mast aerial', 'place.stations[0].position', { height: 30 }, { mastHeight: 30, position: { distance: 0, bearing: 0 } }],
    ['no coordinates of the site', 'place.site.coordinates', {}, { position: { coordinates: { latitude: 0.9, longitude: 0.1 } } }],
    [
      'a latitude past the pole',
      'place.stations[0].position.coordinates.latitude',
      {},
      { position: { coordinates: { latitude: 2, longitude: 0 } } },
    ],
    ['all rooms', 'place.site.building.probability', { building: { kind: 'traditional', probability: 1 } }, {}],
    ['horizontal medium wave', 'place.stations[0].polarisation', {}, { frequency: 1e6, polarisation: 'horizontal' }],
    ['no profile', 'place.method', {}, {}, 'terrain'],
    ['a profile of another place', 'place.stations[0].terrain', {}, { terrain: { distance: [0, 3e3], height: [0, 0] } }],
    [
      'a profile that goes back',
      'place.stations[0].terrain.distance[2]',
      {},
      { terrain: { distance: [0, 9e3, 8e3, 12e3], height: [0, 0, 0, 0] } },
    ],
    ['a profile of two lengths', 'place.stations[0].terrain', {}, { terrain: { distance: [0, 12e3], height: [0] } }],
    ['a negative measured field', 'place.stations[0].measuredField', {}, { measuredField: -1 }],
    ['inside a medium-wave mast', 'place.stations[0].position', { height: 2 }, { ...mediumWave, position: { distance: 0.2, bearing: 0 } }],
  ];

  test.each(bad)('limit: %s is refused at %s', (_, path, site, change, method) => {
    const changed = { ...station, ...change };
    const place = placeOf({ site, stations: [changed], ...(method ? { method } : {}) });
    let thrown: unknown = null;
    try {
      receiveAll(place);
    } catch (error) {
      thrown = error;
    }
    expect(thrown).toBeInstanceOf(GivenError);
    expect((thrown as GivenError).path).toBe(path);
    expect((thrown as GivenError).mend.length).toBeGreaterThan(5);
  });
});

describe('any valid place', () => {
  const ground = fc.record({
    permittivity: fc.double({ min: 2, max: 100, noNaN: true }),
    conductivity: fc.double({ min: 0, max: 6, noNaN: true }),
  });
  const anySite = fc.record({
    height: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 60, noNaN: true })),
    surroundings: fc.constantFrom('open' as const, 'suburban' as const, 'urban' as const, 'dense-urban' as const),
    ground,
    radioNoise: fc.constantFrom('city' as const, 'residential' as const, 'rural' as const, 'quiet-rural' as const),
  });
  const anyStation = fc.record({
    band: fc.constantFrom(150e3, 1e6, 1.6e6, 6e6, 29e6, 31e6, 66e6, 88e6, 108e6, 250e6, 700e6),
    logPower: fc.double({ min: -1, max: 6, noNaN: true }),
    polarisation: fc.constantFrom('horizontal' as const, 'vertical' as const, 'mixed' as const),
    mastHeight: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 2000, noNaN: true })),
    logDistance: fc.double({ min: 0.2, max: 5.9, noNaN: true }),
    method: fc.constantFrom(
      'auto' as const,
      'free-space' as const,
      'smooth-earth' as const,
      'broadcast-curves' as const,
      'ground-wave' as const,
    ),
  });

  test('limit: a finite field, never 6 dB over free space, and nothing is NaN', () => {
    const everywhere = fc.property(anySite, anyStation, (anyPlace, given) => {
      const s: Station = {
        ...station,
        frequency: given.band,
        power: 10 ** given.logPower,
        polarisation: given.band < 30e6 && given.polarisation === 'horizontal' ? 'vertical' : given.polarisation,
        mastHeight: given.mastHeight,
        position: { distance: 10 ** given.logDistance + 1, bearing: 0 },
      };
      const received = receive(placeOf({ site: anyPlace, method: given.method }), s);
      for (const number of [
        received.field,
        received.horizontal,
        received.vertical,
        received.spread,
        received.elevation,
        received.noiseFigure,
        received.exposure.ratio,
      ]) {
        expect(Number.isFinite(number), JSON.stringify([anyPlace, given])).toBe(true);
      }
      expect(received.field).toBeGreaterThan(0);
      expect(fieldLevel(received.field)).toBeLessThan(received.steps[0]!.decibels + 6.03);
      for (const figure of receivedFigures(received)) expect(Number.isNaN(figure.value), figure.name).toBe(false);
    });
    fc.assert(everywhere, { numRuns: 400, seed: 3 });
  });

  test('limit: four times the power is twice the field', () => {
    for (const method of ['auto', 'free-space', 'smooth-earth'] as const) {
      for (const s of [station, mediumWave]) {
        const place = placeOf({ method });
        expect(receive(place, { ...s, power: 4 * s.power }).field / receive(place, s).field).toBeCloseTo(2, 10);
      }
    }
  });

  test('limit: coordinates give what distance and bearing give', () => {
    const home: Coordinates = { latitude: 0.9, longitude: 0.12 };
    const mast: Coordinates = { latitude: 0.902, longitude: 0.123 };
    const placed = { ...station, position: { coordinates: mast } };
    const byCoordinates = receive(placeOf({ site: { coordinates: home } }), placed);
    const byDistance = receive(placeOf({}), { ...station, position: { distance: byCoordinates.distance, bearing: byCoordinates.bearing } });
    expect(byCoordinates.field).toBeCloseTo(byDistance.field, 12);
    expect(byCoordinates.distance).toBeGreaterThan(10e3);
  });

  test('limit: a level is a field and back', () => {
    expect(fieldOfLevel(fieldLevel(0.0371))).toBeCloseTo(0.0371, 12);
  });
});
