import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { detectorModel, OperatingPoint, TwoCarriers } from '#engine';

/**
 * rival: the envelope of both carriers followed through their whole beat, mixing products and all, by SciPy.
 * Source: tests/reference/two-carriers/make.py and its output cases.json.
 */
interface Case {
  name: string;
  resistance: number;
  q: number;
  load: number;
  first: number;
  second: number;
  offsets: [number, number];
  result: { output: number; outputAlone: number; first: number; second: number; leak: number; hush: number };
}
const { cases, junction } = JSON.parse(readFileSync(new URL('../../reference/two-carriers/cases.json', import.meta.url), 'utf8')) as {
  cases: Case[];
  junction: { saturationCurrent: number; ideality: number; temperature: number };
};
const { law, zeroBiasResistance } = detectorModel({
  kind: 'junction',
  seriesResistance: 0,
  junctionCapacitance: 0,
  nominalTemperature: junction.temperature,
  ...junction,
});

/** A carrier of so many volts at resonance through the tank of a case, at an offset from its resonance [Hz]. */
function source(c: Case, volts: number, offset: number) {
  const g = 1 / c.resistance;
  const b = (2 * c.q * g * offset) / 98e6;
  const y2 = g * g + b * b;
  return { amplitude: (volts * g) / Math.sqrt(y2), zRe: g / y2, zIm: -b / y2 };
}
const misfit = (s: ReturnType<typeof source>, a: number, i: number) => Math.hypot(a + s.zRe * i, s.zIm * i) - s.amplitude;

function balance(c: Case) {
  const [one, two] = [source(c, c.first, c.offsets[0]), source(c, c.second, c.offsets[1])];
  const point = new OperatingPoint(law);
  // output of the first carrier alone, by halving
  let [low, high] = [0, c.first];
  for (let k = 0; k < 80; k++) {
    const v = (low + high) / 2;
    point.solve(one.amplitude, one.zRe, one.zIm, v, one.amplitude);
    if (v < c.load * point.current) low = v;
    else high = v;
  }
  const rest = { amplitude: point.amplitude, output: low, current: low / c.load, radioConductance: point.fundamental / point.amplitude };
  const both = new TwoCarriers(law);
  both.solve(one, two, rest, c.load);
  const step = 2e3;
  const slope = (volts: number, at: number, a: number, i: number) =>
    (misfit(source(c, volts, at + step), a, i) - misfit(source(c, volts, at - step), a, i)) / (2 * step);
  const ours = both.answer(slope(c.first, c.offsets[0], both.first, both.firstCurrent), 0);
  const theirs = both.answer(0, slope(c.second, c.offsets[1], both.second, both.secondCurrent));
  const single = (shift: number) => {
    const s = source(c, c.first, c.offsets[0] + shift);
    point.solve(s.amplitude, s.zRe, s.zIm, rest.output, s.amplitude);
    return point.current;
  };
  const alone = (single(step) - single(-step)) / (2 * step);
  return {
    both,
    rest,
    leak: 20 * Math.log10(Math.abs(theirs / ours)),
    hush: 20 * Math.log10(Math.abs(ours / alone)),
  };
}

describe('two carriers on one detector', () => {
  for (const c of cases) {
    // mixing products are left out: they meet the tank where the detector, no longer in square law, damps it as much as the source does
    const held = c.name.startsWith('square law') || c.resistance * balance(c).rest.radioConductance < 0.3;
    test(`rival: the whole beat, ${c.name}: ${held ? 'amplitudes 2 %, output 1.5 %, leak 1.2 dB, hush 0.5 dB' : 'output 8 %, leak 2.5 dB, hush 2 dB'}`, () => {
      const { both, rest, leak, hush } = balance(c);
      expect(both.settled).toBe(true);
      expect(Math.abs(rest.output / c.result.outputAlone - 1)).toBeLessThan(1e-3);
      expect(Math.abs(both.output / c.result.output - 1)).toBeLessThan(held ? 0.015 : 0.08);
      expect(Math.abs(leak - c.result.leak)).toBeLessThan(held ? 1.2 : 2.5);
      expect(Math.abs(hush - c.result.hush)).toBeLessThan(held ? 0.5 : 2);
      if (!held) return;
      expect(Math.abs(both.first / c.result.first - 1)).toBeLessThan(0.02);
      expect(Math.abs(both.second / c.result.second - 1)).toBeLessThan(0.02);
    });
  }

  test('limit: square law, both sound side by side: nothing is hushed, and what each gives is its amplitude squared times its slope', () => {
    const c = cases.find((x) => x.name === 'square law, source-damped')!;
    const { both, leak, hush } = balance(c);
    expect(Math.abs(hush)).toBeLessThan(0.01);
    // relative slope of a tank of conductance G + g at detuning b: -b b' / ((G + g)^2 + b^2)
    const g = 1 / c.resistance + 1 / zeroBiasResistance;
    const relative = (offset: number) => {
      const b = (2 * c.q * offset) / (98e6 * c.resistance);
      return b / (g * g + b * b);
    };
    const expected = (both.second ** 2 * relative(c.offsets[1])) / (both.first ** 2 * relative(c.offsets[0]));
    expect(leak).toBeCloseTo(20 * Math.log10(expected), 1);
  });

  test('limit: a second carrier that vanishes leaves the first as it was', () => {
    for (const c of cases) {
      const { both, rest, hush } = balance({ ...c, second: 1e-9 * c.first });
      expect(both.first / rest.amplitude).toBeCloseTo(1, 8);
      expect(both.output / rest.output).toBeCloseTo(1, 8);
      expect(Math.abs(hush)).toBeLessThan(1e-3);
    }
  });

  test('identity: which of the two is called first does not matter, once each is the rest of nothing', () => {
    const c = cases.find((x) => x.name === 'peak detector, equal neighbour')!;
    const [one, two] = [source(c, c.first, c.offsets[0]), source(c, c.second, c.offsets[1])];
    const nothing = { amplitude: 1e-3, output: 0, current: 0, radioConductance: 1 / zeroBiasResistance };
    const [a, b] = [new TwoCarriers(law), new TwoCarriers(law)];
    a.solve(one, two, nothing, c.load);
    b.solve(two, one, nothing, c.load);
    expect(a.settled && b.settled).toBe(true);
    expect(a.first / b.second).toBeCloseTo(1, 8);
    expect(a.output / b.output).toBeCloseTo(1, 8);
  });
});
