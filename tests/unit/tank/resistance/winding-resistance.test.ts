import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type CoilGeometry, fieldOfRow, METALS, MU0, radiusInSkinDepths, roundWireResistance, windingResistance } from '#engine';

const coil: CoilGeometry = {
  kind: 'geometry',
  turns: 5,
  innerDiameter: 10e-3,
  wireDiameter: 1e-3,
  pitch: 2e-3,
  metal: 'copper',
  surfaceFactor: 1,
  leadLength: 10e-3,
};
const FM = 98e6;

/** Q of the winding alone, with the inductance of its rings from the same field. */
function coilQ(c: CoilGeometry, frequency: number): number {
  const mean = c.innerDiameter + c.wireDiameter;
  const { impedance } = fieldOfRow({
    count: c.turns,
    wireOverPitch: c.wireDiameter / c.pitch,
    curvature: c.wireDiameter / mean,
    radiusInSkinDepths: radiusInSkinDepths(c.wireDiameter, c.metal, frequency),
  });
  return (Math.PI * frequency * MU0 * mean * impedance!.re) / windingResistance(c, frequency).resistance;
}

test('identity: straight resistance is that of the helix pulled out, and the factor multiplies it', () => {
  const { resistance, straightResistance, proximityFactor, method, source } = windingResistance(coil, FM);
  const length = 5 * Math.hypot(Math.PI * 11e-3, 2e-3);
  expect(straightResistance).toBeCloseTo(roundWireResistance(1e-3, length, 'copper', FM), 12);
  expect(resistance).toBeCloseTo(straightResistance * proximityFactor, 12);
  expect(method).toBe('computed: field of 5 coaxial turns, 5 cylindrical orders');
  expect(source).toContain('Butterworth');
});

test('limit: direct current sees rho l / A and no neighbours', () => {
  const { resistance, proximityFactor } = windingResistance(coil, 0);
  expect(proximityFactor).toBe(1);
  const length = 5 * Math.hypot(Math.PI * 11e-3, 2e-3);
  expect(resistance).toBeCloseTo((METALS.copper.resistivity * length) / (Math.PI * 0.5e-3 ** 2), 9);
});

test('limit: one wide turn of thin wire is straight wire; a thick one loses a few per cent more', () => {
  const wide = windingResistance({ ...coil, turns: 1, innerDiameter: 0.5, wireDiameter: 0.5e-3 }, FM);
  expect(wide.proximityFactor).toBeCloseTo(1, 4);
  const thick = windingResistance({ ...coil, turns: 1 }, FM);
  expect(thick.proximityFactor).toBeGreaterThan(1.01);
  expect(thick.proximityFactor).toBeLessThan(1.06);
});

test('limit: part turns lie between whole ones, as the mean by angle of the wires that pass a section', () => {
  const total = (turns: number) => turns * windingResistance({ ...coil, turns }, FM).proximityFactor;
  for (const part of [0.25, 0.5, 0.75]) expect(total(5 + part)).toBeCloseTo((1 - part) * total(5) + part * total(6), 9);
  expect(windingResistance({ ...coil, turns: 0.5 }, FM).proximityFactor).toBeCloseTo(
    windingResistance({ ...coil, turns: 1 }, FM).proximityFactor,
    12,
  );
  expect(windingResistance({ ...coil, turns: 5.5 }, FM).method).toContain('5 and 6 coaxial turns');
});

test('limit: coils beyond 400 turns go on from those below without a step', () => {
  const long: CoilGeometry = { ...coil, turns: 400, innerDiameter: 25e-3, wireDiameter: 0.2e-3, pitch: 0.25e-3 };
  const below = windingResistance(long, 200e3);
  const above = windingResistance({ ...long, turns: 404 }, 200e3);
  expect(Math.abs(above.proximityFactor / below.proximityFactor - 1)).toBeLessThan(0.002);
  expect(above.remarks.join()).toContain('endless coil');
  expect(below.remarks.join()).not.toContain('endless coil');
});

