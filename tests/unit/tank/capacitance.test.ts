import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  angleForCapacitance,
  C,
  type CapacitorLaw,
  capacitorCapacitance,
  capacitorImpedance,
  capacitorQ,
  formerEffect,
  medhurstCapacitance,
  ringChargeCapacitance,
  ringInductance,
  selfCapacitance,
  tankModel,
  thomsonFrequency,
  turnCapacitance,
  variableCapacitance,
} from '#engine';
import { airVariable, coil, tank } from './described-tank.ts';
import { values } from './reference-values.ts';

const off = (got: number, want: number) => Math.abs(got / want - 1);

describe('self-capacitance', () => {
  test('rival: charged rings against the charged helix, 5 %', () => {
    for (const c of values.charges)
      expect(off(ringChargeCapacitance(c.diameter / 2, c.wire / 2, c.pitch, c.turns), c.value), `${c.turns} turns`).toBeLessThan(0.05);
  });
  test('rival: coils as long as wide with 5 turns or more, charged rings against the measured table, 7 %', () => {
    for (const [n, D, d, p] of [
      [5, 0.008, 0.001, 0.0015],
      [5, 0.011, 0.001, 0.002],
      [8, 0.01, 0.0008, 0.0012],
      [10, 0.02, 0.001, 0.002],
      [20, 0.02, 0.0005, 0.001],
    ] as const) {
      const s = selfCapacitance(D / 2, d / 2, p, n);
      expect(s.rival).not.toBeNull();
      expect(off(s.rival!, s.capacitance)).toBeLessThan(0.07);
    }
  });
  test('published: reactance of a loop of 0.1 wavelength, 127 ohm (Storer 1956; reference/antennas.json, smallloop-R-C0.1-full), 3 %', () => {
    const [f, radius, wire] = [299792458, 0.0159154943, 0.0006737947];
    const w = 2 * Math.PI * f;
    const inductance = ringInductance(radius, wire, 'surface');
    // the loop stands alone, fed across its gap: only the field between its own parts counts
    const x = (w * inductance) / (1 - w * w * inductance * turnCapacitance(radius, wire));
    expect(off(x, 127)).toBeLessThan(0.03);
    expect(off(w * inductance, 127)).toBeGreaterThan(0.03);
  });
  test('limit: outside the measured shapes the table says nothing, and the coil says so', () => {
    expect(medhurstCapacitance(0.1, 0.005)).toBeNull();
    expect(medhurstCapacitance(0.01, 0.6)).toBeNull();
    expect(selfCapacitance(0.05, 0.001, 0.003, 1).remark).toMatch(/single turn/);
    expect(selfCapacitance(0.05, 0.001, 0.003, 2).remark).toMatch(/shorter or longer/);
    expect(selfCapacitance(0.05, 0.001, 0.01, 3).remark).toMatch(/few turns on a wide coil/);
    expect(selfCapacitance(0.0055, 0.0005, 0.002, 5).remark).toBeNull();
  });
  test('limit: a former of air does nothing; one of plastic adds capacitance and loss', () => {
    expect(formerEffect(1e-12, 1, 0)).toEqual({ capacitance: 0, lossTangent: 0 });
    const { capacitance, lossTangent } = formerEffect(1e-12, 3, 0.02);
    expect(capacitance).toBeCloseTo(1e-12, 20);
    expect(lossTangent).toBeCloseTo(0.015, 12);
    const plain = tankModel(tank, false);
    const wound = tankModel({ ...tank, coil: { ...coil, former: { permittivity: 3, lossTangent: 0.02 } } }, false);
    expect(off(wound.selfCapacitance, 2 * plain.selfCapacitance)).toBeLessThan(1e-12);
    expect(wound.remarks.join()).toMatch(/former/);
    expect(wound.elements(1e8, 1).some((e) => e.name === 'former')).toBe(true);
  });
});

