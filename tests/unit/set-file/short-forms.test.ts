import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { aerialModel, detectorModel, GivenError, METALS, phonesModel, receiveAll, roomBandLevel, tankModel } from '#engine';
import { fieldDimension, GROUNDS, readSetFile, type SetFile } from '#set-file';
import { arbitrarySetFile } from './arbitrary.ts';
import { base, baseText, type Draft, placeOf } from './base.ts';

function described(change: (d: Draft) => void = () => {}): SetFile {
  const draft = base();
  change(draft);
  const read = readSetFile(JSON.stringify(draft));
  if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));
  return read.value;
}

describe('what a short file leaves out', () => {
  const value = described();
  const [fen, bank] = value.place!.stations;

  test('published: ITU-R BS.450, 75 kHz and 50 us in Europe, is taken above 30 MHz', () => {
    expect(fen).toMatchObject({ polarisation: 'mixed', modulation: { kind: 'fm', deviation: 75e3, preEmphasis: 50e-6, stereo: true } });
  });
  test('amplitude modulation from a vertical mast is taken below', () => {
    expect(bank).toMatchObject({ polarisation: 'vertical', mastHeight: 0, modulation: { kind: 'am', depth: 0.8 } });
    // 20 dB over a kilowatt
    expect(bank!.power).toBeCloseTo(100e3, 6);
  });
  test('either can be asked for on any frequency', () => {
    const s = described((d) => {
      d.place.stations[0] = { ...d.place.stations[0], modulation: 'am', depth: '50 %' };
      d.place.stations[1] = { ...d.place.stations[1], modulation: 'fm', deviation: '5 kHz', stereo: false };
    }).place!.stations;
    expect(s.map((x) => x.modulation)).toEqual([
      { kind: 'am', depth: 0.5 },
      { kind: 'fm', deviation: 5e3, preEmphasis: 50e-6, stereo: false },
    ]);
  });
  test('a quiet room, normal hearing, programme at its limit', () => {
    expect(value.ear).toEqual({ hearingLevel: [], room: { kind: 'a-weighted', level: 30 } });
    expect(value.programme).toEqual({ tone: 1000, level: 0 });
  });
});

describe('short forms', () => {
  test('published: ITU-R P.527-3, ground by name (reference/antennas.md, 6.4)', () => {
    expect(GROUNDS).toMatchObject({
      wet: { permittivity: 30, conductivity: 0.01 },
      'medium-dry': { permittivity: 15, conductivity: 0.001 },
      'very-dry': { permittivity: 3, conductivity: 0.0001 },
      sea: { permittivity: 70, conductivity: 5 },
      'fresh-water': { permittivity: 80, conductivity: 0.003 },
    });
    expect(described().place!.site.ground).toEqual(GROUNDS.wet);
    expect(
      described((d) => {
        d.place.site.ground = { permittivity: 10, conductivity: '2 mS/m' };
      }).place!.site.ground,
    ).toEqual({ permittivity: 10, conductivity: 0.002 });
  });
  test('a building by name is the median room', () => {
    const { site } = described((d) => {
      d.place.site.building = 'traditional';
    }).place!;
    expect(site.building).toEqual({ kind: 'traditional', probability: 0.5 });
  });
  test('a winding by its length', () => {
    const { coil } = described((d) => {
      delete d.tank.coil.pitch;
      d.tank.coil.length = '11 mm';
    }).tank;
    expect(coil).toMatchObject({ turns: 5.5, pitch: 2e-3 });
  });
  test('joints, surfaces and dials by name', () => {
    const { tank } = described((d) => {
      d.tank.joints = { count: 2, resistance: 'dull' };
      d.tank.coil.surfaceFactor = 'tarnished';
      d.tank.capacitor.law = 'frequency-linear';
    });
    expect(tank).toMatchObject({
      joints: { count: 2, resistance: 10e-3 },
      coil: { surfaceFactor: 1.3 },
      capacitor: { law: { kind: 'frequency-linear' }, rotation: Math.PI },
    });
  });
  test('couplings: direct in a word, a link that touches', () => {
    const { tank } = described((d) => {
      d.tank.detectorCoupling = 'direct';
      d.tank.aerialCoupling = { kind: 'link', turns: 2, innerDiameter: '14 mm', wireDiameter: '0.8 mm', gap: '-1 mm' };
    });
    expect(tank.detectorCoupling).toEqual({ kind: 'direct' });
    expect(tank.aerialCoupling).toEqual({ kind: 'link', turns: 2, innerDiameter: 0.014, wireDiameter: 0.8e-3, pitch: 0.8e-3, gap: -1e-3 });
  });
  test('aerials: upright in a word, one resistance, a metal plate, a loop of turns one wire apart', () => {
    const aerial = (a: Draft) =>
      described((d) => {
        d.aerial = a;
      }).aerial;
    expect(aerial({ kind: 'dipole', length: '1 m', orientation: 'vertical' })).toMatchObject({ orientation: { kind: 'vertical' } });
    expect(aerial({ kind: 'electrical', impedance: '75 ohm', gain: '0 dBd', orientation: 'vertical' })).toMatchObject({
      impedance: [{ resistance: 75, reactance: 0 }],
      gain: 2.15,
    });
    expect(aerial({ kind: 'whip', length: '75 cm', counterpoise: 'plane' })).toMatchObject({
      counterpoise: { kind: 'plane' },
      metal: 'brass',
    });
    expect(aerial({ kind: 'loop', diameter: '10 cm', turns: 3, wireDiameter: '1 mm', axis: 'vertical' })).toMatchObject({
      windingLength: 5e-3,
    });
  });
  test('a position on the globe', () => {
    const { place } = described((d) => {
      d.place.site.coordinates = { latitude: "52°30'N", longitude: '1.5 W' };
      const [s] = d.place.stations;
      delete s.distance;
      delete s.bearing;
      s.coordinates = { latitude: '52.6', longitude: '-1.4' };
    });
    const degree = Math.PI / 180;
    expect(place!.site.coordinates).toEqual({ latitude: 52.5 * degree, longitude: -1.5 * degree });
    expect(place!.stations[0]!.position).toEqual({ coordinates: { latitude: 52.6 * degree, longitude: -1.4 * degree } });
  });
  test('every metal of the engine has its name', () => {
    for (const metal of Object.keys(METALS)) {
      const { tank } = described((d) => {
        d.tank.coil.metal = metal;
      });
      expect(tank.coil).toMatchObject({ metal });
    }
  });
});

