import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import {
  type DetectorDescription,
  detectorFigures,
  detectorModel,
  FUNDAMENTAL,
  FUNDAMENTAL_BY_AMPLITUDE,
  MEAN,
  thermalVoltage,
} from '#engine';
import { CHANNEL, outputInto } from './cycle.ts';

interface ChannelRow {
  readonly n: number;
  readonly beta: number;
  readonly threshold: number;
  readonly bias: number;
  readonly share: number;
  readonly Rs: number;
  readonly A: number;
  readonly V: number;
  readonly mean: number;
  readonly fundamental: number;
}
const { channel } = JSON.parse(readFileSync(new URL('../../reference/detector/values.json', import.meta.url), 'utf8')) as {
  readonly channel: readonly ChannelRow[];
};
const out = new Float64Array(6);
const law = (change: Partial<Extract<DetectorDescription, { kind: 'channel' }>>) => detectorModel({ ...CHANNEL, ...change }).law;

test('rival: channel from weak to strong inversion against scipy quad', () => {
  for (const r of channel) {
    const l = law({
      slopeFactor: r.n,
      transconductanceFactor: r.beta,
      threshold: r.threshold,
      gateBias: r.bias,
      gateDrive: r.share,
      seriesResistance: r.Rs,
    });
    l.at(r.A, r.V, out);
    const rest = Math.abs(l.current(-r.V, r.V));
    expect(Math.abs(out[FUNDAMENTAL]! / r.fundamental - 1), JSON.stringify(r)).toBeLessThan(2e-6);
    expect(Math.abs(out[MEAN]! - r.mean), JSON.stringify(r)).toBeLessThan(5e-6 * (Math.abs(r.mean) + rest));
  }
});
test('limit: triode region, RF on the drain alone gives -beta A²/4, on drain and gate +beta A²/4, half on the gate nothing', () => {
  // far above threshold in units of n Vt the interpolation is the square law to the last bit
  const strong = { threshold: -3, gateBias: 0, slopeFactor: 1.3, temperature: 30 };
  const expected = (4e-5 * 0.1 ** 2) / 4;
  for (const [gateDrive, sign] of [
    [0, -1],
    [1, 1],
    [0.5, 0],
    [-1, -3],
  ] as const) {
    law({ ...strong, gateDrive }).at(0.1, 0, out);
    expect(out[MEAN]! / expected).toBeCloseTo(sign, 6);
  }
});
test('limit: triode region, i = beta ((vgs - Vth) v - v²/2)', () => {
  const l = law({ threshold: -3, gateBias: -1, gateDrive: 0, temperature: 30 });
  for (const v of [-0.5, 0.2, 1]) expect(l.current(v, 0) / (4e-5 * (2 * v - v ** 2 / 2))).toBeCloseTo(1, 6);
  // saturation: beta (vgs - Vth)^2 / 2 whatever the drain voltage
  expect(l.current(3, 0) / ((4e-5 * 4) / 2)).toBeCloseTo(1, 6);
});
test('limit: weak inversion with the gate on the drain is the exponential junction of ideality n', () => {
  const gateBias = -0.9;
  const slope = 1.4 * thermalVoltage(300);
  const l = law({ gateBias });
  const junction = detectorModel({
    kind: 'junction',
    saturationCurrent: 2 * 4e-5 * slope ** 2 * Math.exp(gateBias / slope),
    ideality: 1.4,
    seriesResistance: 0,
    junctionCapacitance: 0,
    nominalTemperature: 300,
    temperature: 300,
  }).law;
  const load = 2 * detectorModel({ ...CHANNEL, gateBias }).zeroBiasResistance;
  for (const a of [1e-4, 0.02, 0.1]) {
    expect(outputInto(l, a) / outputInto(junction, a)).toBeCloseTo(1, 4);
    // loaded, the channel's return current grows as exp(V/(n Vt)), the junction's does not: alike while the output is small
    if (a < 0.001) expect(outputInto(l, a, load) / outputInto(junction, a, load)).toBeCloseTo(1, 3);
  }
});
test('limit: drain and source are alike: the current at -v with the gate moved by v is minus the current at v', () => {
  const at = (gateBias: number, v: number, seriesResistance: number) => law({ gateBias, gateDrive: 0, seriesResistance }).current(v, 0);
  for (const v of [0.03, 0.2, 0.7]) expect(at(0.1, v, 0)).toBeCloseTo(-at(0.1 - v, -v, 0), 15);
});
test('limit: series resistance solves i = g(v - i Rs)', () => {
  const bare = law({ gateDrive: 0, gateBias: 0.6 });
  const dressed = law({ gateDrive: 0, gateBias: 0.6, seriesResistance: 2e4 });
  for (const v of [-1, -0.1, 1e-6, 0.05, 0.4, 2]) {
    const i = dressed.current(v, 0);
    expect(i / bare.current(v - i * 2e4, 0)).toBeCloseTo(1, 10);
  }
});
test('limit: with the gate on the tank, or still, the fundamental rises with amplitude; opposed, only near the output it makes for itself', () => {
  for (const gateDrive of [0, 0.3, 1])
    for (const gateBias of [-0.3, 0.2])
      for (const a of [1e-4, 0.03, 0.2, 0.8])
        for (const v of [-0.3, 0, 0.2]) {
          law({ gateDrive, gateBias }).at(a, v, out);
          expect(out[FUNDAMENTAL_BY_AMPLITUDE]!).toBeGreaterThan(0);
        }
  const opposed = law({ gateDrive: -1, gateBias: -0.1 });
  for (const a of [0.01, 0.05, 0.2]) {
    opposed.at(a, outputInto(opposed, a), out);
    expect(out[FUNDAMENTAL_BY_AMPLITUDE]!).toBeGreaterThan(0);
  }
  opposed.at(0.01, -0.2, out);
  expect(out[FUNDAMENTAL_BY_AMPLITUDE]!).toBeLessThan(0);
  expect(detectorModel({ ...CHANNEL, gateDrive: -1 }).remarks.join()).toMatch(/returns radio power/);
});
test('a channel that is shut stays finite and says so; a wide swing speaks of the body', () => {
  const shut = detectorModel({ ...CHANNEL, gateBias: -50 });
  expect(Number.isFinite(shut.zeroBiasResistance)).toBe(true);
  expect(shut.remarks.join()).toMatch(/shut/);
  shut.law.at(0.1, 0.01, out);
  for (const v of out) expect(Number.isFinite(v)).toBe(true);
  const open = detectorModel(CHANNEL);
  expect(open.remarkAt(0.05, 0.01)).toBeNull();
  expect(open.remarkAt(0.6, 0.01)).toMatch(/body/);
});
test('the working of the zero-bias resistance, worked by hand from its own terms, gives the figure', () => {
  const model = detectorModel({ ...CHANNEL, gateBias: 0.05, seriesResistance: 70 });
  const figure = detectorFigures(model).find((f) => f.name === 'detector.zeroBiasResistance')!;
  const of = (symbol: string) => figure.working.terms.find((t) => t.symbol === symbol)!.value!;
  const e = Math.exp((of('Vg') - of('Vth')) / (2 * of('n') * of('Vt')));
  const sigma = (2 * of('n') * of('beta') * of('Vt') * Math.log(1 + e) * e) / (1 + e);
  expect(1 / sigma + of('Rs')).toBeCloseTo(figure.value!, 6);
});
