import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Arrival, aerialModel, C, ETA0, type SeparateAerial, SPEED_OF_LIGHT } from '#engine';

const FRONT: Arrival = { azimuth: 1, elevation: 0 };
type Given = Extract<SeparateAerial, { kind: 'electrical' }>;
const beam: Given = {
  kind: 'electrical',
  impedance: [
    { frequency: 88e6, resistance: 20, reactance: -30 },
    { frequency: 98e6, resistance: 40, reactance: 10 },
    { frequency: 108e6, resistance: 30, reactance: 60 },
  ],
  gain: 7,
  orientation: { kind: 'horizontal', broadside: 1 },
  frontToBack: 14,
};

describe('aerial by given values', () => {
  test('identity: available power is exactly E^2/eta lambda^2 G/(4 pi), whatever impedance, gain and frequency', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 5e3, noNaN: true }),
        fc.double({ min: -5e3, max: 5e3, noNaN: true }),
        fc.double({ min: -40, max: 18, noNaN: true }),
        fc.double({ min: 1e5, max: 1e9, noNaN: true }),
        (resistance, reactance, gain, frequency) => {
          const model = aerialModel({ ...beam, impedance: [{ frequency: 1e8, resistance, reactance }], gain });
          const a = model.at(frequency, FRONT);
          const field = 3e-4;
          const power = (field * C.abs(a.horizontal)) ** 2 / (4 * a.impedance.re);
          const wavelength = SPEED_OF_LIGHT / frequency;
          expect(power / ((((field * field) / ETA0) * wavelength ** 2 * 10 ** (gain / 10)) / (4 * Math.PI))).toBeCloseTo(1, 10);
        },
      ),
    );
  });
  test('impedance is read linearly between its points, held outside with a remark', () => {
    const model = aerialModel(beam);
    const z = model.at(93e6, FRONT).impedance;
    expect(z.re).toBeCloseTo(30, 12);
    expect(z.im).toBeCloseTo(-10, 12);
    expect(model.at(120e6, FRONT).impedance).toEqual({ re: 30, im: 60 });
    expect(model.remarks(93e6)).toEqual([]);
    expect(model.remarks(120e6)).toHaveLength(1);
  });
  test('front to back in dB, smooth between, and a figure of eight without it', () => {
    const level = (model: ReturnType<typeof aerialModel>, azimuth: number) => C.abs(model.at(98e6, { azimuth, elevation: 0 }).horizontal);
    const model = aerialModel(beam);
    expect(20 * Math.log10(level(model, 1) / level(model, 1 + Math.PI))).toBeCloseTo(14, 10);
    expect(level(model, 1 + Math.PI / 2)).toBeCloseTo(0, 12);
    let before = level(model, 1);
    for (let a = 0.05; a <= Math.PI / 2; a += 0.05) {
      const now = level(model, 1 + a);
      expect(now).toBeLessThan(before);
      before = now;
    }
    const eight = aerialModel({ ...beam, frontToBack: 0 });
    for (const a of [0, 0.5, 1.2]) expect(level(eight, 1 + a)).toBeCloseTo(level(eight, 1 + Math.PI - a), 10);
    expect(level(eight, 1 + Math.PI / 3) / level(eight, 1)).toBeCloseTo(0.5, 10);
  });
  test('an upright one hears all round, by the vertical field alone; effective length as given', () => {
    const { gain, ...rest } = beam;
    expect(gain).toBe(7);
    const model = aerialModel({ ...rest, effectiveLength: 0.8, orientation: { kind: 'vertical' }, frontToBack: 0 });
    for (const azimuth of [0, 2, 4]) {
      const a = model.at(98e6, { azimuth, elevation: 0 });
      expect(a.vertical.re).toBeCloseTo(0.8, 12);
      expect(C.abs(a.horizontal)).toBeCloseTo(0, 12);
    }
    expect(model.at(98e6, { azimuth: 0, elevation: Math.PI / 3 }).vertical.re).toBeCloseTo(0.4, 12);
  });
  test('values no aerial can have are remarked upon', () => {
    const { gain, ...rest } = beam;
    expect(gain).toBe(7);
    const model = aerialModel({ ...rest, impedance: [{ frequency: 1e8, resistance: 0.01, reactance: 0 }], effectiveLength: 1 });
    expect(model.remarks(1e8).join()).toContain('20 dB');
  });
});
