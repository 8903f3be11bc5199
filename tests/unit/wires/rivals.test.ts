import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type AerialWire, brent, type C, inducedEmfImpedance, SPEED_OF_LIGHT, type WireStructure, wireAerialOf } from '#engine';

const read = (name: string) => JSON.parse(readFileSync(new URL(`../../reference/wires/${name}.json`, import.meta.url), 'utf8'));
const point = (x: number, y: number, z: number) => ({ x, y, z });
const wire = (from: AerialWire['from'], to: AerialWire['to'], radius: number): AerialWire => ({
  from,
  to,
  diameter: 2 * radius,
  metal: 'lossless',
});
const FREE = { kind: 'free-space' } as const;

function impedance(structure: Omit<WireStructure, 'loads' | 'ground'>, segments: number | null = null): C.Complex {
  return wireAerialOf({ ...structure, loads: [], ground: FREE }, segments).at(SPEED_OF_LIGHT, { azimuth: 0, elevation: 0 }).impedance;
}
const dipole = (length: number, radius: number, segments: number | null = null) =>
  impedance({ wires: [wire(point(0, 0, -length / 2), point(0, 0, length / 2), radius)], feed: { wire: 0, at: 0.5 } }, segments);

test("rival: dipoles from 0.1 to 1.5 wavelengths, by Hallen's equation with the exact kernel at like resolution", () => {
  const rows = read('hallen_dipole').impedance as { length: number; radius: number; half: number; R: number; X: number }[];
  expect(rows.length).toBeGreaterThan(50);
  for (const r of rows) {
    if (r.half !== 12) continue;
    const z = dipole(r.length, r.radius, 2 * r.half);
    const size = Math.hypot(r.R, r.X);
    // near a full wave the gap's capacitance, which has no limit, decides
    const allowed = r.length > 0.7 && r.length < 1.2 ? 0.06 : 0.025;
    expect(
      Math.hypot(z.re - r.R, z.im - r.X) / size,
      `length ${r.length}, radius ${r.radius}: ${z.re} ${z.im}, Hallen ${r.R} ${r.X}`,
    ).toBeLessThan(allowed);
  }
});

test("rival: first and third resonance, by Hallen's equation", () => {
  const rows = read('hallen_dipole').resonance as { length_to_diameter: number; order: number; length: number; R: number }[];
  for (const r of rows) {
    const z = (l: number) => dipole(l, l / r.length_to_diameter / 2);
    const length = brent((l) => z(l).im, r.order === 1 ? 0.44 : 1.44, r.order === 1 ? 0.495 : 1.5, 1e-6)!;
    expect(Math.abs(length / r.length - 1), `ratio ${r.length_to_diameter}, order ${r.order}: ${length}, Hallen ${r.length}`).toBeLessThan(
      0.004,
    );
    expect(Math.abs(z(length).re / r.R - 1)).toBeLessThan(0.02);
  }
});

test('rival: one base on a dipole is the induced-EMF method, over its whole range of lengths', () => {
  for (const length of [0.05, 0.1, 0.2, 0.3, 0.4, 0.45, 0.5, 0.55, 0.6]) {
    const got = dipole(length, 1e-5, 2);
    const wanted = inducedEmfImpedance(length, 1e-5, 1);
    expect(got.re / wanted.re).toBeCloseTo(1, 4);
    expect(Math.abs(got.im - wanted.im)).toBeLessThan(2e-3 * Math.abs(wanted.im) + 0.02);
  }
});

