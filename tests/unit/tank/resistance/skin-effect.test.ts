import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  METALS,
  type Metal,
  MU0,
  radiusInSkinDepths,
  roundWireDirectResistance,
  roundWireImpedanceRatio,
  roundWireInternalInductance,
  roundWireResistance,
  skinDepth,
  surfaceResistance,
} from '#engine';

test('limit: at direct current the resistance is rho l / A, whatever the surface, and the internal inductance mu0 l / 8 pi', () => {
  const area = Math.PI * 0.5e-3 ** 2;
  for (const surface of [1, 1.3]) expect(roundWireResistance(1e-3, 2, 'brass', 0, surface)).toBeCloseTo((6.6e-8 * 2) / area, 12);
  expect(roundWireInternalInductance(1e-3, 2, 'brass', 0)).toBeCloseTo((MU0 * 2) / (8 * Math.PI), 15);
});

test('limit: far below the skin depth Rac/Rdc - 1 goes as (a/delta)^4 / 48 and 1 - Li/Li0 as (a/delta)^4 / 96 (series of the Bessel functions)', () => {
  for (const x of [0.1, 0.3]) {
    const { re, im } = roundWireImpedanceRatio(x);
    expect((re - 1) / (x ** 4 / 48)).toBeCloseTo(1, 2);
    expect((1 - (4 * im) / x ** 2) / (x ** 4 / 96)).toBeCloseTo(1, 2);
  }
  // the two ways of computing the internal inductance meet
  const { resistivity } = METALS.copper;
  const frequencyAt = (x: number) => (x ** 2 * resistivity) / (Math.PI * MU0 * 0.5e-3 ** 2);
  const below = roundWireInternalInductance(1e-3, 1, 'copper', frequencyAt(0.999e-3));
  const above = roundWireInternalInductance(1e-3, 1, 'copper', frequencyAt(1.001e-3));
  expect(above / below).toBeCloseTo(1, 8);
});

test('limit: with a thin skin, resistance is that of a tube of the skin depth plus a quarter, and equals the internal reactance', () => {
  for (const x of [50, 300, 3000]) {
    const { re, im } = roundWireImpedanceRatio(x);
    // asymptotic series of J0/J1: x/2 + 1/4 + 3/(32 x)
    expect(re).toBeCloseTo(x / 2 + 1 / 4 + 3 / (32 * x), 4);
    expect(im / re).toBeCloseTo(1, 1);
  }
  const [d, f] = [2e-3, 100e6];
  const tube = surfaceResistance(METALS.copper.resistivity, f) / (Math.PI * d);
  expect(roundWireResistance(d, 1, 'copper', f) / tube).toBeCloseTo(1, 2);
});

test('identity: with a thin skin the surface factor multiplies the resistance; roughness of the skin counts less where current fills the wire', () => {
  const ratio = (d: number, f: number) => roundWireResistance(d, 1, 'copper', f, 1.3) / roundWireResistance(d, 1, 'copper', f);
  expect(ratio(1e-3, 100e6)).toBeGreaterThan(1.29);
  expect(ratio(1e-3, 100e6)).toBeLessThanOrEqual(1.3);
  expect(ratio(0.1e-3, 100e3)).toBeLessThan(1.001);
});

test('identity: skin depth, resistivity and surface resistance belong together, and permeability shrinks the depth', () => {
  const { resistivity, permeability } = METALS.steel;
  const depth = skinDepth(resistivity, 1e6, permeability);
  expect(surfaceResistance(resistivity, 1e6, permeability) * depth).toBeCloseTo(resistivity, 15);
  expect(skinDepth(resistivity, 1e6) / depth).toBeCloseTo(Math.sqrt(permeability), 10);
  expect(radiusInSkinDepths(1e-3, 'steel', 1e6)).toBeCloseTo(0.5e-3 / depth, 10);
});

test('practice: silver is hardly better than copper, brass twice as bad, steel very much worse (common practice, no source)', () => {
  const at = (metal: Metal) => roundWireResistance(1e-3, 1, metal, 100e6) / roundWireResistance(1e-3, 1, 'copper', 100e6);
  expect(at('silver')).toBeGreaterThan(0.95);
  expect(at('silver')).toBeLessThan(1);
  expect(at('brass')).toBeGreaterThan(1.7);
  expect(at('brass')).toBeLessThan(2.2);
  expect(at('steel')).toBeGreaterThan(15);
});

test('property: resistance is finite, at least that to direct current, and rises with frequency', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -5, max: -1.5, noNaN: true }),
      fc.double({ min: 0, max: 9.5, noNaN: true }),
      fc.constantFrom<Metal>('copper', 'brass', 'aluminium', 'steel', 'silver'),
      (logDiameter, logFrequency, metal) => {
        const d = 10 ** logDiameter;
        const f = 10 ** logFrequency;
        const r = roundWireResistance(d, 1, metal, f);
        expect(r).toBeGreaterThanOrEqual(roundWireDirectResistance(d, 1, metal) * (1 - 1e-12));
        expect(roundWireResistance(d, 1, metal, f * 1.1)).toBeGreaterThanOrEqual(r * (1 - 1e-12));
        const l = roundWireInternalInductance(d, 1, metal, f);
        expect(l).toBeGreaterThan(0);
        expect(l).toBeLessThanOrEqual(roundWireInternalInductance(d, 1, metal, 0) * (1 + 1e-7));
      },
    ),
  );
});
