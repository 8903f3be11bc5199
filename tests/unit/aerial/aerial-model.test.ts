import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { aerialModel, C, GivenError, type SeparateAerial } from '#engine';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const metal = fc.constantFrom('copper', 'brass', 'aluminium', 'steel', 'silver');
const orientation = fc.oneof(
  fc.record({ kind: fc.constant('vertical' as const) }),
  fc.record({ kind: fc.constant('horizontal' as const), broadside: number(0, 6.3) }),
);
const axis = fc.oneof(
  fc.record({ kind: fc.constant('vertical' as const) }),
  fc.record({ kind: fc.constant('horizontal' as const), plane: number(0, 6.3) }),
);
const wireOf = { length: number(0.1, 30), diameter: number(0.0001, 0.02) };
const counterpoise = fc.oneof(
  fc.record({ kind: fc.constant('plane' as const) }),
  fc.record({ kind: fc.constant('drop-wire' as const), ...wireOf }),
  fc.record({ kind: fc.constant('set' as const), size: number(0.01, 1) }),
  fc.record({ kind: fc.constant('earth-wire' as const), ...wireOf, earthResistance: number(0, 1000) }),
);
const bare: fc.Arbitrary<SeparateAerial> = fc.oneof(
  fc.record({ kind: fc.constant('dipole' as const), ...wireOf, metal, orientation }),
  fc.record({ kind: fc.constant('whip' as const), ...wireOf, metal, counterpoise }),
  fc.record({
    kind: fc.constant('loop' as const),
    diameter: number(0.05, 2),
    turns: number(1, 20),
    wireDiameter: number(0.0005, 0.01),
    windingLength: number(0.25, 0.5),
    metal,
    axis,
  }),
  fc.record({
    kind: fc.constant('wire-to-earth' as const),
    horizontal: number(0, 100),
    vertical: number(0.5, 40),
    diameter: number(0.0002, 0.01),
    earthResistance: number(0, 1000),
  }),
  fc.record({
    kind: fc.constant('electrical' as const),
    impedance: fc.constant([{ frequency: 1e8, resistance: 50, reactance: -20 }]),
    gain: number(-20, 12),
    orientation: fc.record({ kind: fc.constant('horizontal' as const), broadside: number(0, 6.3) }),
    frontToBack: number(0, 30),
  }),
);
const feeder = fc.record({
  length: number(0, 100),
  impedance: number(20, 600),
  velocityFactor: number(0.3, 1),
  loss: number(0, 1),
  lossFrequency: number(1e6, 1e9),
});
const any = fc.tuple(bare, fc.option(feeder, { nil: undefined })).map(([a, f]) => (f ? { ...a, feeder: f } : a) as SeparateAerial);

describe('every aerial', () => {
  test('no NaN, no throw, passive, figures with names, units, sources: any description, frequency, direction', () => {
    fc.assert(
      fc.property(any, number(1e5, 3e8), number(-10, 10), number(-1.6, 1.6), (description, frequency, azimuth, elevation) => {
        const model = aerialModel(description);
        const a = model.at(frequency, { azimuth, elevation });
        for (const v of [a.impedance.re, a.impedance.im, a.horizontal.re, a.horizontal.im, a.vertical.re, a.vertical.im, a.lossResistance])
          expect(Number.isFinite(v)).toBe(true);
        expect(a.impedance.re).toBeGreaterThan(0);
        expect(a.lossResistance).toBeGreaterThanOrEqual(0);
        expect(a.lossResistance).toBeLessThanOrEqual(a.impedance.re * (1 + 1e-9));
        const figures = model.figures(frequency, { azimuth, elevation });
        expect(new Set(figures.map((f) => f.name)).size).toBe(figures.length);
        for (const f of figures) {
          expect(f.value === null || Number.isFinite(f.value), f.name).toBe(true);
          expect(f.unit.length * f.label.length * f.method.length * f.working.source.length, f.name).toBeGreaterThan(0);
        }
        for (const r of model.remarks(frequency)) expect(r.length).toBeGreaterThan(10);
      }),
      { numRuns: 400 },
    );
  });
  test('figures tell what `at` gives: resistance, effective length, gain by the available power', () => {
    const model = aerialModel({
      kind: 'dipole',
      length: 1.4,
      diameter: 0.006,
      metal: 'steel',
      orientation: { kind: 'horizontal', broadside: 0.3 },
    });
    const arrival = { azimuth: 0.9, elevation: 0.4 };
    const a = model.at(99e6, arrival);
    const value = (name: string) => model.figures(99e6, arrival).find((f) => f.name === `aerial.${name}`)!.value!;
    expect(value('resistance')).toBe(a.impedance.re);
    expect(value('effectiveLength.vertical')).toBe(C.abs(a.vertical));
    expect(value('gain') - value('directivity')).toBeCloseTo(10 * Math.log10(value('efficiency')), 9);
    const share = (p: string) => 10 ** (value(`polarisationMismatch.${p}`) / 10);
    expect(share('horizontal') + share('vertical')).toBeCloseTo(1, 9);
  });
  test('limit: for the polarisation it cannot hear an aerial has no mismatch figure, not minus infinity', () => {
    const model = aerialModel({ kind: 'whip', length: 1, diameter: 0.004, metal: 'brass', counterpoise: { kind: 'plane' } });
    const figure = (p: string) =>
      model.figures(99e6, { azimuth: 0, elevation: 0 }).find((f) => f.name === `aerial.polarisationMismatch.${p}`)!;
    expect(figure('horizontal').value).toBeNull();
    expect(figure('vertical').value).toBeCloseTo(0, 12);
  });
});

