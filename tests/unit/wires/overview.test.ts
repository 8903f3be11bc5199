import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type AerialDescription,
  C,
  designBeam,
  patternFigures,
  patternSummary,
  resonanceFigures,
  resonances,
  resonantScale,
  SPEED_OF_LIGHT,
  shareFigures,
  usualElements,
  type WireShape,
  type WiresDescription,
  wireAerial,
  wireParts,
  wireShares,
  wireStructure,
} from '#engine';
import { arbitraryAerial } from '../set-file/arbitrary.ts';
import { shapes } from './shapes.ts';

const free = (shape: WireShape): WiresDescription => ({ kind: 'wires', shape, height: 3, ground: { kind: 'free-space' } });
const dipole = (length: number, diameter: number): WiresDescription =>
  free({
    kind: 'dipole',
    length,
    diameter,
    metal: 'lossless',
    orientation: { kind: 'horizontal', broadside: 0 },
    includedAngle: Math.PI,
    bend: 'down',
    slope: 0,
  });
const degrees = (radians: number | null) => (radians! * 180) / Math.PI;

describe('resonances', () => {
  test('rival: a thin-wire calculation of resonant dipoles (reference/antennas.md 1.3), 0.6 % of length, 72 ohm', () => {
    for (const [ratio, wavelengths] of [
      [5000, 0.486],
      [500, 0.48],
      [100, 0.473],
      [50, 0.4685],
    ] as const) {
      const [first] = resonances(wireAerial(dipole(1.5, 1.5 / ratio)), 80e6, 110e6);
      expect(first!.kind).toBe('series');
      expect(Math.abs((1.5 * first!.frequency) / SPEED_OF_LIGHT / wavelengths - 1), `${ratio}`).toBeLessThan(0.006);
      expect(first!.resistance, `${ratio}`).toBeGreaterThan(70);
      expect(first!.resistance, `${ratio}`).toBeLessThan(73);
    }
  });
  test('published: Balanis table 9.1, second resonance (reference/antennas.md 1.3): of the parallel kind, Rn^2/67 ohm within a quarter', () => {
    const found = resonances(wireAerial(dipole(1.5, 1.5 / 500)), 80e6, 220e6);
    expect(found.map((r) => r.kind)).toEqual(['series', 'parallel']);
    const expected = (150 * Math.log10(500)) ** 2 / 67;
    expect(Math.abs(found[1]!.resistance / expected - 1)).toBeLessThan(0.25);
  });
  test('limit: without loss, twice the size resonates at half the frequency', () => {
    const [small] = resonances(wireAerial(dipole(1.5, 0.006)), 80e6, 110e6);
    const [large] = resonances(wireAerial({ ...dipole(3, 0.012), segments: 12 }), 40e6, 55e6);
    const [same] = resonances(wireAerial({ ...dipole(1.5, 0.006), segments: 12 }), 80e6, 110e6);
    expect(large!.frequency).toBeCloseTo(same!.frequency / 2, -2);
    // another number of segments shifts it by the 0.6 % that the convergence test tells of
    expect(Math.abs(small!.frequency / same!.frequency - 1)).toBeLessThan(0.006);
  });
  test('none where it stays capacitive: a figure without a value, not an error', () => {
    const found = resonances(wireAerial(dipole(0.3, 0.003)), 80e6, 110e6);
    expect(found).toEqual([]);
    expect(resonanceFigures(found, 80e6, 110e6)).toMatchObject([{ name: 'aerial.resonance', value: null, unit: 'Hz' }]);
  });
  test('cut to resonance, it resonates, whether it was too short or too long', () => {
    for (const [length, frequency] of [
      [1.2, 98e6],
      [1.7, 98e6],
      [1.44, 107e6],
    ] as const) {
      const scaled = (k: number) => dipole(k * length, 0.006);
      const scale = resonantScale(scaled, frequency)!;
      const { re, im } = wireAerial(scaled(scale)).at(frequency, { azimuth: 0, elevation: 0 }).impedance;
      // the band's own mesh may differ by a segment
      expect(Math.abs(im)).toBeLessThan(0.06 * re);
    }
  });
  test('limit: what resonates is left as it is; nothing twice or half as long does, and there is no answer', () => {
    const [first] = resonances(wireAerial(dipole(1.44, 0.006)), 80e6, 120e6);
    expect(resonantScale((k) => dipole(k * 1.44, 0.006), first!.frequency)).toBeCloseTo(1, 2);
    expect(resonantScale((k) => dipole(k * 0.3, 0.006), 98e6)).toBeNull();
  });
});

describe('the pattern in a few numbers', () => {
  test('published: half-power widths, half-wave dipole 78 degrees (Balanis sec. 4.6), short dipole 90 degrees (sec. 4.2); none across it', () => {
    for (const [length, expected] of [
      [0.5, 78],
      [0.05, 90],
    ] as const) {
      const aerial = wireAerial(dipole((length * SPEED_OF_LIGHT) / 100e6, 1e-3));
      const { discretised, solution } = aerial.solved(100e6);
      const { width, frontToBack, strongest } = patternSummary(discretised, solution);
      expect(Math.abs(degrees(width.level) - expected), `${length}`).toBeLessThan(0.5);
      expect(width.upright).toBeNull();
      expect(frontToBack).toBeCloseTo(0, 6);
      expect(strongest.arrival.elevation).toBeCloseTo(0, 2);
    }
  });
  test('published: greatest gain of the half-wave dipole 2.15 dB (Balanis eq. 4-94), short dipole 1.76 dB (eq. 4-31b)', () => {
    for (const [length, expected] of [
      [0.5, 2.15],
      [0.05, 1.76],
    ] as const) {
      const { discretised, solution } = wireAerial(dipole((length * SPEED_OF_LIGHT) / 100e6, 1e-3)).solved(100e6);
      const gain = patternFigures(patternSummary(discretised, solution)).find((f) => f.name === 'pattern.gain')!;
      expect(gain.value).toBeCloseTo(expected, 1);
    }
  });
  test('practice: a beam is narrower across its elements’ plane than a dipole, and finds its own front (common practice, no source)', () => {
    const beam = free({ ...(shapes('copper')['three-element beam'] as Extract<WireShape, { kind: 'beam' }>), bearing: 1 });
    const { discretised, solution } = wireAerial(beam).solved(98e6);
    const { width, strongest, frontToBack } = patternSummary(discretised, solution);
    expect(degrees(width.level)).toBeLessThan(75);
    expect(degrees(width.upright)).toBeGreaterThan(degrees(width.level));
    expect(strongest.arrival.azimuth).toBeCloseTo(1, 1);
    expect(frontToBack).toBeGreaterThan(5);
  });
});

