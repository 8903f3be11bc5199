import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  detectorFigures,
  detectorModel,
  FUNDAMENTAL,
  FUNDAMENTAL_BY_AMPLITUDE,
  FUNDAMENTAL_BY_OUTPUT,
  MEAN,
  MEAN_BY_AMPLITUDE,
  MEAN_BY_OUTPUT,
} from '#engine';
import { bruteAverage, EVERY_LAW } from './cycle.ts';

/** 1 uV to 3 V, output from a little the wrong way to beyond the peak */
const point = fc.tuple(fc.double({ min: -6, max: 0.5, noNaN: true }), fc.double({ min: -0.3, max: 1.2, noNaN: true }));

for (const [name, description] of Object.entries(EVERY_LAW))
  describe(name, () => {
    const { law } = detectorModel(description);
    const out = new Float64Array(6);

    test('rival: mean and fundamental against 4096 points of the law itself, 1e-4', () => {
      fc.assert(
        fc.property(point, ([decade, share]) => {
          const amplitude = 10 ** decade;
          // a very faint junction driven hard needs more points than that to be averaged by brute force
          fc.pre(amplitude < 1 || !name.startsWith('faint'));
          const output = share * amplitude;
          const brute = bruteAverage(law, amplitude, output);
          law.at(amplitude, output, out);
          // a mean is the sum of the current at rest and of what the swing adds, either of which may be known no better than its own size
          const rest = law.current(-output, output);
          const size = Math.abs(rest) + Math.abs(brute.mean - rest);
          // the brute sum itself is good to some 1e-15 of the current's swing
          const noise = 1e-14 * (Math.abs(law.current(amplitude - output, output)) + Math.abs(law.current(-amplitude - output, output)));
          expect(Math.abs(out[MEAN]! - brute.mean)).toBeLessThan(1e-4 * size + noise);
          expect(Math.abs(out[FUNDAMENTAL]! - brute.fundamental)).toBeLessThan(1e-4 * Math.abs(brute.fundamental) + noise);
        }),
        { numRuns: 150 },
      );
    });
    test('identity: the derivatives are those of the values', () => {
      const below = new Float64Array(6);
      const above = new Float64Array(6);
      fc.assert(
        fc.property(point, ([decade, share]) => {
          const amplitude = 10 ** Math.max(decade, -3);
          const output = share * amplitude;
          law.at(amplitude, output, out);
          const size = Math.max(
            Math.abs(out[FUNDAMENTAL_BY_AMPLITUDE]!),
            Math.abs(out[MEAN_BY_OUTPUT]!),
            Math.abs(out[MEAN_BY_AMPLITUDE]!),
          );
          const h = 1e-6 * amplitude;
          const noise = 1e-15 * (Math.abs(out[FUNDAMENTAL]!) + Math.abs(out[MEAN]!) + Math.abs(law.current(-output, output)));
          for (const [dA, dV, of, by] of [
            [h, 0, MEAN, MEAN_BY_AMPLITUDE],
            [h, 0, FUNDAMENTAL, FUNDAMENTAL_BY_AMPLITUDE],
            [0, h, MEAN, MEAN_BY_OUTPUT],
            [0, h, FUNDAMENTAL, FUNDAMENTAL_BY_OUTPUT],
          ] as const) {
            law.at(amplitude - dA, output - dV, below);
            law.at(amplitude + dA, output + dV, above);
            const numeric = (above[of]! - below[of]!) / (2 * h);
            expect(Math.abs(numeric - out[by]!)).toBeLessThan(2e-4 * size + noise / h);
          }
        }),
        { numRuns: 100 },
      );
    });
    test('energy: what the RF gives is never less than what the output takes', () => {
      fc.assert(
        fc.property(point, ([decade, share]) => {
          const amplitude = 10 ** decade;
          const output = share * amplitude;
          law.at(amplitude, output, out);
          const given = (amplitude * out[FUNDAMENTAL]!) / 2;
          const taken = output * out[MEAN]!;
          expect(given - taken).toBeGreaterThan(-1e-5 * (Math.abs(given) + Math.abs(taken)));
        }),
        { numRuns: 200 },
      );
    });
    test('limit: the law passes through zero, and takes power at every voltage', () => {
      expect(law.current(0, 0)).toBe(0);
      for (const v of [-2, -0.3, -1e-3, -1e-9, 1e-9, 1e-3, 0.15, 0.4]) expect(law.current(v, 0) * v).toBeGreaterThan(0);
    });
    test('weak signals: mean by current sensitivity from the power taken, to nothing', () => {
      const m = detectorModel(description);
      for (const amplitude of [1e-6, 1e-8]) {
        law.at(amplitude, 0, out);
        expect((out[FUNDAMENTAL]! * m.zeroBiasResistance) / amplitude).toBeCloseTo(1, 4);
        expect(out[MEAN]! / (m.currentSensitivity * ((amplitude * out[FUNDAMENTAL]!) / 2))).toBeCloseTo(1, 2);
      }
    });
    test('figures: each finite or null, named once, with formula, terms and source', () => {
      const figures = detectorFigures(detectorModel(description));
      expect(new Set(figures.map((f) => f.name)).size).toBe(figures.length);
      for (const f of figures) {
        expect(f.name).toMatch(/^detector\./);
        expect(f.value === null || Number.isFinite(f.value)).toBe(true);
        expect(f.working.formula && f.working.source && f.working.terms.length).toBeTruthy();
      }
    });
  });
