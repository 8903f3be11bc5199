import { describe, expect, test } from 'vitest';
import { dialSetting, dialTable, tankModel, tankResonance, thomsonFrequency, tuningRange } from '#engine';
import { airVariable, coil, tank } from './described-tank.ts';

const off = (got: number, want: number) => Math.abs(got / want - 1);
const plain = tankModel(
  {
    ...tank,
    coil: { kind: 'electrical', inductance: 1e-6, q: 300, frequency: 5e7, selfCapacitance: 0, turns: 1, tapCoupling: 0.5 },
    capacitor: { ...airVariable, minimum: 5e-12, maximum: 20e-12, law: { kind: 'frequency-linear' }, leadInductance: 0 },
    wiring: { length: 0, diameter: 0.001 },
    strayCapacitance: 0,
    aerialCoupling: { kind: 'direct' },
    detectorCoupling: { kind: 'direct' },
  },
  false,
);

describe('dial', () => {
  test('published: 1 uH with 5 to 20 pF, 71.1763 to 35.5881 MHz (reference/coils.md section 9), middle of the frequency-linear dial 53.3822 MHz', () => {
    const { lowest, highest } = tuningRange(plain);
    expect(off(lowest!, 35.5881e6)).toBeLessThan(1e-5);
    expect(off(highest!, 71.1763e6)).toBeLessThan(1e-5);
    expect(off(tankResonance(plain, Math.PI / 2)!, 53.3822e6)).toBeLessThan(1e-5);
  });
  test('limit: a frequency-linear dial has one slope, and it is the range over the rotation', () => {
    for (const p of dialTable(plain, 9)) expect(off(p.slope!, -(71.1763e6 - 35.5881e6) / Math.PI)).toBeLessThan(1e-3);
  });
  test('limit: capacitance of detector and aerial lowers the resonance as if it were in the capacitor', () => {
    expect(off(tankResonance(plain, 0, { detector: 3e-12, aerial: 2e-12 })!, thomsonFrequency(1e-6, 10e-12))).toBeLessThan(1e-5);
  });
  test('limit: the slope is that of the table of frequencies', () => {
    const m = tankModel(tank, false);
    const table = dialTable(m, 181);
    for (let i = 10; i < 171; i += 20) {
      const step = table[i + 1]!.angle - table[i - 1]!.angle;
      expect(off(table[i]!.slope!, (table[i + 1]!.frequency! - table[i - 1]!.frequency!) / step)).toBeLessThan(2e-3);
    }
  });
  test('limit: the setting for a frequency resonates there', () => {
    const m = tankModel(tank, false);
    for (const f of [8.8e7, 9.8e7, 1.08e8]) {
      const { angle, missing, remark } = dialSetting(m, f, { detector: 5e-13 });
      expect(missing).toBeNull();
      expect(remark).toBeNull();
      expect(off(tankResonance(m, angle!, { detector: 5e-13 })!, f)).toBeLessThan(1e-7);
    }
  });
  test('a frequency that is not reached is a physical no, with what is missing', () => {
    const low = dialSetting(plain, 30e6);
    expect(low.angle).toBeNull();
    expect(low.remark).toMatch(/dial ends above 30.00 MHz/);
    // 1 uH at 30 MHz wants 28.1 pF; 20 pF want 1.41 uH
    expect(off(low.missing!.capacitance, 28.145e-12 - 20e-12)).toBeLessThan(1e-3);
    expect(off(low.missing!.inductance!, 0.4072e-6)).toBeLessThan(1e-3);
    const high = dialSetting(plain, 100e6);
    expect(high.remark).toMatch(/dial ends below 100.0 MHz/);
    expect(high.missing!.capacitance).toBeLessThan(0);
    expect(off(high.missing!.inductance!, 0.50661e-6 - 1e-6)).toBeLessThan(1e-3);
  });
  test('what is missing brings the end of the dial there', () => {
    const m = tankModel(tank, false);
    const { missing } = dialSetting(m, 60e6);
    const mended = tankModel({ ...tank, strayCapacitance: tank.strayCapacitance + missing!.capacitance }, false);
    expect(off(tuningRange(mended).lowest!, 60e6)).toBeLessThan(1e-6);
  });
  test('practice: medium wave, 65 turns of 0.4 mm wire on 50 mm with 365 pF cover most of 530 to 1600 kHz', () => {
    // common practice, no source: such a coil has about 200 uH
    const m = tankModel(
      {
        ...tank,
        coil: { ...coil, turns: 65, innerDiameter: 0.05, wireDiameter: 0.0004, pitch: 0.00048 },
        capacitor: { ...airVariable, minimum: 12e-12, maximum: 365e-12 },
        strayCapacitance: 5e-12,
        aerialCoupling: { kind: 'tap', turns: 10 },
        detectorCoupling: { kind: 'tap', turns: 30 },
      },
      false,
    );
    expect(m.inductance).toBeGreaterThan(160e-6);
    expect(m.inductance).toBeLessThan(280e-6);
    const { lowest, highest } = tuningRange(m);
    expect(lowest!).toBeLessThan(6.5e5);
    expect(highest!).toBeGreaterThan(1.6e6);
  });
});
