import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DescribingFunction, detectorModel, FUNDAMENTAL, MEAN } from '#engine';
import { CoupledDetectors } from '../../../src/engine/listen/coupled-detectors.ts';
import { DetectorSolver } from '../../../src/engine/listen/detector-solver.ts';
import { line, ResponseMap, SCALE, SHIFT } from '../../../src/engine/listen/response-map.ts';

const junction = (saturationCurrent: number, seriesResistance: number): DescribingFunction =>
  detectorModel({
    kind: 'junction',
    saturationCurrent,
    ideality: 1.1,
    seriesResistance,
    junctionCapacitance: 0,
    nominalTemperature: 300,
    temperature: 300,
  }).law;
const channel = (gateDrive: number): DescribingFunction =>
  detectorModel({
    kind: 'channel',
    threshold: 0.02,
    transconductanceFactor: 5e-3,
    slopeFactor: 1.4,
    gateDrive,
    gateBias: 0,
    gateCapacitance: 0,
    drainCapacitance: 0,
    seriesResistance: 0,
    temperature: 300,
  }).law;
const table = (): DescribingFunction => {
  const voltage = Array.from({ length: 81 }, (_, k) => (k - 40) / 100);
  return detectorModel({
    kind: 'table',
    voltage,
    current: voltage.map((v) => 2e-6 * Math.expm1(v / 0.035)),
    capacitance: 0,
    seriesResistance: 0,
    temperature: 300,
  }).law;
};
const laws = { 'weak junction': junction(1e-7, 0), 'junction with resistance': junction(2e-6, 20), channel: channel(0), table: table() };

const within = (low: number, high: number) => fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map(Math.exp);

describe('one detector at an instant', () => {
  test('identity: both equations hold for any passive surroundings and any drive, and no instant is without a solution', () => {
    const out = new Float64Array(6);
    for (const [name, law] of Object.entries(laws)) {
      const solver = new DetectorSolver(law);
      fc.assert(
        fc.property(
          within(10, 1e5),
          fc.double({ min: -1.5, max: 1.5, noNaN: true }),
          fc.double({ min: 0, max: 1, noNaN: true }),
          within(1, 1e5),
          within(1e-5, 1),
          fc.double({ min: -0.3, max: 0.6, noNaN: true }),
          (size, angle, share, r, drive, before) => {
            // an impedance that holds the conductance g: Re 1/z >= g
            const zRe = size * Math.cos(angle);
            const zIm = size * Math.sin(angle);
            const g = (share * zRe) / (size * size);
            solver.between(zRe, zIm, g, r);
            solver.solve(drive, before);
            law.at(solver.amplitude, solver.output, out);
            const re = (1 - zRe * g) * solver.amplitude + zRe * out[FUNDAMENTAL]!;
            const im = -zIm * g * solver.amplitude + zIm * out[FUNDAMENTAL]!;
            expect(Math.abs(Math.hypot(re, im) / drive - 1), name).toBeLessThan(1e-7);
            expect(Math.abs(solver.output - before - r * out[MEAN]!), name).toBeLessThan(
              1e-7 * (Math.abs(before) + Math.abs(solver.output) + r * 1e-9),
            );
          },
        ),
        { numRuns: 400, seed: 11, endOnFailure: true },
      );
      expect(solver.failures).toBe(0);
    }
  });
  test('limit: without a drive there is no radio current and the output is what the audio side makes of it', () => {
    const solver = new DetectorSolver(laws['weak junction']);
    solver.between(1000, 0, 0, 5e4);
    solver.solve(0, 0);
    expect(solver.amplitude).toBe(0);
    expect(solver.output).toBe(0);
    // small voltages meet the resistance at rest, n Vt/Is
    solver.solve(0, 1e-9);
    const rest = (1.1 * 1.380649e-23 * 300) / 1.602176634e-19 / 1e-7;
    expect(solver.output / 1e-9).toBeCloseTo(rest / (rest + 5e4), 6);
  });
  test('an opposed gate, which hands power back, still finds its roots', () => {
    const solver = new DetectorSolver(channel(-0.8));
    solver.between(300, 100, 0, 1000);
    for (let k = 0; k < 200; k++) solver.solve(0.2 * Math.abs(Math.sin(k)), 0.05 * Math.cos(k));
    expect(solver.failures).toBe(0);
  });
});