test('rival: what is read here, every stage of the engine takes', () => {
  fc.assert(
    fc.property(arbitrarySetFile, ({ aerial, tank, detector, phones, ear, place }) => {
      try {
        if (aerial.kind !== 'coil') aerialModel(aerial);
        tankModel(tank, aerial.kind === 'coil');
        detectorModel(detector);
        phonesModel(phones);
        roomBandLevel(ear.room);
        if (place) receiveAll(place);
      } catch (error) {
        if (error instanceof GivenError) throw new Error(`${error.message}`);
        throw error;
      }
    }),
    { numRuns: 60 },
  );
});

describe('where things stand', () => {
  const text = baseText();
  const read = readSetFile(text);
  if (!read.ok) throw new Error('the base file was not read');

  test('a value by the path of the file', () => {
    expect(read.source.locate('tank.coil.turns')).toEqual({ file: null, ...placeOf(text, '"5 1/2"') });
    expect(read.source.locate('place.stations[1].frequency')).toEqual({ file: null, ...placeOf(text, '"909 kHz"') });
  });
  test('a value by the path of the engine, which groups what the file lists flat', () => {
    expect(read.source.locate('place.stations[0].position.distance')).toEqual({ file: null, ...placeOf(text, '"2.6 km"') });
  });
  test('what was filled in stands at what holds it', () => {
    expect(read.source.locate('place.stations[0].modulation.deviation')).toEqual({
      file: null,
      ...placeOf(text, '{\n        "name": "Fen Talk"'),
    });
    expect(read.source.locate('no.such.path')).toEqual({ file: null, line: 1, column: 1 });
  });
});

test('the dimension of any field is known by its path', () => {
  const file = { ...base(), tank: { ...base().tank, joints: {} } };
  for (const [path, dimension] of [
    ['tank.coil.turns', 'turns'],
    ['tank.coil.wireDiameter', 'diameter'],
    ['tank.coil.leadLength', 'length'],
    ['tank.joints.resistance', 'resistance'],
    ['tank.coil.surfaceFactor', 'ratio'],
    ['place.stations[0].distance', 'length'],
    ['place.stations.0.bearing', 'bearing'],
    ['detector.temperature', 'temperature'],
    ['phones.earpiece.capacitance', 'capacitance'],
    ['aerial.orientation.broadside', 'bearing'],
    ['ear.room', 'weightedLevel'],
    ['tank.coil.metal', null],
    ['tank.coil', null],
    ['detector.threshold', null],
    ['nonsense', null],
  ] as const)
    expect(fieldDimension(file, path), path).toBe(dimension);
});
