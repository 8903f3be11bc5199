import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type GroundPath,
  horizonDistance,
  normaliseGroundPath,
  residueSeries,
  smoothEarthDiffraction,
  smoothEarthField,
  twoRay,
} from '#engine';

interface Row {
  readonly frequency: number;
  readonly permittivity: number;
  readonly conductivity: number;
  readonly vertical: boolean;
  readonly distance: number;
  readonly decibels: number;
}
// two routes apart from the engine's code: tests/reference/place/smooth_earth.py
const values = JSON.parse(readFileSync(new URL('../../reference/place/smooth-earth.json', import.meta.url), 'utf8')) as {
  readonly contour: readonly (Row & { readonly height: number })[];
  readonly modes: readonly (Row & { readonly height1: number; readonly height2: number })[];
};

const pathOf = (row: Row, height1: number, height2: number): GroundPath => ({
  distance: row.distance,
  height1,
  height2,
  frequency: row.frequency,
  ground: { permittivity: row.permittivity, conductivity: row.conductivity },
  polarisation: row.vertical ? 'vertical' : 'horizontal',
  earthRadius: 8.5e6,
});
const vhf: GroundPath = {
  distance: 20e3,
  height1: 100,
  height2: 10,
  frequency: 100e6,
  ground: { permittivity: 22, conductivity: 0.003 },
  polarisation: 'horizontal',
  earthRadius: 8.5e6,
};

describe('residue series', () => {
  test("rival: Fock's function by a contour integral, no roots, one end on the ground", () => {
    expect(values.contour.length).toBeGreaterThan(30);
    for (const row of values.contour) {
      const unit = normaliseGroundPath(pathOf(row, row.height, 0));
      const got = 20 * Math.log10(residueSeries(unit.x, unit.q, unit.y1, unit.y2));
      // 120 modes reach 0.001 dB from a normalised distance of 0.3 on
      expect(Math.abs(got - row.decibels), JSON.stringify(row)).toBeLessThan(unit.x < 0.2 ? 0.02 : 1e-3);
    }
  });
});

