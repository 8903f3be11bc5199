import { expect, test } from 'vitest';
import { detectorModel, FUNDAMENTAL, GivenError, MEAN } from '#engine';
import { AVERAGES } from '../../../src/engine/detector/cycle-average.ts';
import { MeasuredLaw } from '../../../src/engine/detector/measured-law.ts';
import { bruteAverage, measured, outputInto, SCHOTTKY } from './cycle.ts';

const out = new Float64Array(6);
const exact = detectorModel({ ...SCHOTTKY, ideality: 0.0271 / 0.025851999 });

test('rival: a junction read every 5 mV answers as the junction itself: zero-bias figures 1 %, output 1 % at any level', () => {
  const table = detectorModel(measured(0.005));
  expect(table.zeroBiasResistance / exact.zeroBiasResistance).toBeCloseTo(1, 2);
  expect(table.currentSensitivity / exact.currentSensitivity).toBeCloseTo(1, 2);
  for (const a of [1e-4, 0.003, 0.02, 0.1])
    for (const load of [2e3, 1e5]) expect(outputInto(table.law, a, load) / outputInto(exact.law, a, load)).toBeCloseTo(1, 2);
});
test('rival: the same without a row at 0 V: the point (0 V, 0 A) is put in', () => {
  const full = measured(0.01);
  const keep = full.voltage.map((v) => v !== 0);
  const without = detectorModel({
    ...full,
    voltage: full.voltage.filter((_, k) => keep[k]),
    current: full.current.filter((_, k) => keep[k]),
  });
  const table = detectorModel(full);
  expect(without.law.current(0, 0)).toBe(0);
  expect(without.zeroBiasResistance).toBeCloseTo(table.zeroBiasResistance, 6);
});
test('limit: the law passes through every row and goes on straight beyond both ends', () => {
  const d = measured(0.02);
  const { law } = detectorModel(d);
  d.voltage.forEach((v, k) => {
    expect(law.current(v, 0)).toBeCloseTo(d.current[k]!, 18);
  });
  const end = d.voltage.at(-1)!;
  const slope = law.current(end + 1, 0) - law.current(end, 0);
  expect(law.current(end + 3, 0) - law.current(end, 0)).toBeCloseTo(3 * slope, 12);
});
test('limit: a straight table is a resistor: no mean, fundamental A/R', () => {
  const voltage = [-0.5, -0.1, 0, 0.2, 0.3, 0.6];
  const { law, currentSensitivity } = detectorModel({ ...measured(0.1), voltage, current: voltage.map((v) => v / 1000) });
  expect(Math.abs(currentSensitivity)).toBeLessThan(1e-9);
  for (const a of [1e-3, 0.05, 0.4, 3]) {
    law.at(a, 0.01, out);
    expect(out[MEAN]!).toBeCloseTo(-1e-5, 12);
    expect(out[FUNDAMENTAL]!).toBeCloseTo(a / 1000, 12);
  }
});
test('limit: a corner at zero is an ideal rectifier: mean A/(pi R), fundamental A/(2 R)', () => {
  const voltage = [-1, -0.5, -1e-3, 0, 1e-3, 0.5, 1];
  const { law } = detectorModel({ ...measured(0.1), voltage, current: voltage.map((v) => (v > 0 ? v / 1000 : v / 1e9)) });
  for (const a of [0.2, 0.9, 5]) {
    law.at(a, 0, out);
    expect(out[MEAN]! / (a / Math.PI / 1000)).toBeCloseTo(1, 2);
    expect(out[FUNDAMENTAL]! / (a / 2000)).toBeCloseTo(1, 2);
  }
});
test('rival: a rough table of uneven steps against brute force, rows crossed by the dozen', () => {
  const voltage = [-0.4, -0.35, -0.2, -0.11, -0.06, -0.03, -0.012, 0, 0.004, 0.02, 0.021, 0.05, 0.09, 0.16, 0.3];
  const current = [-9e-6, -8e-6, -7.9e-6, -7e-6, -5e-6, -4e-6, -2e-6, 0, 1e-6, 9e-6, 9e-6, 4e-5, 2e-4, 2e-3, 1e-2];
  const { law } = detectorModel({ ...measured(0.1), voltage, current });
  for (const a of [0.002, 0.01, 0.03, 0.1, 0.35, 1])
    for (const v of [-0.01, 0, 0.3 * a, 0.8 * a]) {
      const brute = bruteAverage(law, a, v, 16384);
      law.at(a, v, out);
      const size = Math.abs(brute.mean - law.current(-v, v)) + Math.abs(law.current(-v, v));
      expect(Math.abs(out[MEAN]! - brute.mean) / size, `A ${a} V ${v}`).toBeLessThan(1e-4);
      expect(out[FUNDAMENTAL]! / brute.fundamental, `A ${a} V ${v}`).toBeCloseTo(1, 4);
    }
});
test('remarks: coarse steps about zero, and a swing that leaves the table', () => {
  expect(detectorModel(measured(0.05)).remarks[0]).toMatch(/steps by 50 mV/);
  const fine = detectorModel(measured(0.01));
  expect(fine.remarks).toEqual([]);
  expect(fine.remarkAt(0.1, 0.02)).toBeNull();
  expect(fine.remarkAt(0.25, 0.02)).toMatch(/leaves the measured law/);
  expect(fine.remarkAt(0.2, 0.15)).toMatch(/leaves the measured law/);
});

