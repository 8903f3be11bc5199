import { describe, expect, test } from 'vitest';
import { scaledLosses, type TankDescription, tankModel, unloadedQ } from '#engine';
import { example } from '../find/examples.ts';

const { tank: small } = example('dipole-and-small-coil.json').set;
const { tank: large } = example('medium-wave.json').set;
const cases: readonly (readonly [string, TankDescription, number])[] = [
  ['VHF coil with taps', small, 98e6],
  ['medium-wave coil on a former', large, 909e3],
];

describe('losses taken so many times as great', () => {
  test.each(cases)('%s: once as great is the tank as it is, its network solved by nodes against the one reduced by hand', (_, tank, f) => {
    const model = tankModel(tank, false);
    const same = scaledLosses(model, 1);
    for (const angle of [0.2, 1.5])
      for (const port of [{}, { aerial: 3e-12, detector: 1e-12 }]) {
        const [a, b] = [model.admittance(f, angle, port), same.admittance(f, angle, port)];
        expect(Math.hypot(a.re - b.re, a.im - b.im) / Math.hypot(a.re, a.im)).toBeLessThan(1e-7);
      }
  });
  // Q = w L / R: definition of Q, Terman, Radio Engineers' Handbook (1943) sec. 3; a coil given by its values sends out nothing
  test('a coil given by values: Q falls as the losses rise', () => {
    const coil = {
      kind: 'electrical',
      inductance: 200e-9,
      q: 250,
      frequency: 98e6,
      selfCapacitance: 0,
      turns: 5,
      tapCoupling: 0.6,
    } as const;
    const tank = { ...small, coil, detectorCoupling: { kind: 'direct' }, aerialCoupling: { kind: 'direct' } } as const;
    const model = tankModel(tank, false);
    const q = unloadedQ(model, 98e6, 1)!;
    for (const factor of [0.1, 0.5, 4]) expect((unloadedQ(scaledLosses(model, factor), 98e6, 1)! * factor) / q).toBeCloseTo(1, 3);
  });
  test('what the coil sends out is not changed: with parts that lose next to nothing it is all that is left', () => {
    const model = tankModel(small, false);
    const radiation = model.elements(98e6, 1).find((e) => e.name === 'radiation');
    expect(radiation).toBeDefined();
    expect(scaledLosses(model, 0.01).elements(98e6, 1)).toContainEqual(radiation);
  });
});