const laws: readonly CapacitorLaw[] = [
  { kind: 'capacitance-linear' },
  { kind: 'wavelength-linear' },
  { kind: 'frequency-linear' },
  { kind: 'logarithmic' },
  { kind: 'table', angle: [0, 1, 2, Math.PI], capacitance: [3e-12, 5e-12, 11e-12, 20e-12] },
];

describe('variable capacitor', () => {
  test('limit: the ends of every law, and beyond them the ends held', () => {
    for (const law of laws) {
      const c = { ...airVariable, law };
      expect(variableCapacitance(c, 0)).toBeCloseTo(3e-12, 20);
      expect(variableCapacitance(c, Math.PI)).toBeCloseTo(20e-12, 20);
      expect(variableCapacitance(c, -1)).toBeCloseTo(3e-12, 20);
      expect(variableCapacitance(c, 9)).toBeCloseTo(20e-12, 20);
    }
  });
  test('limit: with the frequency-linear law the resonance of a plain circuit is a straight line of the angle', () => {
    const c = { ...airVariable, law: { kind: 'frequency-linear' } as const };
    const f = (angle: number) => thomsonFrequency(2e-7, variableCapacitance(c, angle));
    expect(off(f(Math.PI / 2), (f(0) + f(Math.PI)) / 2)).toBeLessThan(1e-12);
  });
  test('property: angle to capacitance and back, every law', () => {
    fc.assert(
      fc.property(fc.constantFrom(...laws), fc.double({ min: 0, max: Math.PI, noNaN: true }), (law, angle) => {
        const c = { ...airVariable, law };
        expect(Math.abs(angleForCapacitance(c, variableCapacitance(c, angle))! - angle)).toBeLessThan(1e-7);
      }),
    );
    for (const law of laws) {
      expect(angleForCapacitance({ ...airVariable, law }, 2e-12)).toBeNull();
      expect(angleForCapacitance({ ...airVariable, law }, 21e-12)).toBeNull();
    }
    expect(angleForCapacitance({ ...airVariable, minimum: 5e-12, maximum: 5e-12 }, 5e-12)).toBe(0);
  });
  test('limit: series and parallel capacitors', () => {
    const c = { ...airVariable, series: 20e-12, parallel: 4e-12 };
    expect(capacitorCapacitance(c, Math.PI)).toBeCloseTo(14e-12, 20);
    const low = capacitorImpedance(c, Math.PI, 1e5);
    expect(off(-1 / (2 * Math.PI * 1e5 * low.im), 14e-12)).toBeLessThan(1e-6);
  });
  test('limit: Q is 1 / tan without contact, X / R without loss, none where nothing loses or the leads win', () => {
    const bare = { ...airVariable, leadInductance: 0 };
    expect(off(capacitorQ({ ...bare, contactResistance: 0, lossTangent: 2e-3 }, 1, 1e8)!, 500)).toBeLessThan(1e-5);
    const x = 1 / (2 * Math.PI * 1e8 * variableCapacitance(bare, 1));
    expect(off(capacitorQ({ ...bare, lossTangent: 0 }, 1, 1e8)!, x / 0.02)).toBeLessThan(1e-12);
    expect(capacitorQ({ ...bare, lossTangent: 0, contactResistance: 0 }, 1, 1e8)).toBeNull();
    expect(capacitorQ(airVariable, Math.PI, 2e9)).toBeNull();
  });
  test('limit: leads raise the capacitance that the circuit sees', () => {
    const seen = (l: number) => -1 / (2 * Math.PI * 1e8 * capacitorImpedance({ ...airVariable, leadInductance: l }, Math.PI, 1e8).im);
    expect(seen(20e-9)).toBeGreaterThan(seen(5e-9));
    const w = 2 * Math.PI * 1e8;
    expect(off(seen(20e-9), 20e-12 / (1 - w * w * 20e-9 * 20e-12))).toBeLessThan(1e-3);
    expect(C.abs(capacitorImpedance(airVariable, 1, 1e8))).toBeGreaterThan(0);
  });
});
