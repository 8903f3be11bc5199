import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type CapacitorLaw, type CoilGeometry, capacitorQ, type Metal, tankModel, type VariableCapacitor } from '#engine';
import { type DimensionName, readQuantity } from '#units';
import { coil, tank } from './described-tank.ts';

interface Part {
  readonly title: string;
  readonly values: Readonly<Record<string, string | number>>;
  readonly band: Readonly<Record<string, readonly [string, string]>>;
  readonly source: string;
  readonly estimate: boolean;
}
const parts = (name: string): [string, Part][] =>
  Object.entries(JSON.parse(readFileSync(new URL(`../../../src/parts/${name}.json`, import.meta.url), 'utf8')));

const DIMENSION: Readonly<Record<string, DimensionName>> = {
  minimum: 'capacitance',
  maximum: 'capacitance',
  rotation: 'angle',
  lossTangent: 'ratio',
  contactResistance: 'resistance',
  leadInductance: 'inductance',
  wireDiameter: 'diameter',
  surfaceFactor: 'ratio',
};
function quantity(given: string | number, key: string): number {
  const reading = readQuantity(given, DIMENSION[key]!);
  if (!reading.ok) throw new Error(`${key}: ${given}`);
  return reading.value;
}
const capacitor = (part: Part): VariableCapacitor => {
  const number = (key: string) => quantity(part.values[key]!, key);
  return {
    minimum: number('minimum'),
    maximum: number('maximum'),
    rotation: number('rotation'),
    law: { kind: part.values.law } as CapacitorLaw,
    lossTangent: number('lossTangent'),
    contactResistance: number('contactResistance'),
    leadInductance: number('leadInductance'),
  };
};
const wire = (part: Part): Partial<CoilGeometry> => ({
  wireDiameter: quantity(part.values.wireDiameter!, 'wireDiameter'),
  metal: part.values.metal as Metal,
  surfaceFactor: quantity(part.values.surfaceFactor!, 'surfaceFactor'),
});
const capacitors = parts('capacitors');
const wires = parts('wires');
const byName = (list: [string, Part][], name: string): Part => list.find(([n]) => n === name)![1];

describe('every part can be built and knows where its numbers are from', () => {
  for (const [name, part] of [...capacitors, ...wires])
    test(name, () => {
      for (const [key, [low, high]] of Object.entries(part.band)) {
        const value = quantity(part.values[key]!, key);
        expect(quantity(low, key), key).toBeLessThanOrEqual(value * (1 + 1e-9));
        expect(quantity(high, key), key).toBeGreaterThanOrEqual(value * (1 - 1e-9));
      }
      expect(part.source.length).toBeGreaterThan(20);
      expect(part.estimate).toBe(true);
      expect(part.source).toMatch(/stimate/);
    });
  test('in a tank', () => {
    for (const [, part] of capacitors)
      expect(tankModel({ ...tank, capacitor: capacitor(part) }, false).elements(1e8, 0.5).length).toBeGreaterThan(8);
    for (const [, part] of wires) {
      const w = wire(part);
      const wound = { ...coil, ...w, innerDiameter: 0.03, pitch: 2 * w.wireDiameter! };
      expect(tankModel({ ...tank, coil: wound }, false).coilResistance(1e8)).toBeGreaterThan(0);
    }
  });
});

describe('parts against their sources', () => {
  test('published: film trimmers keep Q 400 at 100 MHz and at maximum without the leads (reference/coils.json, film-tand-100M), and resonate where the sheet says', () => {
    for (const [name, resonance] of [
      ['film-trimmer-15', 420e6],
      ['film-trimmer-40', 200e6],
    ] as const) {
      const c = capacitor(byName(capacitors, name));
      expect(1 / c.lossTangent).toBeCloseTo(400, 6);
      const f = 1 / (2 * Math.PI * Math.sqrt(c.leadInductance * c.maximum));
      expect(Math.abs(f / resonance - 1)).toBeLessThan(0.01);
    }
  });
  test('published: a small air variable of 10 pF has Q 400 to 2400 at 100 MHz (reference/coils.md section 9, inference there)', () => {
    for (const name of ['air-variable-20', 'air-variable-25', 'air-variable-50']) {
      const c = { ...capacitor(byName(capacitors, name)), leadInductance: 0 };
      const angle = (c.rotation * (10e-12 - c.minimum)) / (c.maximum - c.minimum);
      const q = capacitorQ(c, angle, 1e8)!;
      expect(q, name).toBeGreaterThan(400);
      expect(q, name).toBeLessThan(2400);
    }
  });
  test('practice: common practice, no source: an air variable beats one of film, a butterfly beats both', () => {
    const q = (name: string) => capacitorQ(capacitor(byName(capacitors, name)), 0.8, 1e8)!;
    expect(q('air-variable-20')).toBeGreaterThan(1.5 * q('film-gang-fm-20'));
    expect(q('butterfly-15')).toBeGreaterThan(q('air-variable-20'));
  });
});
