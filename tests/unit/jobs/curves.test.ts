import { afterAll, describe, expect, test } from 'vitest';
import { assemble, BANDS, overBulge, reportStation, standAt, throughSamples } from '#engine';
import { example } from '../find/examples.ts';
import { bench, document, ok } from './examples.ts';

const jobs = bench();
afterAll(() => jobs.close());
const DEMO = 'dipole-and-small-coil.json';
const demo = { document: document(DEMO), station: 0 };
const { place, set, listener } = example(DEMO);
const reception = standAt(place, assemble(set, listener));
const report = reportStation(reception, 0);
const heard = report.heard!;
const nearest = (x: ArrayLike<number>, at: number): number =>
  Array.from(x).reduce((best, v, i) => (Math.abs(v - at) < Math.abs(x[best]! - at) ? i : best), 0);
const finite = (...arrays: ArrayLike<number>[]): void => {
  for (const a of arrays) expect(Array.from(a).every(Number.isFinite)).toBe(true);
};

describe('place', () => {
  test('fields one deviation to either side; no profile where none is given', async () => {
    const { stations } = ok(await jobs.call('placeCurves', { document: demo.document }));
    stations.forEach((s, k) => {
      expect(20 * Math.log10(s.high / s.field)).toBeCloseTo(reception.signals[k]!.received.spread, 9);
      expect(s.low * s.high).toBeCloseTo(s.field ** 2, 12);
      expect(s.profile === null).toBe(reception.signals[k]!.received.station.terrain === undefined);
    });
  });
  test('the bulge of the earth: 36.8 m in the middle of 50 km, nothing at the ends', () => {
    // d^2/(8 a_e), a_e = 8500 km, ITU-R P.526; by hand
    const { height } = overBulge({ distance: [0, 25e3, 50e3], height: [10, 20, 30] });
    expect(height[0]).toBe(10);
    expect(height[2]).toBe(30);
    expect(height[1]! - 20).toBeCloseTo(36.8, 0);
  });
});

describe('aerial', () => {
  test('given by its length: impedance over the band, no wires', async () => {
    const a = ok(await jobs.call('aerialCurves', demo))!;
    expect(a.wires).toBeNull();
    const mid = nearest(
      a.band.points.map((p) => p.frequency),
      98e6,
    );
    // a half-wave dipole: 73 ohm and a little less when cut short (Balanis, sec. 4.6)
    expect(a.band.points[mid]!.impedance.re).toBeGreaterThan(55);
    expect(a.band.points[mid]!.impedance.re).toBeLessThan(85);
  });
  test('given by its length: a figure of eight with 2.15 dBi to its broadside (ITU-R BS.561), drawn as long as it is', async () => {
    const { pattern, shape } = ok(await jobs.call('aerialCurves', demo))!;
    if (set.aerial.kind !== 'dipole' || set.aerial.orientation.kind !== 'horizontal') throw new Error('the demo has a level dipole');
    const { broadside } = set.aerial.orientation;
    const total = (angle: number) => pattern.level[Math.round((angle * 180) / Math.PI + 720) % 360]!.gain.total ?? Number.NEGATIVE_INFINITY;
    // copper takes a little
    expect(total(broadside)).toBeGreaterThan(2.15 - 0.1);
    expect(total(broadside)).toBeLessThan(2.15 + 0.02);
    expect(total(broadside + Math.PI)).toBeCloseTo(total(broadside), 6);
    expect(total(broadside + Math.PI / 2)).toBeLessThan(-30);
    const [{ from, to }] = shape!.wires as [{ from: Record<'x' | 'y' | 'z', number>; to: Record<'x' | 'y' | 'z', number> }];
    expect(Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z)).toBeCloseTo(set.aerial.length, 12);
    // across the broadside, and level
    expect((to.x - from.x) * Math.sin(broadside) + (to.y - from.y) * Math.cos(broadside)).toBeCloseTo(0, 12);
    expect(to.z).toBe(from.z);
  });
  test.each([
    // lengths as the example files give them [m], in order
    ['rod-too-far.json', [0.75, 0.12]],
    ['medium-wave.json', [8, 20]],
  ])('%s: its pieces are as long as it says, joined, and fed where they begin', async (name, lengths) => {
    const { shape, pattern } = ok(await jobs.call('aerialCurves', { document: document(name), station: 0 }))!;
    const { wires, feed } = shape!;
    wires.forEach(({ from, to }, i) => {
      expect(Math.hypot(to.x - from.x, to.y - from.y, to.z - from.z)).toBeCloseTo(lengths[i]!, 12);
    });
    expect(wires).toHaveLength(lengths.length);
    expect(wires[0]!.from).toEqual(feed);
    expect([wires[0]!.from, wires[0]!.to]).toContainEqual(wires[1]!.from);
    expect(pattern.level.some((p) => p.gain.total !== null)).toBe(true);
  });
  test('given by its values: a pattern with the gain and the front-to-back ratio of the example file, and no shape', async () => {
    const { shape, pattern } = ok(await jobs.call('aerialCurves', { document: document('beam-and-armature.json'), station: 0 }))!;
    expect(shape).toBeNull();
    // 9.2 dBi towards 75 degrees, 8 dB less behind; through its feeder of 4 m at 0.06 dB/m
    const [front, back] = [75, 255].map((angle) => pattern.level[angle]!.gain.total!) as [number, number];
    expect(front - back).toBeCloseTo(8, 6);
    expect(front).toBeGreaterThan(9.2 - 0.4);
    expect(front).toBeLessThanOrEqual(9.2 + 1e-9);
  });
  test('of wires: pattern with a main lobe where the beam points, current in all wires, geometry', async () => {
    const beam = example('beam-from-its-elements.json');
    if (beam.set.aerial.kind !== 'wires' || beam.set.aerial.shape.kind !== 'beam') throw new Error('the example is a beam');
    // the example is cut for this station
    const station = beam.place.stations.findIndex((s) => s.name === 'Radio Gannet');
    const { wires, pattern } = ok(await jobs.call('aerialCurves', { document: document('beam-from-its-elements.json'), station }))!;
    const { level } = pattern;
    const best = level.reduce((a, b) => ((b.gain.total ?? -999) > (a.gain.total ?? -999) ? b : a));
    expect(Math.cos(best.angle - beam.set.aerial.shape.bearing)).toBeGreaterThan(Math.cos(0.1));
    expect(new Set(wires!.currents.map((c) => c.wire)).size).toBe(wires!.geometry.length);
    const most = Math.max(...wires!.currents.map((c) => Math.hypot(c.re, c.im)));
    expect(most).toBeGreaterThan(0.9);
  });
  test('the coil: none of its own', async () => {
    const loop = { document: document('loop-by-the-mast.json'), station: 0 };
    const coil = ok(await jobs.call('aerialCurves', loop));
    expect(coil).toBe(null);
  });
});

