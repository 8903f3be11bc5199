import { expect, test } from 'vitest';
import {
  azimuthCut,
  elevationCut,
  frontToBack,
  SPEED_OF_LIGHT,
  strongestDirection,
  type WireStructure,
  wireAerial,
  wireAerialOf,
  wireCurrents,
} from '#engine';
import { described } from './shapes.ts';

const point = (x: number, y: number, z: number) => ({ x, y, z });
const dipole = (length: number, ground: WireStructure['ground'], height = 0) =>
  wireAerialOf(
    {
      wires: [{ from: point(-length / 2, 0, height), to: point(length / 2, 0, height), diameter: 2e-4, metal: 'lossless' }],
      feed: { wire: 0, at: 0.5 },
      loads: [],
      ground,
    },
    null,
  ).solved(SPEED_OF_LIGHT);

test('published: a half-wave dipole has 78 degrees between its half-power points and nothing along itself (Balanis, Antenna Theory, 3rd ed., sec. 4.6)', () => {
  const { discretised, solution } = dipole(0.5, { kind: 'free-space' });
  const cut = azimuthCut(discretised, solution, 0, 720);
  const top = cut[0]!.gain.total!;
  expect(top).toBeGreaterThan(2.1);
  expect(top).toBeLessThan(2.2);
  const fall = cut.findIndex((p) => (p.gain.total ?? -1e9) < top - 10 * Math.log10(2));
  expect(2 * fall * 0.5).toBeGreaterThan(76);
  expect(2 * fall * 0.5).toBeLessThan(80);
  expect(cut[180]!.gain.total ?? -1e9).toBeLessThan(-100);
  expect(cut[0]!.gain.vertical ?? -1e9).toBeLessThan(-100);
  expect(frontToBack(discretised, solution, { azimuth: 0, elevation: 0 })).toBeCloseTo(0, 6);
});

test('published: a dipole a quarter wave over a perfect plane has its maximum overhead, at half a wave its first lobe at 30 degrees (Balanis, sec. 4.8.1)', () => {
  const overhead = dipole(0.48, { kind: 'perfect' }, 0.25);
  expect(strongestDirection(overhead.discretised, overhead.solution).arrival.elevation).toBeCloseTo(Math.PI / 2, 1);
  const half = dipole(0.48, { kind: 'perfect' }, 0.5);
  const best = strongestDirection(half.discretised, half.solution);
  expect((best.arrival.elevation * 180) / Math.PI).toBeGreaterThan(28);
  expect((best.arrival.elevation * 180) / Math.PI).toBeLessThan(32);
  const cut = elevationCut(half.discretised, half.solution, 0, 181);
  expect(cut[0]!.gain.total ?? -1e9).toBeLessThan(-100);
  expect(cut[30]!.gain.total!).toBeCloseTo(cut[150]!.gain.total!, 6);
  expect(cut[90]!.gain.total ?? -1e9).toBeLessThan(best.gain.total! - 15);
});

test('a beam points where its boom does, horizontally and vertically polarised', () => {
  for (const polarisation of ['horizontal', 'vertical'] as const) {
    const given = described('three-element beam', 'aluminium');
    const aerial = wireAerial({ ...given, shape: { ...given.shape, polarisation, bearing: 2 } as typeof given.shape });
    const { discretised, solution } = aerial.solved(98e6);
    const best = strongestDirection(discretised, solution);
    expect(best.arrival.azimuth).toBeCloseTo(2, 1);
    expect(Math.abs(best.arrival.elevation)).toBeLessThan(0.1);
    expect(best.gain[polarisation]!).toBeCloseTo(best.gain.total!, 6);
    expect(frontToBack(discretised, solution, { azimuth: 2, elevation: 0 })!).toBeGreaterThan(8);
  }
});

test('limit: the current on a thin dipole is near the sine of its theory, one at the feed and nothing at the tips', () => {
  const { discretised, solution } = dipole(0.46, { kind: 'free-space' });
  const all = wireCurrents(discretised, solution);
  for (const c of all) {
    const sine = Math.sin(2 * Math.PI * (0.23 - Math.abs(c.x))) / Math.sin(2 * Math.PI * 0.23);
    expect(c.re).toBeCloseTo(sine, 1);
    expect(Math.abs(c.im)).toBeLessThan(0.12);
  }
  expect(Math.hypot(all[0]!.re, all[0]!.im)).toBe(0);
});

test('identity: what flows into a joint flows out of it (Kirchhoff), on a T of two thicknesses', () => {
  const { discretised, solution } = wireAerial(described('free list: a T of two thicknesses', 'copper')).solved(98e6);
  const { mesh } = discretised;
  const all = wireCurrents(discretised, solution);
  const sums = new Map<number, { re: number; im: number; ends: number }>();
  for (let s = 0; s < mesh.segments; s++)
    for (const [node, at, sign] of [
      [mesh.startNode[s]!, 3 * s, -1],
      [mesh.endNode[s]!, 3 * s + 2, 1],
    ] as const) {
      const sum = sums.get(node) ?? { re: 0, im: 0, ends: 0 };
      sums.set(node, { re: sum.re + sign * all[at]!.re, im: sum.im + sign * all[at]!.im, ends: sum.ends + 1 });
    }
  expect([...sums.values()].some((s) => s.ends === 3)).toBe(true);
  for (const s of sums.values()) expect(Math.hypot(s.re, s.im)).toBeLessThan(1e-9);
});

test('published: a square loop a wave round is broadside and hears the polarisation of its fed side', () => {
  // Stutzman & Thiele: the one-wavelength square loop radiates broadside, polarised along the fed side
  for (const [fedAt, key] of [
    ['bottom', 'horizontal'],
    ['side', 'vertical'],
  ] as const) {
    const given = described('square full-wave loop', 'copper');
    const aerial = wireAerial({ ...given, shape: { ...given.shape, fedAt } as typeof given.shape });
    const at = aerial.at(98e6, { azimuth: 0.3, elevation: 0 });
    const other = key === 'horizontal' ? 'vertical' : 'horizontal';
    expect(Math.hypot(at[key].re, at[key].im)).toBeGreaterThan(1);
    expect(Math.hypot(at[other].re, at[other].im)).toBeLessThan(0.05);
  }
});
