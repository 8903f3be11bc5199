import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  detectorModel,
  FUNDAMENTAL,
  FUNDAMENTAL_BY_AMPLITUDE,
  FUNDAMENTAL_BY_OUTPUT,
  MEAN,
  MEAN_BY_AMPLITUDE,
  MEAN_BY_OUTPUT,
  saturationCurrentAt,
  thermalVoltage,
} from '#engine';
import { outputInto, SCHOTTKY } from './cycle.ts';

interface SeriesRow {
  readonly Is: number;
  readonly n: number;
  readonly Rs: number;
  readonly A: number;
  readonly V: number;
  readonly mean: number;
  readonly fundamental: number;
}
const values = JSON.parse(readFileSync(new URL('../../reference/detector/values.json', import.meta.url), 'utf8')) as {
  readonly seriesJunction: readonly SeriesRow[];
};
const model = detectorModel(SCHOTTKY);
const slope = 1.05 * thermalVoltage(300);
const out = new Float64Array(6);

test('limit: from nothing up the mean is i″ A²/4 and the fundamental i′ A, to nine figures at 1 uV', () => {
  model.law.at(1e-6, 0, out);
  const conductance = 5e-6 / slope;
  expect(out[MEAN]! / (((conductance / slope) * 1e-12) / 4) - 1).toBeCloseTo(0, 9);
  expect(out[FUNDAMENTAL]! / (conductance * 1e-6) - 1).toBeCloseTo(0, 9);
  for (const amplitude of [1e-9, 1e-7, 1e-5]) {
    model.law.at(amplitude, 0, out);
    expect(out[MEAN]! / (((conductance / slope) * amplitude ** 2) / 4) - 1).toBeLessThan(1e-6);
  }
});
test('limit: no overflow, no NaN at ten thousand times n Vt, whatever the output voltage', () => {
  for (const resistance of [0, 20])
    for (const output of [-1, 0, 1e4 * slope, 9.999e3 * slope, 2e4 * slope]) {
      detectorModel({ ...SCHOTTKY, seriesResistance: resistance }).law.at(1e4 * slope, output, out);
      for (const value of out) expect(Number.isFinite(value), `${resistance} ohm, ${output} V`).toBe(true);
    }
});
test('limit: open circuit, square law at small signals, A - (n Vt/2) ln(2 pi A/(n Vt)) at large ones (reference section 1)', () => {
  expect(outputInto(model.law, 0.02 * slope) / ((0.02 ** 2 * slope) / 4)).toBeCloseTo(1, 3);
  const x = 200;
  expect(outputInto(model.law, x * slope) / slope).toBeCloseTo(x - Math.log(2 * Math.PI * x) / 2, 2);
});
test('limit: RF resistance is the zero-bias resistance at small signals and half the load at large ones', () => {
  const load = 1e5;
  for (const [x, expected, digits] of [
    [0.01, model.zeroBiasResistance, 3],
    [2000, load / 2, 2],
  ] as const) {
    const amplitude = x * slope;
    model.law.at(amplitude, outputInto(model.law, amplitude, load), out);
    expect(amplitude / out[FUNDAMENTAL]! / expected).toBeCloseTo(1, digits);
  }
});
test('limit: a series resistance that goes to nothing gives the exact junction', () => {
  const nearly = detectorModel({ ...SCHOTTKY, seriesResistance: 1e-6 });
  const exact = new Float64Array(6);
  for (const [a, v] of [
    [0.001, 0],
    [0.02, 0.001],
    [0.1, 0.04],
    [0.3, 0.25],
  ] as const) {
    nearly.law.at(a, v, out);
    model.law.at(a, v, exact);
    for (const k of [FUNDAMENTAL, FUNDAMENTAL_BY_AMPLITUDE, FUNDAMENTAL_BY_OUTPUT, MEAN_BY_AMPLITUDE, MEAN_BY_OUTPUT])
      expect(out[k]! / exact[k]! - 1).toBeCloseTo(0, 3);
    expect(Math.abs(out[MEAN]! - exact[MEAN]!)).toBeLessThan(1e-5 * exact[FUNDAMENTAL]!);
  }
});
test('limit: with a large series resistance a hard-driven junction is a switch: mean A/(pi Rs), fundamental A/(2 Rs)', () => {
  const switched = detectorModel({ ...SCHOTTKY, seriesResistance: 1e3 });
  switched.law.at(10, 0, out);
  expect(out[MEAN]! / (10 / Math.PI / 1e3)).toBeCloseTo(1, 1);
  expect(out[FUNDAMENTAL]! / (10 / 2 / 1e3)).toBeCloseTo(1, 1);
});
test('rival: junction with series resistance against scipy quad over a root finder', () => {
  for (const r of values.seriesJunction) {
    const law = detectorModel({ ...SCHOTTKY, saturationCurrent: r.Is, ideality: r.n, seriesResistance: r.Rs }).law;
    law.at(r.A, r.V, out);
    const what = `Is ${r.Is} Rs ${r.Rs} A ${r.A} V ${r.V}`;
    expect(Math.abs(out[FUNDAMENTAL]! / r.fundamental - 1), what).toBeLessThan(2e-6);
    // against the greater of the mean and the current at rest: near balance the mean itself is a small difference
    expect(Math.abs(out[MEAN]! - r.mean), what).toBeLessThan(2e-6 * Math.max(Math.abs(r.mean), Math.abs(law.current(-r.V, r.V))));
  }
});
test('limit: at rest the law is its own current, and zero-bias figures are those of n Vt/Is + Rs', () => {
  const d = { ...SCHOTTKY, seriesResistance: 300 };
  const m = detectorModel(d);
  const junction = slope / 5e-6;
  expect(m.zeroBiasResistance).toBeCloseTo(junction + 300, 6);
  expect(m.currentSensitivity).toBeCloseTo((junction / (junction + 300)) ** 2 / (2 * slope), 9);
  m.law.at(0, 0.01, out);
  expect(out[MEAN]! / m.law.current(-0.01, 0.01)).toBeCloseTo(1, 7);
  m.law.at(1e-5, 0, out);
  expect(out[MEAN]! / (m.currentSensitivity * ((1e-5 * out[FUNDAMENTAL]!) / 2))).toBeCloseTo(1, 5);
});
test('limit: saturation current is as given at its own temperature, and its activation energy is the barrier over n', () => {
  const d = { saturationCurrent: 5e-6, ideality: 1.05, energyGap: 0.69, temperatureExponent: 2, nominalTemperature: 300 };
  expect(saturationCurrentAt(d, 300)).toBe(5e-6);
  // Richardson plot: ln(Is/T^(X/n)) against q/kT is a straight line of slope -Eg/n
  const y = (t: number) => Math.log(saturationCurrentAt(d, t) / t ** (2 / 1.05));
  for (const [t1, t2] of [
    [250, 300],
    [290, 330],
  ] as const)
    expect((y(t2) - y(t1)) / (1 / thermalVoltage(t2) - 1 / thermalVoltage(t1))).toBeCloseTo(-0.69 / 1.05, 10);
});
test('practice: common practice, no source: the reverse current of a silicon junction doubles every 5 to 10 kelvin', () => {
  const d = { saturationCurrent: 1e-14, ideality: 1, energyGap: 1.11, temperatureExponent: 3, nominalTemperature: 300 };
  const doubling = (10 * Math.LN2) / Math.log(saturationCurrentAt(d, 305) / saturationCurrentAt(d, 295));
  expect(doubling).toBeGreaterThan(4);
  expect(doubling).toBeLessThan(10);
});
test('a barrier that is not given, and a temperature far from the nominal one, earn a remark', () => {
  expect(model.remarks).toEqual([]);
  expect(detectorModel({ ...SCHOTTKY, temperature: 260 }).remarks[0]).toMatch(/no barrier/);
  expect(detectorModel({ ...SCHOTTKY, temperature: 260, energyGap: 0.69 }).remarks).toEqual([]);
});
test('property: mean rises with amplitude and falls with output voltage, fundamental rises with amplitude', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -6, max: 0.5, noNaN: true }),
      fc.double({ min: -0.5, max: 1.2, noNaN: true }),
      fc.constantFrom(0, 5, 500),
      (decade, share, seriesResistance) => {
        const amplitude = 10 ** decade;
        detectorModel({ ...SCHOTTKY, seriesResistance }).law.at(amplitude, share * amplitude, out);
        expect(out[MEAN_BY_AMPLITUDE]!).toBeGreaterThan(0);
        expect(out[MEAN_BY_OUTPUT]!).toBeLessThan(0);
        expect(out[FUNDAMENTAL_BY_AMPLITUDE]!).toBeGreaterThan(0);
        expect(out[FUNDAMENTAL]!).toBeGreaterThan(0);
      },
    ),
  );
});