describe('phones', () => {
  test('sensitivity as the description gives it, and through the network by its transfer', async () => {
    const p = ok(await jobs.call('phonesCurves', { document: demo.document }));
    finite(p.frequency, p.sensitivity, p.throughout, p.threshold, p.attenuation, p.load);
    const { earpiece } = set.phones;
    for (const point of earpiece.sensitivity) {
      const at = nearest(p.frequency, point.frequency);
      if (earpiece.sensitivityAt === '1 V') expect(p.sensitivity[at]!).toBeCloseTo(point.level, 0);
    }
    expect(earpiece.sensitivity.length).toBeGreaterThan(0);
    // nothing between output and earpiece of the demo: both are one
    p.throughout.forEach((level, i) => {
      expect(level).toBeCloseTo(p.sensitivity[i]!, 1);
    });
    expect(p.coupler).toBe(earpiece.coupler);
  });
});

describe('tank', () => {
  test('response: half power a half bandwidth from its top, the loaded Q of the poles; stations lie on it', async () => {
    const t = ok(await jobs.call('tankCurves', demo));
    finite(t.frequency, t.response);
    const { frequency, bandwidth } = heard.sharpness!;
    const level = (f: number): number => t.response[nearest(t.frequency, f)]!;
    expect(t.angle).toBe(heard.at.angle);
    expect(level(frequency)).toBeCloseTo(0, 1);
    for (const side of [-1, 1]) {
      expect(level(frequency + (side * bandwidth) / 2)).toBeGreaterThan(-3.6);
      expect(level(frequency + (side * bandwidth) / 2)).toBeLessThan(-2.4);
    }
    const own = t.stations.find((s) => s.name === report.station)!;
    expect(own.response).toBeCloseTo(level(own.frequency), 0);
    expect(own.response).toBeLessThan(-0.5);
    expect(t.dial).toHaveLength(61);
  });
});

