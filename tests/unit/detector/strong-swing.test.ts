import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  detectorModel,
  FUNDAMENTAL,
  FUNDAMENTAL_BY_AMPLITUDE,
  FUNDAMENTAL_BY_OUTPUT,
  MEAN,
  MEAN_BY_AMPLITUDE,
  MEAN_BY_OUTPUT,
  thermalVoltage,
} from '#engine';
import { junctionGrid } from '../../../src/engine/detector/average-grid.ts';
import { SmoothAverage } from '../../../src/engine/detector/cycle-average.ts';
import { SeriesJunctionLaw } from '../../../src/engine/detector/series-junction-law.ts';
import { TabulatedAverage } from '../../../src/engine/detector/tabulated-average.ts';
import { bruteAverage, EVERY_LAW, SCHOTTKY } from './cycle.ts';

/** Points of the brute sum: the law bends within pi (n Vt/A) of phase, 1e-3 at 100 V, and the midpoint rule needs some ten points to that. */
const POINTS = 16384;
/** Without resistance a junction has its averages in closed form, and 1e80 A to average at 5 V. */
const LAWS = Object.entries({ ...EVERY_LAW, 'junction with 100 kohm': { ...SCHOTTKY, seriesResistance: 1e5 } }).filter(
  ([name]) => name !== 'junction',
);
/** 1 V to 100 V; output from 0 to the peak, or within half a volt of it, as a load of megohms holds it */
const swing = fc.tuple(fc.double({ min: 0, max: 2, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), fc.boolean());
const at = ([decade, share, near]: [number, number, boolean]): [number, number] => {
  const amplitude = 10 ** decade;
  return [amplitude, near ? amplitude - 0.5 * share : share * amplitude];
};
const out = new Float64Array(6);

describe.each(LAWS)('%s, 1 V to 100 V', (_, description) => {
  const { law } = detectorModel(description);

  test('rival: mean and fundamental against 16384 points of the law itself, 1e-4', () => {
    fc.assert(
      fc.property(swing, (s) => {
        const [amplitude, output] = at(s);
        const brute = bruteAverage(law, amplitude, output, POINTS);
        law.at(amplitude, output, out);
        const rest = law.current(-output, output);
        const size = Math.abs(rest) + Math.abs(brute.mean - rest);
        const noise = 1e-13 * (Math.abs(law.current(amplitude - output, output)) + Math.abs(law.current(-amplitude - output, output)));
        expect(Math.abs(out[MEAN]! - brute.mean)).toBeLessThan(1e-4 * size + noise);
        expect(Math.abs(out[FUNDAMENTAL]! - brute.fundamental)).toBeLessThan(1e-4 * Math.abs(brute.fundamental) + noise);
      }),
      { numRuns: 25 },
    );
  });
  test('identity: along any line the values change by what their derivatives say, without a step where cells join', () => {
    fc.assert(
      fc.property(swing, fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), (s, direction) => {
        const [amplitude, output] = at(s);
        const dA = 1e-3 * Math.cos(direction);
        const dV = 1e-3 * Math.sin(direction);
        const steps = 50;
        let gained = [0, 0];
        let sizes = [0, 0];
        let before: readonly [number, number] | undefined;
        const ends: [number, number][] = [];
        for (let k = 0; k <= steps; k++) {
          law.at(amplitude + (k * dA) / steps, output + (k * dV) / steps, out);
          const slope = [
            out[MEAN_BY_AMPLITUDE]! * dA + out[MEAN_BY_OUTPUT]! * dV,
            out[FUNDAMENTAL_BY_AMPLITUDE]! * dA + out[FUNDAMENTAL_BY_OUTPUT]! * dV,
          ] as const;
          if (before) gained = gained.map((g, i) => g + (before![i]! + slope[i]!) / 2 / steps);
          sizes = sizes.map((size, i) => size + Math.abs(slope[i]!) / steps);
          if (k === 0 || k === steps) ends.push([out[MEAN]!, out[FUNDAMENTAL]!]);
          before = slope;
        }
        for (const i of [0, 1]) {
          // a table's averages turn within the millivolt, and a cell that was given up joins its neighbours to 1e-5 only
          const value = Math.abs(ends[0]![i]!) + Math.abs(law.current(-output, output));
          expect(Math.abs(ends[1]![i]! - ends[0]![i]! - gained[i]!)).toBeLessThan(2e-3 * sizes[i]! + 2e-5 * value);
        }
      }),
      { numRuns: 60 },
    );
  });
});

