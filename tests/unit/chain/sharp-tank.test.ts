import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { detectorModel, EARTH, type Element, harmonicBalance, modulated, OperatingPoint, outputAtRest, RfHalf } from '#engine';

/**
 * rival: AM through a sharp tank that the detector damps, the envelope integrated in time by SciPy's LSODA.
 * Source: tests/reference/sharp-tank/make.py and its output cases.json.
 */
interface Case {
  q: number;
  source: number;
  load: number;
  bypass: number;
  openCircuit: number;
  depth: number;
  tone: number;
  result: { output: number; amplitude: number; mean: number };
}
const { cases, tank, junction } = JSON.parse(readFileSync(new URL('../../reference/sharp-tank/cases.json', import.meta.url), 'utf8')) as {
  cases: Case[];
  tank: { carrier: number; inductance: number; capacitance: number };
  junction: { saturationCurrent: number; ideality: number; temperature: number };
};
const { law } = detectorModel({
  kind: 'junction',
  seriesResistance: 0,
  junctionCapacitance: 0,
  nominalTemperature: junction.temperature,
  ...junction,
});

function elements(c: Case): Element[] {
  const reactance = 2 * Math.PI * tank.carrier * tank.inductance;
  const g = 1 / (c.q * reactance) + 1 / c.source;
  return [
    { kind: 'current', name: 'source', a: 'top', b: EARTH, re: g, im: 0 },
    { kind: 'resistor', name: 'loss and source', a: 'top', b: EARTH, resistance: 1 / g },
    { kind: 'windings', name: 'coil', windings: [{ name: 'coil', a: 'top', b: EARTH }], inductance: [[tank.inductance]] },
    { kind: 'capacitor', name: 'tuning', a: 'top', b: EARTH, capacitance: tank.capacitance },
  ];
}

function fundamental(c: Case, damped: boolean): number {
  const rf = new RfHalf(elements(c), 'top', 1);
  const point = new OperatingPoint(law);
  const carrier = modulated(rf, tank.carrier, c.openCircuit / Math.SQRT2, { kind: 'am', depth: c.depth }, (drive, zRe, zIm) => {
    outputAtRest(point, [drive, zRe, zIm], c.load);
    return damped ? point.fundamental / point.amplitude : 0;
  });
  const load = Array.from({ length: 17 }, (_, k) => {
    const w = 2 * Math.PI * c.tone * k * c.load * c.bypass;
    return { re: c.load / (1 + w * w), im: (-c.load * w) / (1 + w * w) };
  });
  const { harmonics, converged } = harmonicBalance(law, carrier.toneDrive(32, c.tone, c.depth), load);
  expect(converged).toBe(true);
  return Math.hypot(harmonics[1]!.re, harmonics[1]!.im);
}

for (const c of cases) {
  const weak = c.openCircuit < 0.01;
  test(`rival: envelope in time, ${c.openCircuit} V, ${c.tone} Hz, depth ${c.depth}: fundamental ${weak ? 0.02 : 0.4} dB`, () => {
    expect(Math.abs(20 * Math.log10(fundamental(c, true) / c.result.output))).toBeLessThan(weak ? 0.02 : 0.4);
  });
}

test('a detector that damps the tank lets more of the treble through than the tank alone', () => {
  for (const c of cases.filter((x) => x.tone === 3000))
    expect(20 * Math.log10(fundamental(c, true) / fundamental(c, false))).toBeGreaterThan(1.5);
});
