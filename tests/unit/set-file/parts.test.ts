import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { LIBRARY, mergeParts, PART_CATEGORIES, type Part, type PartCategory } from '#parts';
import { readDrawerFile, readSetFile, shelfOf } from '#set-file';
import { base } from './base.ts';

const folder = new URL('../../../src/parts/', import.meta.url);
const files = readdirSync(folder).filter((f) => f.endsWith('.json'));

/** A set file with a part in the section it is for. */
function using(category: PartCategory, name: string, more: object = {}, drawer: object = {}): string {
  const draft = base();
  const named = { part: name, ...more };
  if (category === 'detectors') draft.detector = named;
  if (category === 'earpieces') draft.phones.earpiece = named;
  if (category === 'transformers') draft.phones.transformer = named;
  if (category === 'capacitors') draft.tank.capacitor = named;
  if (category === 'wires') {
    delete draft.tank.coil.wireDiameter;
    draft.tank.coil = { ...draft.tank.coil, innerDiameter: '20 mm', pitch: '20 mm', wire: { part: name } };
  }
  return JSON.stringify({ ...draft, drawer });
}

test('every data file is a category of the library', () => {
  expect(new Set(files)).toEqual(new Set(PART_CATEGORIES.map((c) => `${c}.json`)));
});

for (const file of files) {
  const category = file.replace('.json', '') as PartCategory;
  const parts = JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as Record<string, Part>;
  describe(`the library's ${category}`, () => {
    test('there are some', () => expect(Object.keys(parts).length).toBeGreaterThan(0));
    for (const [name, part] of Object.entries(parts))
      test(name, () => {
        const read = readSetFile(using(category, name, {}, { [category]: { [name]: part } }));
        if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));
        expect(part.title).toMatch(/\S/);
        expect(part.source).toMatch(/\S/);
        expect(typeof part.estimate).toBe('boolean');
        const [used] = read.parts;
        expect(used).toMatchObject({ name, title: part.title, source: part.source, estimate: part.estimate });
        expect(used!.band.map((b) => b.key)).toEqual(Object.keys(part.band ?? {}));
      });
    test('each can be put on the shelf', () => expect(Object.keys(shelfOf(LIBRARY)[category])).toEqual(Object.keys(parts)));
  });
}

test("a band holds the part's own value, where the value is a number", () => {
  for (const category of PART_CATEGORIES)
    for (const name of Object.keys(LIBRARY[category])) {
      const read = readSetFile(using(category, name));
      if (!read.ok) throw new Error(JSON.stringify(read.problems));
      const section = {
        detectors: read.value.detector,
        earpieces: read.value.phones.earpiece,
        transformers: read.value.phones.transformer,
        capacitors: read.value.tank.capacitor,
        wires: read.value.tank.coil,
      }[category] as unknown as Record<string, number>;
      for (const { key, low, high } of read.parts[0]!.band) {
        expect(section[key], `${category}, ${name}, ${key}`).toBeGreaterThanOrEqual(low);
        expect(section[key], `${category}, ${name}, ${key}`).toBeLessThanOrEqual(high);
      }
    }
});

const mine = {
  values: { kind: 'junction', saturationCurrent: '7 uA', ideality: 1.2, junctionCapacitance: '1 pF' },
  band: { saturationCurrent: ['5 uA', '9 uA'] },
};

describe('named parts', () => {
  test("the user's own keys come before the part's", () => {
    const read = readSetFile(using('detectors', 'zero-bias-schottky', { temperature: '10 °C', seriesResistance: '99 ohm' }));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const part = shelfOf(LIBRARY).detectors['zero-bias-schottky']!;
    expect(read.value.detector).toEqual({ ...part, temperature: 283.15, seriesResistance: 99 });
  });

  test('the drawer comes before the library, and says so', () => {
    const read = readSetFile(using('detectors', 'zero-bias-schottky', {}, { detectors: { 'zero-bias-schottky': mine } }));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.value.detector).toMatchObject({ saturationCurrent: 7e-6 });
    expect(read.parts).toEqual([
      {
        path: 'detector',
        name: 'zero-bias-schottky',
        title: 'zero-bias-schottky',
        source: "the user's own part",
        estimate: false,
        band: [{ key: 'saturationCurrent', low: 5e-6, high: 9e-6, unit: 'A' }],
      },
    ]);
  });

  test('an earpiece is called by its title, unless it is given a name', () => {
    const read = readSetFile(using('earpieces', 'ceramic-earpiece'));
    expect(read).toMatchObject({ ok: true, value: { phones: { earpiece: { name: LIBRARY.earpieces['ceramic-earpiece']!.title } } } });
    expect(readSetFile(using('earpieces', 'ceramic-earpiece', { name: 'left' }))).toMatchObject({
      ok: true,
      value: { phones: { earpiece: { name: 'left' } } },
    });
  });

  test('a wire gives its diameter, metal and surface to the coil', () => {
    expect(readSetFile(using('wires', 'bare-copper-1mm-tarnished'))).toMatchObject({
      ok: true,
      value: { tank: { coil: { wireDiameter: 1e-3, metal: 'copper', surfaceFactor: 1.3 } } },
      parts: [{ path: 'tank.coil.wire' }],
    });
  });

  test('points of the user drop the lists of the part', () => {
    const points = [-2, -1, 0, 1, 2].map((k) => [`${k} mV`, `${k} nA`]);
    const read = readSetFile(using('detectors', 'backward-diode', { points }));
    expect(read).toMatchObject({ ok: true, value: { detector: { voltage: [-2e-3, -1e-3, 0, 1e-3, 2e-3] } } });
  });

  test('a mistake that comes of a part shows where the part is named', () => {
    const text = using('capacitors', 'air-variable-20', { maximum: '1 pF' });
    const read = readSetFile(text);
    if (read.ok) throw new Error('it was read');
    expect(read.problems[0]).toMatchObject({ path: 'tank.capacitor.maximum', line: 1, column: text.indexOf('"1 pF"') + 1 });
  });
});

