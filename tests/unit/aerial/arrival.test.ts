import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Arrival, aerialModel, arrivalAxes, C, type SeparateAerial } from '#engine';

const EAST = Math.PI / 2;
const degrees = (d: number) => (d * Math.PI) / 180;
const level = (broadside: number): SeparateAerial => ({
  kind: 'dipole',
  length: 1.4,
  diameter: 0.01,
  metal: 'aluminium',
  orientation: { kind: 'horizontal', broadside },
});
const upright: SeparateAerial = { ...level(0), orientation: { kind: 'vertical' } } as SeparateAerial;
const hear = (aerial: SeparateAerial, arrival: Arrival) => {
  const a = aerialModel(aerial).at(100e6, arrival);
  return { horizontal: a.horizontal.re, vertical: a.vertical.re };
};

describe('directions and polarisation', () => {
  test('the three unit vectors stand at right angles', () => {
    const angle = fc.double({ min: -7, max: 7, noNaN: true });
    fc.assert(
      fc.property(angle, angle, (azimuth, elevation) => {
        const { toward, horizontal, vertical } = arrivalAxes({ azimuth, elevation });
        const dot = (a: readonly number[], b: readonly number[]) => a.reduce((s, v, i) => s + v * b[i]!, 0);
        for (const v of [toward, horizontal, vertical]) expect(dot(v, v)).toBeCloseTo(1, 12);
        expect(dot(toward, horizontal)).toBeCloseTo(0, 12);
        expect(dot(toward, vertical)).toBeCloseTo(0, 12);
        expect(dot(horizontal, vertical)).toBeCloseTo(0, 12);
      }),
    );
  });
  test('a wave from the east: E_h counts south, E_v up', () => {
    const { toward, horizontal, vertical } = arrivalAxes({ azimuth: EAST, elevation: 0 });
    [1, 0, 0].forEach((v, i) => {
      expect(toward[i]).toBeCloseTo(v, 12);
    });
    [0, -1, 0].forEach((v, i) => {
      expect(horizontal[i]).toBeCloseTo(v, 12);
    });
    [0, 0, 1].forEach((v, i) => {
      expect(vertical[i]).toBeCloseTo(v, 12);
    });
  });
  test('a level dipole hears horizontal fields from its broadside, with opposite sign from behind', () => {
    const front = hear(level(EAST), { azimuth: EAST, elevation: 0 });
    const back = hear(level(EAST), { azimuth: -EAST, elevation: 0 });
    expect(front.horizontal).toBeGreaterThan(0.8);
    expect(back.horizontal).toBeCloseTo(-front.horizontal, 12);
    expect(front.vertical).toBeCloseTo(0, 12);
  });
  test('limit: a level dipole hears nothing end on, at any height in the plane of its end', () => {
    const end = hear(level(0), { azimuth: EAST, elevation: 0 });
    expect(end.horizontal).toBeCloseTo(0, 12);
    expect(end.vertical).toBeCloseTo(0, 12);
    const above = hear(level(0), { azimuth: EAST, elevation: degrees(30) });
    expect(above.horizontal).toBeCloseTo(0, 12);
    // the rod is tilted to the wave by 30 degrees, so the vertical component has a share of it
    expect(Math.abs(above.vertical)).toBeGreaterThan(0.1);
  });
  test('a level dipole hears the vertical component of a wave from above and off broadside, not of one from its broadside', () => {
    expect(hear(level(0), { azimuth: 0, elevation: degrees(40) }).vertical).toBeCloseTo(0, 12);
    expect(Math.abs(hear(level(0), { azimuth: degrees(45), elevation: degrees(40) }).vertical)).toBeGreaterThan(0.2);
  });
  test('an upright dipole hears vertical fields alike all round, nothing from overhead, never horizontal ones', () => {
    const first = hear(upright, { azimuth: 0, elevation: 0 }).vertical;
    for (const azimuth of [1, 2, 3, 4]) {
      const h = hear(upright, { azimuth, elevation: 0 });
      expect(h.vertical).toBeCloseTo(first, 12);
      expect(h.horizontal).toBeCloseTo(0, 12);
    }
    expect(hear(upright, { azimuth: 1, elevation: Math.PI / 2 }).vertical).toBeCloseTo(0, 12);
  });
  test('identity: turning aerial and mast together changes nothing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 6.2, noNaN: true }),
        fc.double({ min: 0, max: 6.2, noNaN: true }),
        fc.double({ min: -1.5, max: 1.5, noNaN: true }),
        (turn, azimuth, elevation) => {
          const a = hear(level(0.4), { azimuth, elevation });
          const b = hear(level(0.4 + turn), { azimuth: azimuth + turn, elevation });
          expect(b.horizontal).toBeCloseTo(a.horizontal, 10);
          expect(b.vertical).toBeCloseTo(a.vertical, 10);
        },
      ),
    );
  });
  test('limit: short dipole by vectors, h = l/2 (axis . component), for any direction', () => {
    const short: SeparateAerial = { ...level(0.7), length: 0.05, diameter: 0.001 } as SeparateAerial;
    const axis = [Math.cos(0.7), -Math.sin(0.7), 0] as const;
    for (const arrival of [
      { azimuth: 0.2, elevation: 0.1 },
      { azimuth: 2.9, elevation: 0.8 },
      { azimuth: 4.4, elevation: -0.4 },
    ]) {
      const { horizontal, vertical } = arrivalAxes(arrival);
      const dot = (v: readonly number[]) => v.reduce((s, x, i) => s + x * axis[i]!, 0);
      const a = aerialModel(short).at(30e6, arrival);
      expect(C.abs(C.sub(a.horizontal, C.complex(0.025 * dot(horizontal))))).toBeLessThan(1e-5);
      expect(C.abs(C.sub(a.vertical, C.complex(0.025 * dot(vertical))))).toBeLessThan(1e-5);
    }
  });
});
