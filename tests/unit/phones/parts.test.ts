import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { C, coupledWindings, type Earpiece, phonesFigures, phonesModel, REFERENCE_SOUND_PRESSURE, type Transformer } from '#engine';
import { type DimensionName, readQuantity } from '#units';

interface Part {
  readonly title: string;
  readonly values: Readonly<Record<string, unknown>>;
  readonly band: Readonly<Record<string, readonly [string, string]>>;
  readonly source: string;
  readonly estimate: boolean;
}
const parts = (name: string) =>
  JSON.parse(readFileSync(new URL(`../../../src/parts/${name}.json`, import.meta.url), 'utf8')) as Record<string, Part>;

/** What each key of the two files is. */
const DIMENSION: Readonly<Record<string, DimensionName>> = {
  frequency: 'frequency',
  level: 'soundLevel',
  sensitivitySpread: 'decibels',
  capacitance: 'capacitance',
  leakResistance: 'resistance',
  resistance: 'resistance',
  inductance: 'inductance',
  primaryInductance: 'inductance',
  leakageInductance: 'inductance',
  primaryResistance: 'resistance',
  secondaryResistance: 'resistance',
  coreLoss: 'resistance',
};
const quantity = (text: string, key: string): number => {
  const reading = readQuantity(text, DIMENSION[key]!);
  if (!reading.ok) throw new Error(`${key}: ${reading.given}: ${reading.why}`);
  return reading.value;
};
const read = (value: unknown, key: string): unknown => {
  if (typeof value === 'string') return key in DIMENSION ? quantity(value, key) : value;
  if (Array.isArray(value)) return value.map((v) => read(v, key));
  if (typeof value === 'object' && value !== null) return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, read(v, k)]));
  return value;
};
const earpiece = (part: Part) => ({ name: part.title, ...(read(part.values, '') as object) }) as Earpiece;

const earpieces = parts('earpieces');
const transformers = parts('transformers');

describe('every part is complete and can be built', () => {
  for (const [name, part] of Object.entries(earpieces))
    test(name, () => {
      const model = phonesModel({ bypass: 1e-9, load: 500e3, earpiece: earpiece(part) });
      expect(C.abs(model.earpieceImpedance(1000))).toBeGreaterThan(1);
      expect(part.source.length).toBeGreaterThan(20);
      // an estimate says that it is one, and where it is from
      expect(part.estimate || part.source.includes('easured') || part.source.includes("Maker's")).toBe(true);
    });
  for (const [name, part] of Object.entries(transformers))
    test(name, () => {
      const transformer = read(part.values, '') as Transformer;
      const model = phonesModel({ bypass: 1e-9, transformer, earpiece: earpiece(earpieces['dynamic-32']!) });
      expect(C.abs(model.load(1000))).toBeGreaterThan(0);
      expect(coupledWindings(transformer).coupling).toBeGreaterThan(0.99);
      expect(part.estimate).toBe(true);
    });
});

test('every band holds its value', () => {
  for (const part of [...Object.values(earpieces), ...Object.values(transformers)])
    for (const [key, [low, high]] of Object.entries(part.band)) {
      const value = read(part.values[key], key) as number;
      expect(quantity(low, key), `${part.title}, ${key}`).toBeLessThanOrEqual(value);
      expect(quantity(high, key), `${part.title}, ${key}`).toBeGreaterThanOrEqual(value);
    }
});

test('limit: no earpiece puts more power to and fro in the air of its coupler than it is given (w p^2 V/(rho c^2) against V I)', () => {
  const volume = { 'IEC 60318-1': 5.6e-6, 'IEC 60318-4': 1.26e-6, '6 cc': 6e-6 } as const; // effective [m3], IEC 60318
  const stiffness = 1.42e5; // rho c^2 of air [Pa]
  for (const part of Object.values(earpieces)) {
    const e = earpiece(part);
    const model = phonesModel({ bypass: 0, load: 500e3, earpiece: e });
    for (const { frequency } of e.sensitivity) {
      const pressure = REFERENCE_SOUND_PRESSURE * 10 ** (model.sensitivity(frequency) / 20);
      const air = (e.ears * 2 * Math.PI * frequency * pressure ** 2 * volume[e.coupler]) / stiffness;
      expect(air * C.abs(model.earpieceImpedance(frequency)), `${part.title}, ${frequency} Hz`).toBeLessThan(1);
    }
  }
});

test('published: iron-diaphragm phones have some 6 times their resistance, sound-powered elements some 600 ohm (XDCR-Z-rule, factor 1.5)', () => {
  const z = (name: string) => C.abs(phonesModel({ bypass: 0, earpiece: earpiece(earpieces[name]!) }).earpieceImpedance(1000));
  for (const [got, expected] of [
    [z('magnetic-headset-2000'), 6 * 2000],
    [z('sound-powered-600'), 600],
  ] as const) {
    expect(got).toBeGreaterThan(expected / 1.5);
    expect(got).toBeLessThan(expected * 1.5);
  }
});

test('practice: sound-powered phones need least power, then crystal and iron-diaphragm phones, then modern ones (common practice, no source)', () => {
  const power = (name: string) =>
    phonesFigures(phonesModel({ bypass: 0, load: 500e3, earpiece: earpiece(earpieces[name]!) })).find(
      (f) => f.name === 'phones.thresholdPower',
    )!.value!;
  expect(power('sound-powered-600')).toBeLessThan(power('magnetic-headset-2000'));
  expect(power('magnetic-headset-2000')).toBeLessThan(power('dynamic-64'));
  expect(power('balanced-armature-300')).toBeLessThan(power('dynamic-32'));
  expect(power('ceramic-earpiece')).toBeLessThan(power('dynamic-64'));
});

test('practice: an audio transformer lets low-impedance phones be used with a detector of some 40 kohm (common practice, no source)', () => {
  const detector = 40e3;
  const phones = earpiece(earpieces['dynamic-64']!);
  // voltage on the earpiece for one volt behind the detector's resistance
  const gain = (transformer?: Transformer) => {
    const model = phonesModel({ bypass: 0, earpiece: phones, ...(transformer ? { transformer } : {}) });
    const load = model.load(1000);
    return C.abs(C.mul(model.transfer(1000), C.div(load, C.add(load, { re: detector, im: 0 }))));
  };
  const with100k = gain(read(transformers['matching-100k-to-150']!.values, '') as Transformer);
  expect(20 * Math.log10(with100k / gain())).toBeGreaterThan(15);
});