describe('shelves', () => {
  test('those named first take the place of later ones', () => {
    const merged = mergeParts({ detectors: { a: mine as unknown as Part } }, { detectors: { a: { values: {} }, b: { values: {} } } });
    expect(merged.detectors).toEqual({ a: mine, b: { values: {} } });
    expect(merged.wires).toEqual({});
  });

  test('a part that is unsound, or measured in another file, is not put up', () => {
    const table = { values: { kind: 'table', csv: 'x.csv' } };
    const shelf = shelfOf(mergeParts({ detectors: { sound: mine as unknown as Part, wrong: { values: { kind: 'junction' } }, table } }));
    expect(Object.keys(shelf.detectors)).toEqual(['sound']);
  });
});

describe('a drawer without a set', () => {
  const town = { site: { height: '6 m' }, stations: base().place.stations };
  const drawer = {
    wires: { mine: { values: { wireDiameter: '1 mm' }, length: '2 m', tapEvery: 1 } },
    formers: [{ diameter: '12 mm', length: '40 mm', stays: { permittivity: 2.3 } }, { diameter: '8 mm' }],
    rods: [{ length: '75 cm', diameter: '6 mm', count: 2 }],
    resistors: ['470 k'],
    fixedCapacitors: ['220 pF'],
    garden: { length: '20 m', height: '6 m' },
    fromLibrary: ['germanium-point-contact'],
  };
  test('place, listener and parts are read in SI units, with what is left out filled in', () => {
    const read = readDrawerFile(JSON.stringify({ version: 1, place: town, drawer, ear: { room: '25 dB(A)' } }));
    if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));
    expect(read.value.place.stations).toHaveLength(2);
    expect(read.value.drawer).toMatchObject({
      wires: { mine: { length: 2, tapEvery: 1 } },
      formers: [{ diameter: 0.012, length: 0.04, stays: { permittivity: 2.3, lossTangent: 0.01 } }, { diameter: 0.008 }],
      rods: [{ length: 0.75, count: 2 }],
      resistors: [470e3],
      fixedCapacitors: [220e-12],
      garden: { length: 20, height: 6, earthResistance: 50 },
    });
  });
  test('a set beside them is left aside, and one that is not whole is no matter', () =>
    expect(readDrawerFile(JSON.stringify({ version: 1, place: town, drawer, tank: {} })).ok).toBe(true));
  test('what is wrong is told with its place and a mend', () => {
    const problems = (over: object, more: object = {}) => {
      const read = readDrawerFile(JSON.stringify({ version: 1, place: town, drawer: { ...drawer, ...over }, ...more }));
      return read.ok ? [] : read.problems.map((p) => `${p.path}: ${p.why} ${p.mend}`);
    };
    expect(problems({ fromLibrary: ['germanium-point-contakt'] })).toEqual([
      expect.stringMatching(/drawer\.fromLibrary\[0\].*germanium-point-contact/),
    ]);
    expect(problems({ rods: [{ length: '1 m', diameter: '5 mm', count: 1.5 }] })[0]).toMatch(/rods\[0\]\.count.*whole/);
    expect(problems({ wires: { mine: { values: { wireDiameter: '1 V' } } } })[0]).toMatch(/wires\.mine\.values\.wireDiameter/);
    expect(problems({}, { place: undefined })[0]).toMatch(/place/);
  });
});