test('identity: what cannot be computed as given is said', () => {
  const said = (change: Partial<CoilGeometry>, f = FM) => windingResistance({ ...coil, ...change }, f).remarks.join('; ');
  expect(said({})).toBe('');
  expect(said({ pitch: 1e-3 })).toContain('touch');
  expect(said({ pitch: 1e-3, turns: 1 })).toBe('');
  expect(said({ innerDiameter: 1e-3 })).toContain('thicker');
  expect(said({ metal: 'steel' })).toContain('permeability');
  expect(said({ turns: 50 })).toContain('eighth of the wavelength');
  expect(said({}, 1e6)).toContain('litz');
});

test('practice: bright wire beats tarnished by the surface factor, copper beats steel (common practice, no source)', () => {
  const bright = windingResistance(coil, FM).resistance;
  const dull = windingResistance({ ...coil, surfaceFactor: 1.3 }, FM).resistance;
  expect(dull / bright).toBeGreaterThan(1.28);
  expect(dull / bright).toBeLessThanOrEqual(1.3);
  expect(windingResistance({ ...coil, metal: 'steel' }, FM).resistance).toBeGreaterThan(8 * bright);
});

test('practice: at a given pitch thick wire has the higher Q until the turns crowd (common practice, no source)', () => {
  const at = (wireDiameter: number) => coilQ({ ...coil, innerDiameter: 11e-3 - wireDiameter, wireDiameter }, FM);
  expect(at(0.5e-3)).toBeGreaterThan(1.3 * at(0.3e-3));
  expect(at(1e-3)).toBeGreaterThan(1.15 * at(0.5e-3));
  expect(at(1.9e-3)).toBeLessThan(at(1.5e-3));
});

test('practice: with length and diameter given, the best wire is 0.5 to 0.8 of the pitch (common practice, no source)', () => {
  for (const lengthOverDiameter of [0.6, 1, 2])
    for (const turns of [8, 12, 20]) {
      const at = (s: number) => {
        const pitch = (lengthOverDiameter * 20e-3) / turns;
        return coilQ({ ...coil, turns, innerDiameter: 20e-3 - s * pitch, wireDiameter: s * pitch, pitch }, 20e6);
      };
      const grid = [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.97];
      const best = grid.reduce((a, b) => (at(b) > at(a) ? b : a));
      expect(best, `${turns} turns, l/D ${lengthOverDiameter}`).toBeGreaterThanOrEqual(0.5);
      expect(best, `${turns} turns, l/D ${lengthOverDiameter}`).toBeLessThanOrEqual(0.8);
    }
});

test('published: data sheet of small air-core coils, 8 to 43 nH, promises a Q of 100 at least at 150 MHz (coil-Q-com-150M); the ideal is above', () => {
  const small: CoilGeometry = { ...coil, turns: 4, innerDiameter: 3e-3, wireDiameter: 0.6e-3, pitch: 0.8e-3 };
  const q = coilQ(small, 150e6);
  expect(q).toBeGreaterThan(100);
  expect(q).toBeLessThan(400);
});

test('property: any coil a person may wind has a finite resistance above that of direct current in the same wire', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 60 }),
      fc.double({ min: 1e-3, max: 0.3, noNaN: true }),
      fc.double({ min: 0.05e-3, max: 6e-3, noNaN: true }),
      fc.double({ min: 1, max: 10, noNaN: true }),
      fc.double({ min: 4.5, max: 8.6, noNaN: true }),
      fc.constantFrom('copper', 'brass', 'steel', 'silver'),
      (quarters, innerDiameter, wireDiameter, spread, logFrequency, metal) => {
        const given = { ...coil, turns: quarters / 4, innerDiameter, wireDiameter, pitch: spread * wireDiameter, metal } as CoilGeometry;
        const { resistance, straightResistance } = windingResistance(given, 10 ** logFrequency);
        expect(resistance).toBeGreaterThan(0.89 * straightResistance);
        expect(resistance).toBeLessThan(50 * straightResistance);
      },
    ),
  );
});