describe('what cannot be', () => {
  const dipole = { kind: 'dipole', length: 1.5, diameter: 0.01, metal: 'copper', orientation: { kind: 'vertical' } } as const;
  const whip = { kind: 'whip', length: 1, diameter: 0.004, metal: 'brass' } as const;
  const loop = {
    kind: 'loop',
    diameter: 0.1,
    turns: 3,
    wireDiameter: 0.002,
    windingLength: 0.01,
    metal: 'copper',
    axis: { kind: 'vertical' },
  } as const;
  const wire = { kind: 'wire-to-earth', horizontal: 20, vertical: 8, diameter: 0.002, earthResistance: 30 } as const;
  const given = {
    kind: 'electrical',
    impedance: [{ frequency: 1e8, resistance: 50, reactance: 0 }],
    gain: 2,
    orientation: { kind: 'horizontal', broadside: 0 },
    frontToBack: 0,
  } as const;
  const feeder = { length: 3, impedance: 75, velocityFactor: 0.7, loss: 0.1, lossFrequency: 1e8 };
  const cases: [string, SeparateAerial][] = [
    ['aerial.length', { ...dipole, length: 0 }],
    ['aerial.length', { ...dipole, length: Number.NaN }],
    ['aerial.diameter', { ...dipole, diameter: -0.01 }],
    ['aerial.diameter', { ...dipole, diameter: 1 }],
    ['aerial.orientation.broadside', { ...dipole, orientation: { kind: 'horizontal', broadside: Number.NaN } }],
    ['aerial.length', { ...whip, length: -1, counterpoise: { kind: 'plane' } }],
    ['aerial.counterpoise.size', { ...whip, counterpoise: { kind: 'set', size: 0 } }],
    ['aerial.counterpoise.length', { ...whip, counterpoise: { kind: 'drop-wire', length: 0, diameter: 0.001 } }],
    ['aerial.counterpoise.diameter', { ...whip, counterpoise: { kind: 'drop-wire', length: 1, diameter: 0 } }],
    [
      'aerial.counterpoise.earthResistance',
      { ...whip, counterpoise: { kind: 'earth-wire', length: 1, diameter: 0.001, earthResistance: -1 } },
    ],
    ['aerial.turns', { ...loop, turns: 0.5 }],
    ['aerial.turns', { ...loop, turns: 1e9 }],
    ['aerial.wireDiameter', { ...loop, wireDiameter: 0.08 }],
    ['aerial.windingLength', { ...loop, windingLength: 0.004 }],
    ['aerial.windingLength', { ...loop, windingLength: 0 }],
    ['aerial.axis.plane', { ...loop, axis: { kind: 'horizontal', plane: Number.POSITIVE_INFINITY } }],
    ['aerial.length', { ...wire, vertical: 0 }],
    ['aerial.horizontal', { ...wire, horizontal: -1 }],
    ['aerial.earthResistance', { ...wire, earthResistance: Number.NaN }],
    ['aerial.impedance', { ...given, impedance: [] }],
    ['aerial.impedance[0].resistance', { ...given, impedance: [{ frequency: 1e8, resistance: 0, reactance: 0 }] }],
    ['aerial.impedance[0].reactance', { ...given, impedance: [{ frequency: 1e8, resistance: 5, reactance: Number.NaN }] }],
    [
      'aerial.impedance[1].frequency',
      {
        ...given,
        impedance: [
          { frequency: 1e8, resistance: 5, reactance: 0 },
          { frequency: 1e8, resistance: 5, reactance: 0 },
        ],
      },
    ],
    ['aerial.gain', { ...given, effectiveLength: 1 }],
    ['aerial.gain', { ...given, gain: Number.NaN }],
    ['aerial.frontToBack', { ...given, frontToBack: -3 }],
    ['aerial.frontToBack', { ...given, orientation: { kind: 'vertical' }, frontToBack: 10 }],
    ['aerial.feeder.impedance', { ...dipole, feeder: { ...feeder, impedance: 0 } }],
    ['aerial.feeder.velocityFactor', { ...dipole, feeder: { ...feeder, velocityFactor: 0 } }],
    ['aerial.feeder.length', { ...dipole, feeder: { ...feeder, length: -1 } }],
    ['aerial.feeder.loss', { ...dipole, feeder: { ...feeder, loss: Number.NaN } }],
    ['aerial.feeder.lossFrequency', { ...dipole, feeder: { ...feeder, lossFrequency: 0 } }],
  ];
  test.each(cases)('%s is refused with its place, the reason and the cure', (path, description) => {
    let error: unknown;
    try {
      aerialModel(description);
    } catch (e) {
      error = e;
    }
    expect(error).toBeInstanceOf(GivenError);
    const { path: place, why, mend } = error as GivenError;
    expect(place).toBe(path);
    expect(why.length).toBeGreaterThan(5);
    expect(mend.length).toBeGreaterThan(5);
  });
  test('neither gain nor effective length: refused', () => {
    const { gain, ...rest } = given;
    expect(gain).toBe(2);
    expect(() => aerialModel(rest)).toThrow(GivenError);
  });
});