test('limit: a strong swing into a resistance conducts as a switch does, over the angle phi at which it passes the output and the drop', () => {
  // i = (A cos(wt) - V - drop)/Rs while that is above zero: mean A/(pi Rs) (sin phi - phi cos phi), fundamental A/(pi Rs) (phi - sin phi cos phi)
  const resistance = 2e4;
  const { law } = detectorModel({ ...SCHOTTKY, saturationCurrent: 1e-9, seriesResistance: resistance });
  const slope = 1.05 * thermalVoltage(300);
  for (const amplitude of [20, 50, 100])
    for (const share of [0, 0.4, 0.8]) {
      const output = share * amplitude;
      // the junction's own drop at the mean of what flows
      const drop = slope * Math.log1p((0.6 * (amplitude - output)) / resistance / 1e-9);
      const phi = Math.acos((output + drop) / amplitude);
      law.at(amplitude, output, out);
      const unit = amplitude / Math.PI / resistance;
      expect(out[MEAN]! / (unit * (Math.sin(phi) - phi * Math.cos(phi)))).toBeCloseTo(1, 2);
      expect(out[FUNDAMENTAL]! / (unit * (phi - Math.sin(phi) * Math.cos(phi)))).toBeCloseTo(1, 2);
    }
});
test('limit: below its bend the junction with resistance is the junction without, at 1 V to 100 V', () => {
  const dressed = detectorModel({ ...SCHOTTKY, saturationCurrent: 1e-9, seriesResistance: 1 }).law;
  const bare = detectorModel({ ...SCHOTTKY, saturationCurrent: 1e-9 }).law;
  const exact = new Float64Array(6);
  for (const amplitude of [1, 7, 30, 100])
    for (const above of [-0.1, 0, 0.3, 3]) {
      dressed.at(amplitude, amplitude + above, out);
      bare.at(amplitude, amplitude + above, exact);
      // what the resistance takes is of the order of i Rs/(n Vt)
      expect(Math.abs(out[FUNDAMENTAL]! / exact[FUNDAMENTAL]! - 1)).toBeLessThan(1e-5);
      expect(Math.abs(out[MEAN]! - exact[MEAN]!)).toBeLessThan(1e-5 * (Math.abs(exact[MEAN]!) + 1e-9));
    }
});
test('5000 swings of a modulated station take some hundred cycle averages at first, and none when they come again', () => {
  const law = new SeriesJunctionLaw(5e-6, 1.05 * thermalVoltage(300), 20);
  const direct = new SmoothAverage(law);
  for (const [middle, most] of [
    [0.1, 300],
    [5, 600],
    [80, 1500],
  ] as const) {
    let taken = 0;
    const table = new TabulatedAverage(
      {
        floor: direct.floor,
        average: (a, v, o) => {
          taken++;
          direct.average(a, v, o);
        },
        rest: (v, o) => direct.rest(v, o),
      },
      law.outputScale,
      junctionGrid(law),
    );
    const pass = () => {
      for (let k = 0; k < 5000; k++) {
        const amplitude = middle * (1 + 0.1 * Math.sin(0.37 * k));
        table.at(amplitude, 0.95 * middle + 0.02 * middle * Math.sin(0.37 * k + 0.5), out);
      }
    };
    pass();
    expect(taken).toBeGreaterThan(0);
    expect(taken).toBeLessThan(most);
    taken = 0;
    pass();
    expect(taken).toBe(0);
  }
});
test('a remark where the reverse swing passes 5 V', () => {
  const { remarkAt } = detectorModel(SCHOTTKY);
  expect(remarkAt(2.4, 2.4)).toBeNull();
  expect(remarkAt(2.6, 2.5)).toMatch(/break down/);
});