describe('smooth earth at any distance', () => {
  test("rival: contour integral, medium wave to VHF, through the plane earth's range and the join", () => {
    for (const row of values.contour) {
      const got = smoothEarthField(pathOf(row, row.height, 0)).decibels - 20 * Math.log10(2);
      expect(Math.abs(got - row.decibels), JSON.stringify(row)).toBeLessThan(0.05);
    }
  });

  test('rival: 400 modes, both ends raised, through every join', () => {
    expect(values.modes.length).toBeGreaterThan(150);
    const joined = values.modes.map((row) => smoothEarthField(pathOf(row, row.height1, row.height2)));
    // the hard cases are there: rays mixed with modes, and each alone
    expect(joined.some((field) => field.rays > 0.2 && field.rays < 0.8)).toBe(true);
    expect(joined.some((field) => field.rays === 0)).toBe(true);
    expect(joined.some((field) => field.rays === 1)).toBe(true);
    values.modes.forEach((row, i) => {
      expect(Math.abs(joined[i]!.decibels - row.decibels), `${JSON.stringify(row)} by ${joined[i]!.by}`).toBeLessThan(0.3);
    });
  });

  test('rival: the first term of P.526 section 3 beyond the horizon, within 1 dB (0.6 dB for modest heights, reference/antennas.md 6.2)', () => {
    for (const [height1, height2] of [
      [100, 10],
      [37.5, 1.5],
      [300, 10],
      [30, 30],
    ] as const) {
      for (const share of [1.05, 1.3, 2]) {
        const path = { ...vhf, height1, height2, distance: share * horizonDistance(height1, height2) };
        expect(Math.abs(smoothEarthField(path).decibels + smoothEarthDiffraction(path))).toBeLessThan(height1 > 150 ? 1 : 0.6);
      }
    }
  });

  test('limit: no step where one solution hands over to the next', () => {
    for (const polarisation of ['horizontal', 'vertical'] as const) {
      for (const [height1, height2] of [
        [37.5, 1.5],
        [150, 10],
        [3, 2],
        [600, 1],
      ] as const) {
        // from where the last lobe of two rays is past: there the field only falls
        const first = Math.max(300, (8 * height1 * height2) / 3);
        let last = smoothEarthField({ ...vhf, height1, height2, polarisation, distance: first }).decibels;
        for (let distance = first * 1.01; distance < 150e3; distance *= 1.01) {
          const next = smoothEarthField({ ...vhf, height1, height2, polarisation, distance }).decibels;
          expect(Math.abs(next - last), `${polarisation} ${height1}/${height2} m at ${distance} m`).toBeLessThan(1.5);
          last = next;
        }
      }
    }
  });

  test('limit: the field between two points is the same both ways', () => {
    const bothWays = fc.property(
      fc.double({ min: 0.5, max: 300, noNaN: true }),
      fc.double({ min: 0.5, max: 300, noNaN: true }),
      fc.double({ min: 2.5, max: 5, noNaN: true }),
      fc.constantFrom('horizontal' as const, 'vertical' as const),
      (height1, height2, logDistance, polarisation) => {
        const path = { ...vhf, height1, height2, polarisation, distance: 10 ** logDistance };
        const back = { ...path, height1: height2, height2: height1 };
        expect(Math.abs(smoothEarthField(path).decibels - smoothEarthField(back).decibels)).toBeLessThan(1e-6);
      },
    );
    fc.assert(bothWays, { numRuns: 60, seed: 11 });
  });

  test('limit: over perfect ground a vertical wave doubles and a horizontal one vanishes at grazing', () => {
    const mirror = {
      ...vhf,
      ground: { permittivity: 2, conductivity: 1e8 },
      height1: 0.01,
      height2: 0.01,
      distance: 100,
      earthRadius: Number.POSITIVE_INFINITY,
    };
    const up = twoRay({ ...mirror, polarisation: 'vertical' })!.factor;
    expect(Math.hypot(up.re, up.im)).toBeCloseTo(2, 3);
    const level = twoRay(mirror)!.factor;
    expect(Math.hypot(level.re, level.im)).toBeLessThan(1e-3);
  });
});

describe('two rays', () => {
  test('limit: a great radius gives plane earth', () => {
    const round = twoRay({ ...vhf, distance: 4e3, earthRadius: 1e13 })!;
    const plane = twoRay({ ...vhf, distance: 4e3, earthRadius: Number.POSITIVE_INFINITY })!;
    expect(round.factor.re).toBeCloseTo(plane.factor.re, 5);
    expect(round.divergence).toBeCloseTo(1, 5);
  });

  test('limit: the reflected ray leaves the ground at the angle it came', () => {
    // angles at both legs, from the heights above the tangent plane
    const { grazing, pathDifference } = twoRay({ ...vhf, height1: 300, height2: 40, distance: 30e3 })!;
    // shortest path by way of the sphere, by brute force over the point of reflection
    let shortest = Number.POSITIVE_INFINITY;
    let where = 0;
    const a = 8.5e6;
    const leg = (height: number, along: number) => Math.sqrt(a * a + (a + height) ** 2 - 2 * a * (a + height) * Math.cos(along / a));
    for (let d1 = 15e3; d1 < 30e3; d1 += 1) {
      const length = leg(300, d1) + leg(40, 30e3 - d1);
      if (length < shortest) {
        shortest = length;
        where = d1;
      }
    }
    const direct = Math.sqrt((a + 300) ** 2 + (a + 40) ** 2 - 2 * (a + 300) * (a + 40) * Math.cos(30e3 / a));
    expect(pathDifference).toBeCloseTo(shortest - direct, 2);
    expect(grazing).toBeCloseTo((300 - where ** 2 / (2 * a)) / where, 4);
  });
});
