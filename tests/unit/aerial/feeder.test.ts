import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type AerialModel,
  type Arrival,
  aerialModel,
  C,
  type Complex,
  type Feeder,
  SPEED_OF_LIGHT,
  throughFeeder,
  withFeeder,
} from '#engine';

const LEVEL: Arrival = { azimuth: 0, elevation: 0 };
const coax: Feeder = { length: 12, impedance: 75, velocityFactor: 0.66, loss: 0.08, lossFrequency: 100e6 };
const source = (resistance: number, reactance: number, lossy = 0): AerialModel => ({
  method: 'test source',
  source: 'test',
  at: () => ({ impedance: { re: resistance, im: reactance }, horizontal: C.ONE, vertical: C.ZERO, lossResistance: lossy }),
  remarks: () => [],
  figures: () => [],
});
const positive = fc.double({ min: 0.1, max: 3000, noNaN: true });
const any = fc.double({ min: -3000, max: 3000, noNaN: true });
const available = (v: number, z: Complex) => (v * v) / (4 * z.re);

describe('feeder', () => {
  test('limit: no length is no change', () => {
    fc.assert(
      fc.property(positive, any, (r, x) => {
        const a = withFeeder(source(r, x, r / 3), { ...coax, length: 0 }).at(1e8, LEVEL);
        expect(C.abs(C.sub(a.impedance, { re: r, im: x }))).toBeLessThan(1e-9 * (1 + Math.hypot(r, x)) * (1 + Math.hypot(r, x) / r));
        expect(C.abs(C.sub(a.horizontal, C.ONE))).toBeLessThan(1e-9);
        expect(a.lossResistance / (r / 3)).toBeCloseTo(1, 6);
      }),
    );
  });
  test('limit: matched, it loses exactly its loss, growing as the root of frequency, and only turns the phase', () => {
    for (const f of [25e6, 100e6, 400e6]) {
      const line = throughFeeder({ re: 75, im: 0 }, coax, f);
      const loss = 12 * 0.08 * Math.sqrt(f / 100e6);
      expect(line.loss).toBeCloseTo(loss, 12);
      expect(line.impedance.re).toBeCloseTo(75, 12);
      expect(C.abs(line.transfer)).toBeCloseTo(10 ** (-loss / 20), 12);
      const turns = (12 * f) / (0.66 * SPEED_OF_LIGHT);
      expect(Math.cos(C.arg(line.transfer))).toBeCloseTo(Math.cos(2 * Math.PI * turns), 9);
    }
  });
  test('limit: loss-free, no available power is lost and a quarter wave turns Z into Z0^2/Z', () => {
    fc.assert(
      fc.property(positive, any, fc.double({ min: 0, max: 50, noNaN: true }), (r, x, length) => {
        const line = throughFeeder({ re: r, im: x }, { ...coax, loss: 0, length }, 1e8);
        expect(Math.abs(line.loss)).toBeLessThan(1e-6);
        const quarter = (0.66 * SPEED_OF_LIGHT) / 1e8 / 4;
        const turned = throughFeeder({ re: r, im: x }, { ...coax, loss: 0, length: quarter }, 1e8).impedance;
        const expected = C.div(C.complex(75 * 75), { re: r, im: x });
        expect(C.abs(C.sub(turned, expected))).toBeLessThan(1e-6 * (1 + C.abs(expected)));
      }),
    );
  });
  test('rival: the same line by its chain matrix, and the power balance of every load', () => {
    fc.assert(
      fc.property(positive, any, positive, any, fc.double({ min: 0, max: 60, noNaN: true }), (r, x, loadR, loadX, length) => {
        const feeder = { ...coax, length };
        const line = throughFeeder({ re: r, im: x }, feeder, 1e8);
        const alpha = (0.08 * length * Math.LN10) / 20;
        const beta = (2 * Math.PI * 1e8 * length) / (0.66 * SPEED_OF_LIGHT);
        const cosh = { re: Math.cosh(alpha) * Math.cos(beta), im: Math.sinh(alpha) * Math.sin(beta) };
        const sinh = { re: Math.sinh(alpha) * Math.cos(beta), im: Math.cosh(alpha) * Math.sin(beta) };
        // voltage and current at the load, going back through the matrix to the source
        const load = { re: loadR, im: loadX };
        const current = C.div(line.transfer, C.add(line.impedance, load));
        const voltage = C.mul(current, load);
        const nearV = C.add(C.mul(cosh, voltage), C.scale(C.mul(sinh, current), 75));
        const nearI = C.add(C.scale(C.mul(sinh, voltage), 1 / 75), C.mul(cosh, current));
        // the source drives exactly that: 1 V = V + I Z
        const emf = C.add(nearV, C.mul(nearI, { re: r, im: x }));
        expect(C.abs(C.sub(emf, C.ONE))).toBeLessThan(1e-8);
        const into = nearV.re * nearI.re + nearV.im * nearI.im;
        const out = voltage.re * current.re + voltage.im * current.im;
        expect(into).toBeGreaterThanOrEqual(out - 1e-12);
        expect(out).toBeLessThanOrEqual(available(1, { re: r, im: x }) * (1 + 1e-9));
      }),
    );
  });
  test('identity: efficiencies multiply: radiated share behind the line is that before it times the gain of the line', () => {
    fc.assert(
      fc.property(positive, any, fc.double({ min: 0, max: 1, noNaN: true }), (r, x, share) => {
        const line = throughFeeder({ re: r, im: x }, coax, 1e8);
        const a = withFeeder(source(r, x, share * r), coax).at(1e8, LEVEL);
        const radiated = (a.impedance.re - a.lossResistance) / a.impedance.re;
        expect(radiated).toBeCloseTo((1 - share) * 10 ** (-line.loss / 10), 9);
        expect(line.loss).toBeGreaterThan(-1e-9);
      }),
    );
  });
  test('limit: a very long line shows its own impedance, whatever hangs on it, and no overflow', () => {
    for (const length of [5e3, 1e7]) {
      const a = withFeeder(source(3, -800), { ...coax, length }).at(1e8, LEVEL);
      expect(a.impedance.re).toBeCloseTo(75, 6);
      expect(Number.isFinite(a.lossResistance)).toBe(true);
      expect(C.abs(a.horizontal)).toBeLessThan(1e-15);
      const figures = withFeeder(source(3, -800), { ...coax, length }).figures(1e8, LEVEL);
      for (const f of figures) expect(f.value === null || Number.isFinite(f.value), f.name).toBe(true);
    }
  });
  test('published: total loss of a mismatched line, 10 log10[(a^2 - r^2) / (a (1 - r^2))], a the matched loss as a power ratio (handbooks, from memory)', () => {
    // 3 dB with a standing wave of 3 at the aerial: r = 1/2, 0.97 dB more
    const feeder = { ...coax, length: 1, loss: 3 };
    const { loss } = throughFeeder({ re: 225, im: 0 }, feeder, 1e8);
    const a = 10 ** 0.3;
    expect(loss).toBeCloseTo(10 * Math.log10((a * a - 0.25) / (a * 0.75)), 9);
    expect(loss - 3).toBeCloseTo(0.97, 2);
  });
  test('figures of the aerial itself stay, those of the end of the feeder join, names all different', () => {
    const model = aerialModel({
      kind: 'dipole',
      length: 1.5,
      diameter: 0.01,
      metal: 'copper',
      orientation: { kind: 'vertical' },
      feeder: coax,
    });
    const names = model.figures(100e6, LEVEL).map((f) => f.name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of ['aerial.resistance', 'aerial.feeder.loss', 'aerial.feeder.reflection', 'aerial.feeder.end.resistance'])
      expect(names).toContain(name);
    expect(model.remarks(100e6)).toEqual([]);
    expect(model.remarks(0.9e6).join()).toContain('ten times');
  });
});