describe('the map of answers', () => {
  for (const [name, law] of Object.entries(laws))
    test(`rival: looked up against solved directly, ${name}`, () => {
      const solver = new DetectorSolver(law);
      solver.between(4000, 800, 2e-5, 700);
      const map = new ResponseMap(solver, 0.15, 0.08);
      const direct = new DetectorSolver(law);
      direct.between(4000, 800, 2e-5, 700);
      let worst = 0;
      let found = 0;
      for (let k = 0; k < 3000; k++) {
        const drive = 0.15 * (1 + 0.6 * Math.sin(k * 0.7548776662));
        const before = 0.08 * (1 + 0.6 * Math.sin(k * 0.569840291));
        const row = Math.floor(drive * drive * map.perSquare);
        const column = Math.floor(before * map.perStep);
        const strip = map.strip(column);
        let o = -1;
        for (let visit = 0; visit < 30; visit++) o = map.find(strip, row);
        if (o < 0) continue;
        found++;
        const y = 2 * (before * map.perStep - column) - 1;
        const c = map.cells;
        const x = drive * drive * c[o + SCALE]! - c[o + SHIFT]!;
        expect(Math.abs(x)).toBeLessThanOrEqual(1 + 1e-9);
        const at = (a: number) =>
          [1, x, y, x * x, x * y, y * y, x ** 3, x * x * y, x * y * y, y ** 3].reduce((sum, p, t) => sum + p * c[o + a + t]!, 0);
        const rest = line(strip.rest, y);
        direct.solve(drive, before);
        const current = before * rest + drive * drive * at(20);
        worst = Math.max(
          worst,
          Math.abs(current - direct.current) / (Math.abs(before * rest) + Math.abs(drive * drive * at(20))),
          Math.hypot(at(0) - direct.radioRe, at(10) - direct.radioIm) / direct.radioAdmittance,
        );
      }
      expect(worst).toBeLessThan(2e-6);
      // a table of straight pieces bends at its points: some of its cells are solved directly
      expect(found).toBeGreaterThan(name === 'table' ? 0 : 2900);
    });
});

describe('several detectors at an instant', () => {
  test('identity: two on one tank, coupled as tightly as can be, obey all equations', () => {
    const d = new CoupledDetectors([laws['junction with resistance'], laws['weak junction']]);
    const out = new Float64Array(6);
    d.zRe.set([5000, 4900, 4900, 5000]);
    d.zIm.set([500, 490, 490, 500]);
    d.r.set([900, 300, 300, 900]);
    d.settle();
    for (let k = 0; k < 100; k++) {
      d.driveRe.set([0.2 * Math.cos(k), 0.2 * Math.cos(k) + 0.01]);
      d.driveIm.set([0.2 * Math.sin(k), 0.19 * Math.sin(k)]);
      d.before.set([0.05 * Math.sin(0.3 * k), 0.02]);
      d.solve();
      const g = [0, 1].map((j) => {
        const s = d.solvers[j]!;
        laws[j === 0 ? 'junction with resistance' : 'weak junction'].at(s.amplitude, s.output, out);
        expect(Math.hypot(d.voltageRe[j]!, d.voltageIm[j]!) / s.amplitude).toBeCloseTo(1, 7);
        return { conductance: out[FUNDAMENTAL]! / s.amplitude, current: out[MEAN]! };
      });
      for (let j = 0; j < 2; j++) {
        let re = d.voltageRe[j]!;
        let im = d.voltageIm[j]!;
        let v = d.before[j]!;
        for (let p = 0; p < 2; p++) {
          const o = 2 * j + p;
          re += g[p]!.conductance * (d.zRe[o]! * d.voltageRe[p]! - d.zIm[o]! * d.voltageIm[p]!);
          im += g[p]!.conductance * (d.zRe[o]! * d.voltageIm[p]! + d.zIm[o]! * d.voltageRe[p]!);
          v += d.r[o]! * g[p]!.current;
        }
        expect(Math.hypot(re - d.driveRe[j]!, im - d.driveIm[j]!)).toBeLessThan(1e-8);
        expect(Math.abs(v - d.solvers[j]!.output)).toBeLessThan(1e-8);
      }
    }
    expect(d.failures).toBe(0);
  });
});