describe('detector', () => {
  test('law and transfer through the working point; square law below, never above the peak', async () => {
    const d = ok(await jobs.call('detectorCurves', demo));
    finite(d.law.current, d.transfer.output, d.transfer.squareLaw);
    expect(d.point!.amplitude).toBe(heard.evaluation.rest.amplitude);
    const { amplitude, output, squareLaw, peak } = d.transfer;
    // a weak signal follows the square law, the strongest falls short of it and of the peak
    expect(output[0]! / squareLaw[0]!).toBeCloseTo(1, 2);
    expect(output.at(-1)!).toBeLessThan(squareLaw.at(-1)!);
    for (const [i, v] of output.entries()) expect(v).toBeLessThanOrEqual(peak[i]!);
    const there = output[nearest(amplitude, d.point!.amplitude)]!;
    expect(Math.abs(20 * Math.log10(there / d.point!.output))).toBeLessThan(1.5);
  });
});

describe('slope', () => {
  test('amplitude at the carrier is that at rest; the tone swings along the curve; two humps about the station', async () => {
    const told: number[] = [];
    const s = ok(await jobs.call('slopeCurves', demo, { onProgress: (f) => told.push(f) }))!;
    finite(s.offset, s.amplitude, s.rated.amplitude, s.rated.output);
    const { rest, rated } = heard.evaluation;
    expect(s.amplitude[nearest(s.offset, 0)]! / rest.amplitude).toBeCloseTo(1, 6);
    expect(s.rated.swing).toBe(rated.swing);
    // the wave passes through the samples of the balance, and stays near the slope: the output moves a little, the slope was drawn with it held
    expect(s.rated.output[0]).toBeCloseTo(rated.balance.output[0]!, 12);
    for (const i of [0, 24, 48]) expect(s.rated.amplitude[i]! / s.amplitude[nearest(s.offset, s.rated.modulation[i]!)]!).toBeCloseTo(1, 0);
    const middle = nearest(
      s.around.map((p) => p.x),
      0,
    );
    const [left, right] = [s.around.slice(0, middle), s.around.slice(middle)].map((side) => Math.max(...side.map((p) => p.level)));
    expect(Math.min(left!, right!) - s.around[middle]!.level).toBeGreaterThan(6);
  });
  test('a curve through samples: exact for the harmonics they hold', () => {
    const f = (p: number): number =>
      1 + 0.5 * Math.cos(2 * Math.PI * p) - 0.2 * Math.sin(6 * Math.PI * p) + 0.1 * Math.cos(14 * Math.PI * p);
    const samples = Float64Array.from({ length: 16 }, (_, k) => f(k / 16));
    const phase = Float64Array.from([0, 0.01, 0.123, 0.5, 0.77, 0.9999, 1]);
    for (const [i, v] of throughSamples(samples, phase).entries()) expect(v).toBeCloseTo(f(phase[i]!), 12);
  });
});

describe('ear', () => {
  test('shares add to the index; headroom stands over what is needed', async () => {
    const e = ok(await jobs.call('earCurves', demo))!;
    expect(e.band).toEqual(BANDS);
    expect(e.siiShare.reduce((a, b) => a + b, 0)).toBeCloseTo(e.sii, 12);
    for (let i = 0; i < BANDS.length; i++) {
      expect(e.siiShare[i]!).toBeLessThanOrEqual(e.siiMost[i]!);
      expect(e.programme[i]! - e.needed[i]!).toBeCloseTo(e.headroom[i]!, 9);
      // what is needed is never under the threshold itself
      expect(e.needed[i]!).toBeGreaterThan(e.threshold[i]! - 1e-6);
    }
  });
});

test('a dial left elsewhere moves every curve with it; a station out of reach has a tank all the same', async () => {
  const moved = { ...demo, angle: heard.at.angle + 0.05 };
  expect(ok(await jobs.call('tankCurves', moved)).angle).toBe(moved.angle);
  expect(ok(await jobs.call('slopeCurves', moved))!.angle).toBe(moved.angle);
  const text = demo.document.text.replace('"turns": 5,', '"turns": 9,');
  const changed = { ...demo.document, text };
  const { stations } = ok(await jobs.call('evaluate', { document: changed }));
  const out = { station: stations.findIndex((s) => s.angle === null), document: changed };
  const tank = ok(await jobs.call('tankCurves', out));
  expect(tank.sharpness).toBeNull();
  finite(tank.response);
  expect(ok(await jobs.call('slopeCurves', out))).toBeNull();
  expect(ok(await jobs.call('earCurves', out))).toBeNull();
  expect(ok(await jobs.call('detectorCurves', out)).point).toBeNull();
});
