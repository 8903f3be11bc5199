import fc from 'fast-check';
import { expect, test } from 'vitest';
import { endlessCoil, fieldOfRow, ringKernel, wireResponse } from '#engine';
import { windingLoss } from './winding-loss-values.ts';

const PERFECT = Number.POSITIVE_INFINITY;

test('rival: loss and inductance of 1 to 12 turns with perfect skin effect against an integral equation for the surface current', () => {
  expect(windingLoss.surface.length).toBe(72);
  for (const row of windingLoss.surface) {
    const { proximityFactor, impedance } = fieldOfRow({ ...row, radiusInSkinDepths: PERFECT });
    // third order in curvature, as `fieldOfRow` says
    const [loss, inductance] = row.curvature <= 0.15 ? [0.008, 0.002] : [0.022, 0.04];
    const what = JSON.stringify(row);
    expect(Math.abs(proximityFactor / row.factor - 1), what).toBeLessThan(loss);
    expect(Math.abs(impedance!.re / row.reactance - 1), what).toBeLessThan(inductance);
    if (row.curvature <= 0.05) expect(Math.abs(proximityFactor / row.factor - 1), what).toBeLessThan(0.0015);
  }
});

test('rival: loss at skin depths of half to a fifth of the radius against sections cut into current filaments', () => {
  expect(windingLoss.filaments.length).toBe(13);
  for (const row of windingLoss.filaments) {
    const { proximityFactor } = fieldOfRow(row);
    expect(Math.abs(proximityFactor / row.factor - 1), JSON.stringify(row)).toBeLessThan(0.003 + row.spread);
  }
});

test('identity: the resistance seen at the terminals is the power lost in the metal (Poynting)', () => {
  for (const count of [1, 2, 5, 12])
    for (const wireOverPitch of [0.3, 0.6, 0.9])
      for (const curvature of [0.01, 0.05, 0.1])
        for (const radiusInSkinDepths of [0.3, 1, 3, 30, 300]) {
          const { proximityFactor, impedance } = fieldOfRow({ count, wireOverPitch, curvature, radiusInSkinDepths, accuracy: 1e-6 });
          const lone = wireResponse(1, radiusInSkinDepths).internalIm;
          // equal but for terms of the third order in curvature
          const terminals = impedance!.im / lone / count;
          expect(Math.abs(terminals / proximityFactor - 1)).toBeLessThan(1e-5 + 2 * curvature ** 3);
        }
});

test('limit: skin depth far below the radius tends to perfect skin effect', () => {
  const row = { count: 5, wireOverPitch: 0.6, curvature: 0.08 };
  const perfect = fieldOfRow({ ...row, radiusInSkinDepths: PERFECT }).proximityFactor;
  for (const x of [30, 300, 3000]) {
    const off = fieldOfRow({ ...row, radiusInSkinDepths: x }).proximityFactor / perfect - 1;
    expect(Math.abs(off)).toBeLessThan(0.6 / x);
  }
});

test('limit: at low frequency neighbours do not matter and bent wire conducts as its sections in parallel', () => {
  // current density goes as 1/rho: factor (e^2/2) / (1 - sqrt(1 - e^2)), which is 1 - e^2/4 and a little
  for (const e of [0.02, 0.1]) {
    const { proximityFactor } = fieldOfRow({ count: 4, wireOverPitch: 0.8, curvature: e, radiusInSkinDepths: 0.03 });
    expect(Math.abs(proximityFactor - e ** 2 / 2 / (1 - Math.sqrt(1 - e ** 2)))).toBeLessThan(e ** 2 / 4);
  }
});

test('limit: turns wide against the coil are a row of straight wires; one lone straight wire has factor 1', () => {
  for (const radiusInSkinDepths of [2, PERFECT]) {
    const row = { count: 6, wireOverPitch: 0.7, radiusInSkinDepths };
    const straight = fieldOfRow({ ...row, curvature: 0 });
    expect(straight.impedance).toBeNull();
    expect(fieldOfRow({ ...row, curvature: 1e-6 }).proximityFactor).toBeCloseTo(straight.proximityFactor, 4);
    expect(fieldOfRow({ ...row, count: 1, curvature: 0 }).proximityFactor).toBeCloseTo(1, 12);
  }
});

test('limit: two wires there and back rise from 1 to 1/sqrt(1 - (d/D)^2) as the skin thins (two-wire line, Terman 1943), alike in both', () => {
  const at = (radiusInSkinDepths: number) => fieldOfRow({ count: 2, wireOverPitch: 0.6, curvature: 0, radiusInSkinDepths, mirror: -1 });
  expect(at(0.05).proximityFactor).toBeCloseTo(1, 5);
  expect(at(2).proximityFactor).toBeGreaterThan(1.05);
  expect(at(2).proximityFactor).toBeLessThan(1.25);
  expect(at(1000).proximityFactor).toBeCloseTo(1.25, 2);
  expect(at(2).perWire[0]).toBe(at(2).perWire[1]);
});