test('rival: round loops as 24-gons, by the Fourier series with a tube', () => {
  const rows = read('loop_series').rows as { circumference: number; wireOverLoopRadius: number; terms: number; R: number; X: number }[];
  let compared = 0;
  for (const r of rows) {
    // a polygon of the circle's area is 0.6 % longer round, which counts towards the antiresonance at half a wave
    const sides = 24;
    const step = (2 * Math.PI) / sides;
    const circle = r.circumference / (2 * Math.PI);
    const radius = circle * Math.sqrt(step / Math.sin(step));
    if (r.terms !== 24) continue;
    const corner = (i: number) => point(radius * Math.cos(step * (i % sides)), radius * Math.sin(step * (i % sides)), 0);
    const wires = Array.from({ length: sides }, (_, i) => wire(corner(i), corner(i + 1), r.wireOverLoopRadius * circle));
    const z = impedance({ wires, feed: { wire: 0, at: 0 } }, sides);
    const size = Math.hypot(r.R, r.X);
    expect(
      Math.hypot(z.re - r.R, z.im - r.X) / size,
      `circumference ${r.circumference}: ${z.re} ${z.im}, series ${r.R} ${r.X}`,
    ).toBeLessThan(0.05);
    compared++;
  }
  expect(compared).toBe(15);
});

test('limit: a folded dipole has four times the resistance of a dipole of the equivalent thickness, each at resonance', () => {
  const [radius, spacing] = [1e-5, 0.001];
  const folded = (l: number) => {
    const corners = [point(-l / 2, 0, 0), point(l / 2, 0, 0), point(l / 2, spacing, 0), point(0, spacing, 0), point(-l / 2, spacing, 0)];
    return impedance({ wires: corners.map((c, i) => wire(c, corners[(i + 1) % 5]!, radius)), feed: { wire: 0, at: 0.5 } });
  };
  const single = (l: number) => dipole(l, Math.sqrt(radius * spacing));
  const a = folded(brent((l) => folded(l).im, 0.44, 0.5, 1e-6)!).re;
  const b = single(brent((l) => single(l).im, 0.44, 0.5, 1e-6)!).re;
  // Balanis, Antenna Theory, 3rd ed., sec. 9.5
  expect(a / b).toBeCloseTo(4, 1);
});

test('limit: a folded dipole of two thicknesses steps the resistance up by the square of the ratio of its currents', () => {
  // (1 + ln(D/a1)/ln(D/a2))^2: Balanis, Antenna Theory, 3rd ed., sec. 9.5 (thin conductors); a1 fed, a2 the other
  const spacing = 0.01;
  for (const [fed, other] of [
    [1e-4, 1e-3],
    [1e-3, 1e-4],
  ] as const) {
    const z = (l: number) => {
      const corners = [point(-l / 2, 0, 0), point(l / 2, 0, 0), point(l / 2, spacing, 0), point(0, spacing, 0), point(-l / 2, spacing, 0)];
      return impedance({
        wires: corners.map((c, i) => wire(c, corners[(i + 1) % 5]!, i === 0 ? fed : other)),
        feed: { wire: 0, at: 0.5 },
      });
    };
    const resonant = z(brent((l) => z(l).im, 0.42, 0.5, 1e-6)!).re;
    const step = (1 + Math.log(spacing / fed) / Math.log(spacing / other)) ** 2;
    expect(resonant / (step * 72)).toBeGreaterThan(0.93);
    expect(resonant / (step * 72)).toBeLessThan(1.07);
  }
});

test('limit: the inductance of a small loop is mu0 b (ln 8b/a - 2)', () => {
  // Maxwell; Terman, Radio Engineers' Handbook (1943) sec. 2: current in the surface
  const [b, a, sides] = [1e-3, 1e-5, 48];
  const step = (2 * Math.PI) / sides;
  const radius = b * Math.sqrt(step / Math.sin(step));
  const corner = (i: number) => point(radius * Math.cos(step * (i % sides)), radius * Math.sin(step * (i % sides)), 0);
  const z = impedance(
    { wires: Array.from({ length: sides }, (_, i) => wire(corner(i), corner(i + 1), a)), feed: { wire: 0, at: 0 } },
    sides,
  );
  const inductance = z.im / (2 * Math.PI * SPEED_OF_LIGHT);
  expect(inductance / (4e-7 * Math.PI * b * (Math.log((8 * b) / a) - 2))).toBeCloseTo(1, 2);
});
