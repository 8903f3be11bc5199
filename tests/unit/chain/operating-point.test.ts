import fc from 'fast-check';
import { expect, test } from 'vitest';
import { detectorModel, OperatingPoint } from '#engine';

const logarithmic = (low: number, high: number) => fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map(Math.exp);

test('identity: D = |A + Z I1(A, V)| for any junction and source, from nanovolts to hundreds of volts, far above the output or below', () => {
  fc.assert(
    fc.property(
      logarithmic(1e-13, 1e-5),
      logarithmic(1e-9, 300),
      logarithmic(1, 1e6),
      fc.double({ min: -3, max: 3, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (saturationCurrent, drive, resistance, q, output, guess) => {
        const { law } = detectorModel({
          kind: 'junction',
          saturationCurrent,
          ideality: 1.1,
          seriesResistance: 0,
          junctionCapacitance: 0,
          nominalTemperature: 300,
          temperature: 300,
        });
        const point = new OperatingPoint(law);
        point.solve(drive, resistance, q * resistance, output * drive, guess * drive);
        expect(point.settled).toBe(true);
        const size = Math.hypot(point.amplitude + resistance * point.fundamental, q * resistance * point.fundamental);
        expect(size / drive).toBeCloseTo(1, 6);
      },
    ),
    { numRuns: 3000, seed: 20261126 },
  );
});
