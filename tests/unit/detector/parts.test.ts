import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type DetectorDescription, detectorModel } from '#engine';
import { type DimensionName, readQuantity } from '#units';

interface Part {
  readonly title: string;
  readonly values: Readonly<Record<string, unknown>>;
  readonly band: Readonly<Record<string, readonly [string | number, string | number]>>;
  readonly source: string;
  readonly estimate: boolean;
}
const parts = JSON.parse(readFileSync(new URL('../../../src/parts/detectors.json', import.meta.url), 'utf8')) as Record<string, Part>;

/** What each key that carries a unit is. */
const DIMENSION: Readonly<Record<string, DimensionName>> = {
  saturationCurrent: 'current',
  current: 'current',
  voltage: 'voltage',
  threshold: 'voltage',
  gateBias: 'voltage',
  seriesResistance: 'resistance',
  junctionCapacitance: 'capacitance',
  capacitance: 'capacitance',
  gateCapacitance: 'capacitance',
  drainCapacitance: 'capacitance',
  energyGap: 'energy',
  nominalTemperature: 'temperature',
  transconductanceFactor: 'transconductanceFactor',
};
const read = (value: unknown, key: string): unknown => {
  if (Array.isArray(value)) return value.map((v) => read(v, key));
  if (typeof value !== 'string' || key === 'kind') return value;
  const reading = readQuantity(value, DIMENSION[key]!);
  if (!reading.ok) throw new Error(`${key}: ${reading.given}: ${reading.why}`);
  return reading.value;
};
const described = (name: string, change: Record<string, unknown> = {}): DetectorDescription =>
  ({
    ...Object.fromEntries(Object.entries(parts[name]!.values).map(([k, v]) => [k, read(v, k)])),
    ...change,
    temperature: 300,
  }) as DetectorDescription;
const resistance = (name: string, change?: Record<string, unknown>) => detectorModel(described(name, change)).zeroBiasResistance;

describe('every part is complete, can be built over its whole band, and says where it is from', () => {
  for (const [name, part] of Object.entries(parts))
    test(name, () => {
      expect(part.title.length).toBeGreaterThan(5);
      expect(part.source.length).toBeGreaterThan(40);
      // an estimate says that it is one; the others name what was printed
      expect(part.source).toMatch(part.estimate ? /[Ee]stimate/ : /printed|published/);
      for (const [key, ends] of Object.entries(part.band)) {
        const [low, high] = ends.map((e) => read(e, key) as number) as [number, number];
        const value = read(part.values[key], key) as number;
        expect(low, `${key} low`).toBeLessThanOrEqual(value);
        expect(high, `${key} high`).toBeGreaterThanOrEqual(value);
        for (const end of [low, high]) expect(Number.isFinite(resistance(name, { [key]: end }))).toBe(true);
      }
      const model = detectorModel(described(name));
      expect(model.zeroBiasResistance).toBeGreaterThan(0);
      expect(model.currentSensitivity).not.toBe(0);
    });
});
test('published: 104 kohm and 20 uA at 0.1 V with the gate at the source (reference FET-ALD110800, FET-ALD212900)', () => {
  // as on the bench: the gate does not follow the drain
  const bench = (name: string) => detectorModel(described(name, { gateDrive: 0, seriesResistance: 0 })).law.current(0.1, 0);
  expect(0.1 / bench('zero-threshold-mosfet') / 104e3).toBeCloseTo(1, 1);
  expect(bench('wide-zero-threshold-mosfet') / 20e-6).toBeCloseTo(1, 1);
});
test('practice: common practice, no source: a low-barrier Schottky presents some 40 kohm at its output', () => {
  // printed limits of forward voltage leave two decades open; the middle must be of that size and the band must hold it
  expect(resistance('low-barrier-schottky')).toBeGreaterThan(40e3 / 3);
  expect(resistance('low-barrier-schottky')).toBeLessThan(40e3 * 3);
  const [low, high] = parts['low-barrier-schottky']!.band.saturationCurrent!.map((c) => read(c, 'saturationCurrent'));
  expect(resistance('low-barrier-schottky', { saturationCurrent: high })).toBeLessThan(40e3);
  expect(resistance('low-barrier-schottky', { saturationCurrent: low })).toBeGreaterThan(40e3);
});
test('practice: common practice, no source: a VHF FET detector presents about 1.5 kohm, far less than a Schottky', () => {
  expect(resistance('vhf-mosfet')).toBeGreaterThan(1.5e3 / 3);
  expect(resistance('vhf-mosfet')).toBeLessThan(1.5e3 * 3);
  expect(resistance('vhf-jfet')).toBeLessThan(1.5e3);
  expect(resistance('vhf-mosfet')).toBeLessThan(resistance('low-barrier-schottky') / 10);
});
test('practice: common practice, no source: silicon is deaf to weak signals, germanium and zero-bias types are not', () => {
  for (const name of ['zero-bias-schottky', 'germanium-point-contact', 'gold-bonded-germanium', 'galena-contact'])
    expect(resistance('silicon-junction')).toBeGreaterThan(50 * resistance(name));
});
