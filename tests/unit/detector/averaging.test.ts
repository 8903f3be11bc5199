import fc from 'fast-check';
import { expect, test } from 'vitest';
import { AVERAGES, SmoothAverage } from '../../../src/engine/detector/cycle-average.ts';
import { GradedGrid } from '../../../src/engine/detector/graded-grid.ts';
import { gradedPanels } from '../../../src/engine/detector/graded-panels.ts';
import { MeasuredLaw } from '../../../src/engine/detector/measured-law.ts';
import { SeriesJunctionLaw } from '../../../src/engine/detector/series-junction-law.ts';
import { measured } from './cycle.ts';

test('panels cover the interval, start at two widths and grow no faster than threefold away from each bend', () => {
  const bend = fc.tuple(fc.integer({ min: 1, max: 99 }), fc.double({ min: -5, max: 0, noNaN: true }));
  fc.assert(
    fc.property(fc.uniqueArray(bend, { minLength: 1, maxLength: 4, selector: ([place]) => place }), (bends) => {
      const inside = bends.map(([place, decade]) => [place / 100, 10 ** decade] as const).sort((a, b) => a[0] - b[0]);
      const points = [[0, Number.POSITIVE_INFINITY], ...inside, [1, Number.POSITIVE_INFINITY]] as const;
      const edges = new Float64Array(400);
      const n = gradedPanels(
        Float64Array.from(points, (p) => p[0]),
        Float64Array.from(points, (p) => p[1]),
        points.length,
        edges,
      );
      expect(edges[0]).toBe(0);
      expect(edges[n - 1]).toBe(1);
      for (const [p] of inside) expect(edges.subarray(0, n)).toContain(p);
      for (let k = 0; k + 1 < n; k++) {
        const [from, to] = [edges[k]!, edges[k + 1]!];
        expect(to).toBeGreaterThan(from);
        for (const next of [inside.findLast(([p]) => p <= from), inside.find(([p]) => p >= to)]) {
          if (!next) continue;
          const distance = next[0] <= from ? from - next[0] : next[0] - to;
          expect(to - from).toBeLessThanOrEqual(1.4 * 2 * Math.max(next[1], distance) * (1 + 1e-9));
        }
      }
    }),
  );
});
test('the graded grid: lines ascend, cells end at them, and each point lies where its place says', () => {
  const grid = new GradedGrid(0.7, 0.01, 24);
  for (let line = 1 - grid.lines; line <= grid.lines; line++) expect(grid.at(line)).toBeGreaterThan(grid.at(line - 1));
  expect(grid.at(0)).toBe(0.7);
  fc.assert(
    fc.property(fc.double({ min: -6, max: 3, noNaN: true }), fc.constantFrom(-1, 1), (decade, sign) => {
      const x = 0.7 + sign * 10 ** decade;
      expect(grid.find(x)).toBe(true);
      const [inner, outer] = [grid.at(grid.inner), grid.at(grid.outer)];
      expect(1 / grid.perLength / (outer - inner)).toBeCloseTo(1, 9);
      expect(grid.place).toBeGreaterThanOrEqual(0);
      expect(grid.place).toBeLessThan(1);
      expect(Math.abs(inner + grid.place * (outer - inner) - x)).toBeLessThan(1e-12 * (1 + Math.abs(x)));
      expect(Math.abs(outer - inner)).toBeLessThanOrEqual(Math.max(0.01, Math.abs(x - 0.7) / 24) * (1 + 1e-9));
    }),
  );
  expect(grid.find(1e6)).toBe(false);
  expect(grid.find(Number.NaN)).toBe(false);
});
test('rival: cycle averages of the junction with resistance and all their derivatives against the trapezoidal rule, 1e-7', () => {
  const p = new Float64Array(7);
  const got = new Float64Array(AVERAGES);
  for (const [saturation, slope, resistance] of [
    [5e-6, 0.027, 20],
    [5e-6, 0.027, 1e5],
    [1e-14, 0.046, 1],
  ] as const) {
    const law = new SeriesJunctionLaw(saturation, slope, resistance);
    const average = new SmoothAverage(law);
    for (const x of [0.25, 1, 4, 20, 150, 1000, 4000])
      for (const share of [-0.1, 0, 0.5, 0.9, 0.99, 1, 1.01]) {
        const amplitude = x * slope;
        const output = share * amplitude;
        average.average(amplitude, output, got);
        const sum = new Float64Array(AVERAGES);
        const n = x > 100 ? 1 << 16 : 1 << 11;
        for (let k = 0; k <= n; k++) {
          const c = Math.cos((Math.PI * k) / n);
          const w = (k === 0 || k === n ? 0.5 : 1) / n;
          law.point(amplitude * c, output, p);
          // the order of `SmoothLaw.point` and of `CycleAverages.average`
          const terms = [p[0]!, 2 * c * p[0]!, c * p[1]!, p[2]!, 2 * c * c * p[1]!, 2 * c * p[2]!];
          terms.push(c * p[4]!, 2 * c * c * p[4]!, p[5]!, 2 * c * p[5]!);
          for (let i = 0; i < AVERAGES; i++) sum[i]! += w * terms[i]!;
        }
        for (let i = 0; i < AVERAGES; i++)
          expect(Math.abs(got[i]! / sum[i]! - 1), `Is ${saturation} Rs ${resistance} A/nVt ${x} V/A ${share} value ${i}`).toBeLessThan(
            1e-7,
          );
      }
  }
});
test('identity: second derivatives of a measured law, in closed form, are those of its first ones', () => {
  const table = measured(0.01);
  const law = new MeasuredLaw(table.voltage, table.current);
  const [low, high, middle] = [new Float64Array(AVERAGES), new Float64Array(AVERAGES), new Float64Array(AVERAGES)];
  const h = 1e-7;
  for (const [a, v] of [
    [0.033, 0.004],
    [0.12, 0.051],
    [0.31, 0.27],
    [4.3, 4.17],
  ] as const) {
    law.average(a, v, middle);
    law.average(a, v - h, low);
    law.average(a, v + h, high);
    for (const [by, twice] of [
      [2, 6],
      [4, 7],
      [3, 8],
      [5, 9],
    ] as const)
      expect((high[by]! - low[by]!) / (2 * h) / middle[twice]!, `A ${a} V ${v} value ${twice}`).toBeCloseTo(1, 4);
  }
});