describe('parts and their shares', () => {
  test('every wire of every shape has a name', () => {
    for (const [name, shape] of Object.entries(shapes('copper'))) {
      const ground = name.includes('earth') ? ({ kind: 'perfect' } as const) : ({ kind: 'free-space' } as const);
      const wires = wireStructure({ kind: 'wires', shape, height: name.includes('earth') ? 2.5 : 3, ground }).wires;
      expect(wireParts(shape), name).toHaveLength(wires.length);
    }
    fc.assert(
      fc.property(
        arbitraryAerial.filter((a): a is Extract<AerialDescription, { kind: 'wires' }> => a.kind === 'wires'),
        (aerial) => {
          expect(wireParts(aerial.shape)).toHaveLength(wireStructure(aerial).wires.length);
        },
      ),
      { numRuns: 100 },
    );
  });
  test('identity: shares of the e.m.f. add up to one, losses to that of the whole, for any mixture of fields', () => {
    const arrival = { azimuth: 0.7, elevation: 0.1 };
    for (const [name, shape] of Object.entries(shapes('copper'))) {
      if (name.includes('earth')) continue;
      const aerial = wireAerial(free(shape));
      const { discretised, solution } = aerial.solved(98e6);
      const at = aerial.at(98e6, arrival);
      const shares = wireShares(discretised, solution, arrival);
      for (const field of [
        { horizontal: 1, vertical: 0 },
        { horizontal: 0, vertical: 1 },
        { horizontal: 0.3, vertical: 2 },
      ]) {
        const parts = shareFigures(shares, wireParts(shape), field);
        const sum = (key: string) => parts.reduce((all, p) => all + (p.figures.find((f) => f.name === `share.${key}`)!.value ?? 0), 0);
        const heard = field.horizontal * C.abs(at.horizontal) + field.vertical * C.abs(at.vertical) > 1e-9;
        if (heard) expect(sum('emf'), name).toBeCloseTo(1, 6);
        else expect(parts.map((p) => p.figures[0]!.value)).toEqual(parts.map(() => null));
        expect(sum('lossResistance') / at.lossResistance, name).toBeCloseTo(1, 3);
      }
    }
  });
  test('limit: two halves of an upright dipole hear alike', () => {
    const rod = free(shapes('copper')['rod with drop wire']!);
    const aerial = wireAerial({
      ...rod,
      shape: { ...rod.shape, against: { kind: 'drop-wire', length: 0.75, diameter: 0.006, metal: 'copper' } } as WireShape,
    });
    const { discretised, solution } = aerial.solved(98e6);
    const arrival = { azimuth: 0, elevation: 0 };
    const parts = shareFigures(wireShares(discretised, solution, arrival), ['rod', 'drop wire'], { horizontal: 0, vertical: 1 });
    for (const p of parts) expect(p.figures[0]!.value, p.part).toBeCloseTo(0.5, 3);
    const { vertical } = aerial.at(98e6, arrival);
    expect(parts[0]!.figures[1]!.value).toBeCloseTo(C.abs(vertical) / 2, 3);
  });
  test('a wave that is not there is shared by nobody', () => {
    const { discretised, solution } = wireAerial(dipole(1.44, 0.006)).solved(98e6);
    const parts = shareFigures(wireShares(discretised, solution, { azimuth: 0, elevation: 0 }), ['dipole'], { horizontal: 0, vertical: 0 });
    expect(parts[0]!.figures[0]!.value).toBeNull();
  });
});

test('published: NBS TN 688 table 1, elements on booms of 0.4, 0.8 and 2.2 wavelengths (reference/antennas.md 2.2)', () => {
  expect([0.4, 0.8, 2.2].map(usualElements)).toEqual([3, 5, 12]);
  expect(usualElements(0.1)).toBe(2);
  expect(usualElements(9)).toBe(12);
});

test('a search cut short is still better than its start, and not much worse than one that rests', () => {
  const wish = {
    frequency: 98e6,
    boom: 1.22,
    elements: 3,
    diameter: 8e-3,
    metal: 'aluminium',
    polarisation: 'horizontal',
    bearing: 0,
    driven: { kind: 'straight' },
    goal: { kind: 'impedance', resistance: 75, reactance: 0 },
  } as const;
  const into = (r: { gain: number; match: number }) => r.gain + 10 * Math.log10(r.match);
  const short = designBeam({ ...wish, trials: 25 });
  expect(short.evaluations).toBeLessThan(30);
  expect(into(short.best)).toBeGreaterThan(into(short.start) + 0.5);
  expect(into(short.best)).toBeGreaterThan(into(designBeam(wish).best) - 0.03);
});
