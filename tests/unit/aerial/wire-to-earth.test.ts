import { describe, expect, test } from 'vitest';
import { type Arrival, aerialModel, C, levelWireCapacitance, type SeparateAerial, SPEED_OF_LIGHT, uprightWireCapacitance } from '#engine';
import { efficiency, meanGain } from './sphere.ts';

type Wire = Extract<SeparateAerial, { kind: 'wire-to-earth' }>;
const LEVEL: Arrival = { azimuth: 0, elevation: 0 };
const wire = (horizontal: number, vertical: number, earthResistance = 30): Wire => ({
  kind: 'wire-to-earth',
  horizontal,
  vertical,
  diameter: 0.002,
  earthResistance,
});

describe('wire to earth', () => {
  test('limit: well below resonance it is the two capacitances side by side', () => {
    for (const [l, h] of [
      [20, 8],
      [0, 10],
      [40, 5],
    ] as const) {
      const x = aerialModel(wire(l, h)).at(1e4, LEVEL).impedance.im;
      const c = levelWireCapacitance(l, h, 0.001) + uprightWireCapacitance(h, 0.001);
      expect(-1 / (2 * Math.PI * 1e4 * x) / c).toBeCloseTo(1, 4);
    }
  });
  test('limit: effective height from half the rising part without a top to the whole of it under a great one', () => {
    const height = (l: number) => C.abs(aerialModel(wire(l, 10)).at(1e5, LEVEL).vertical);
    expect(height(0)).toBeCloseTo(5, 2);
    expect(height(400)).toBeGreaterThan(9.7);
    let before = 0;
    for (const l of [0, 5, 10, 20, 40, 80]) {
      expect(height(l)).toBeGreaterThan(before);
      expect(height(l)).toBeLessThan(10);
      before = height(l);
    }
  });
  test('limit: radiation resistance 160 pi^2 (h_e/lambda)^2 (Kraus; half-space of a short current and its image)', () => {
    const a = aerialModel(wire(20, 8)).at(1e6, LEVEL);
    const h = C.abs(a.vertical) / (SPEED_OF_LIGHT / 1e6);
    expect((a.impedance.re - a.lossResistance) / (160 * Math.PI ** 2 * h * h)).toBeCloseTo(1, 1);
  });
  test('practice: a 20 to 30 m wire stands for about 200 pF and some 20 uH (IRE dummy aerial, 1938; quoted for 25-35 m)', () => {
    const c = levelWireCapacitance(27, 9, 0.001) + uprightWireCapacitance(9, 0.001);
    expect(c).toBeGreaterThan(150e-12);
    expect(c).toBeLessThan(260e-12);
    // inductance by how much the reactance departs from that of the capacitance alone
    const f = 0.5e6;
    const x = aerialModel(wire(27, 9)).at(f, LEVEL).impedance.im;
    const inductance = (x + 1 / (2 * Math.PI * f * c)) / (2 * Math.PI * f);
    expect(inductance).toBeGreaterThan(10e-6);
    expect(inductance).toBeLessThan(40e-6);
  });
  test('it resonates near a quarter wave of wire, and says so beyond', () => {
    const model = aerialModel(wire(20, 10));
    const x = (f: number) => model.at(f, LEVEL).impedance.im;
    expect(x(2e6)).toBeLessThan(0);
    expect(x(2.7e6)).toBeGreaterThan(0);
    expect(model.remarks(1.5e6)).toEqual([]);
    expect(model.remarks(2.7e6).join()).toContain('quarter wave');
  });
  test('identity: mean gain over the dome is the efficiency', () => {
    for (const [l, h] of [
      [20, 8],
      [0, 60],
    ] as const) {
      const model = aerialModel(wire(l, h));
      expect(meanGain(model, 1e6, 'dome') / efficiency(model, 1e6)).toBeCloseTo(1, 6);
    }
  });
  test('loss is the earth plus a little copper', () => {
    const loss = aerialModel(wire(20, 8, 45)).at(1e6, LEVEL).lossResistance;
    expect(loss).toBeGreaterThan(45);
    expect(loss).toBeLessThan(47);
  });
  test('finite at any frequency, though of no use at VHF', () => {
    for (let f = 1e5; f < 3e8; f *= 1.07) {
      const a = aerialModel(wire(20, 8)).at(f, LEVEL);
      for (const v of [a.impedance.re, a.impedance.im, a.vertical.re, a.lossResistance]) expect(Number.isFinite(v)).toBe(true);
      expect(a.impedance.re).toBeGreaterThan(a.lossResistance);
    }
  });
});