test('limit: each turn added in the middle of a long coil costs what a turn of an endless coil costs', () => {
  for (const radiusInSkinDepths of [1, 3, 20]) {
    const loss = (count: number) => count * fieldOfRow({ count, wireOverPitch: 0.6, curvature: 0.03, radiusInSkinDepths }).proximityFactor;
    const added = (loss(210) - loss(200)) / 10;
    // curvature of 0.03 is not in the endless value
    expect(Math.abs(added / endlessCoil(0.6, radiusInSkinDepths).proximityFactor - 1)).toBeLessThan(0.035);
  }
});

test('published: Medhurst 1947, column l/D without end, tends to his touching value 3.41', () => {
  const at = (s: number) => endlessCoil(s, PERFECT, 1, 1e-7).proximityFactor;
  expect(at(0.98) + 0.02 * ((at(0.98) - at(0.95)) / 0.03)).toBeCloseTo(3.41, 2);
});

test('rival: ring kernel against its own differences, and its parts against the straight wire they leave', () => {
  const h = 1e-3;
  for (const z of [0.05, 0.4, 1.5, 6]) {
    const k = ringKernel(z);
    const rest = (at: number) => ringKernel(at).whole + Math.log(at);
    expect(k.z).toBeCloseTo((rest(z + h * z) - rest(z - h * z)) / (2 * h * z), 4);
    expect(k.zz).toBeCloseTo((rest(z + h * z) - 2 * rest(z) + rest(z - h * z)) / (h * z) ** 2, 2);
    // scaling both rings is the same as scaling the distance: Q depends on ratios only, so 2 d/dx = -z d/dz of Q, and ln adds 1
    expect(2 * k.x).toBeCloseTo(-(z * k.z - 1), 8);
    // away from sources Q / sqrt(rho rho') ... obeys Laplace's equation with 3/4 Q: xx + zz = 3/4 Q
    expect(k.xx + k.zz).toBeCloseTo(0.75 * k.whole, 8);
  }
});

test('published: Maxwell art. 705, M = mu0 R [(1 + 3 z^2/16) ln(8/z) - 2 - z^2/16] for near rings', () => {
  for (const z of [0.01, 0.05, 0.1])
    expect(ringKernel(z).whole).toBeCloseTo((1 + (3 * z * z) / 16) * Math.log(8 / z) - 2 - (z * z) / 16, 4);
});

test('rival: a magnetic wire far below its skin depth is a magnetised cylinder, (mu - 1)/(mu + 1), and copper is transparent', () => {
  for (const m of [1, 2, 3]) {
    expect(wireResponse(3, 0.01, 100).re[m]).toBeCloseTo(99 / 101, 4);
    expect(Math.abs(wireResponse(3, 0.01).re[m]!)).toBeLessThan(1e-6);
    expect(wireResponse(3, 1e4).re[m]).toBeCloseTo(-1, 3);
  }
  // the general formula at a permeability of almost 1 meets the special one
  const near = wireResponse(3, 2, 1 + 1e-9);
  const copper = wireResponse(3, 2);
  for (const m of [1, 2, 3]) {
    expect(near.re[m]).toBeCloseTo(copper.re[m]!, 7);
    expect(near.im[m]).toBeCloseTo(copper.im[m]!, 7);
    expect(near.loss[m]).toBeCloseTo(copper.loss[m]!, 6);
  }
});

test('property: any coil has a finite factor, loses in every turn, mirrors about its middle and settles in few sweeps', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 40 }),
      fc.double({ min: 0.01, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 0.9, noNaN: true }),
      fc.double({ min: -2, max: 3.5, noNaN: true }),
      fc.boolean(),
      (count, wireOverPitch, curvature, logDepths, magnetic) => {
        const radiusInSkinDepths = magnetic ? Math.max(10, 10 ** logDepths) : 10 ** logDepths;
        const row = { count, wireOverPitch, curvature, radiusInSkinDepths, permeability: magnetic ? 100 : 1 };
        const { proximityFactor, perWire, sweeps } = fieldOfRow(row);
        // at low frequency and the sharpest bend allowed, bent wire conducts better than straight: 0.93; to second order in curvature, 0.90
        expect(proximityFactor).toBeGreaterThan(0.89);
        expect(proximityFactor).toBeLessThan(50);
        expect(sweeps).toBeLessThan(60);
        perWire.forEach((loss, i) => {
          expect(loss).toBeGreaterThan(0.8);
          expect(loss).toBe(perWire[count - 1 - i]);
        });
      },
    ),
    { numRuns: 60 },
  );
});