const good = { voltage: [-0.2, -0.1, 0, 0.1, 0.2], current: [-3e-6, -2e-6, 0, 1e-5, 1e-4] };
test.each([
  ['too few rows', { voltage: [-0.1, 0, 0.1, 0.2], current: [-1e-6, 0, 1e-6, 3e-6] }, /4 rows/],
  ['a current missing', { ...good, current: good.current.slice(1) }, /4 values/],
  ['not ascending', { ...good, voltage: [-0.2, -0.1, 0, 0.2, 0.1] }, /row 5/],
  ['twice the same voltage', { ...good, voltage: [-0.2, -0.1, 0, 0.1, 0.1] }, /row 5/],
  ['falling current', { ...good, current: [-3e-6, -2e-6, 0, 1e-4, 1e-5] }, /row 5/],
  ['no reverse rows', { voltage: [0, 0.1, 0.2, 0.3, 0.4], current: [0, 1e-6, 2e-6, 3e-6, 4e-6] }, /both sides of 0 V/],
  ['an offset at zero', { ...good, current: [-3e-6, -2e-6, 1e-9, 1e-5, 1e-4] }, /row 3/],
  ['a row that delivers power', { ...good, current: [-3e-6, 1e-7, 1e-7, 1e-5, 1e-4] }, /row 2/],
  ['flat about zero', { ...good, current: [-3e-6, 0, 0, 1e-5, 1e-4] }, /flat about 0 V \(rows 2 to 4\)/],
  ['not a number', { ...good, current: [-3e-6, Number.NaN, 0, 1e-5, 1e-4] }, /row 2 is not a number/],
] as const)('a table with %s is refused with its row', (_, table, message) => {
  expect(() => detectorModel({ ...measured(0.1), ...table })).toThrow(GivenError);
  expect(() => detectorModel({ ...measured(0.1), ...table })).toThrow(message);
});

test('limit: readings within the last digits of one voltage are as one reading, at any swing', () => {
  const voltage = [-0.3, -0.005, 0, 0.005, 0.02, 0.3];
  const current = [-1e-8, -1.8e-9, 0, 2.1e-9, 1.1e-8, 1e-3];
  // three more readings beside two of them, one unit of the last digit apart and the current along the same slope
  const near = (v: number, k: number): number => v + k * 2 ** -60;
  const crowded = new MeasuredLaw(
    [-0.3, near(-0.005, -2), -0.005, 0, 0.005, near(0.005, 1), near(0.005, 3), 0.02, 0.3],
    [-1e-8, -1.8e-9 - 1e-24, -1.8e-9, 0, 2.1e-9, 2.1e-9 + 5e-25, 2.1e-9 + 1e-24, 1.1e-8, 1e-3],
  );
  const [a, b] = [new Float64Array(AVERAGES), new Float64Array(AVERAGES)];
  for (const amplitude of [1e-3, 0.01, 0.1, 0.25])
    for (const output of [-0.002, 0, 0.01]) {
      crowded.average(amplitude, output, a);
      // slopes at the crowded places differ a little: what must not happen is noise, so the law itself is averaged by brute force
      let [mean, fundamental] = [0, 0];
      const N = 20_000;
      for (let k = 0; k < N; k++) {
        const w = (Math.PI * (k + 0.5)) / N;
        const i = crowded.current(amplitude * Math.cos(w) - output);
        mean += i / N;
        fundamental += (2 * i * Math.cos(w)) / N;
      }
      expect(Math.abs(a[MEAN]! - mean)).toBeLessThan(1e-6 * Math.abs(fundamental) + 1e-16);
      expect(Math.abs(a[FUNDAMENTAL]! - fundamental)).toBeLessThan(1e-6 * Math.abs(fundamental));
    }
  new MeasuredLaw(voltage, current).average(0.01, 0, b);
  crowded.average(0.01, 0, a);
  expect(Math.abs(a[FUNDAMENTAL]! / b[FUNDAMENTAL]! - 1)).toBeLessThan(0.1);
});
