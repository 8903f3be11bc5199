import { expect, test } from 'vitest';
import {
  C,
  radiatedResistance,
  SPEED_OF_LIGHT,
  straightWireResistance,
  type WireStructure,
  wireAerial,
  wireAerialOf,
  wireShares,
} from '#engine';
import { described } from './shapes.ts';

const point = (x: number, y: number, z: number) => ({ x, y, z });
const LEVEL = { azimuth: 0, elevation: 0 };

test('limit: a half-wave dipole of one sinusoid loses R l/2 at its feed, R by the skin effect of its wire', () => {
  // Balanis, Antenna Theory, 3rd ed., example 2.13: the mean of a squared sine
  const f = 100e6;
  const length = SPEED_OF_LIGHT / f / 2;
  const wires = [{ from: point(0, 0, 0), to: point(length, 0, 0), diameter: 0.002, metal: 'copper' as const }];
  const at = wireAerialOf({ wires, feed: { wire: 0, at: 0.5 }, loads: [], ground: { kind: 'free-space' } }, 2).at(f, LEVEL);
  expect(at.lossResistance / ((straightWireResistance('copper', 0.002, f) * length) / 2)).toBeCloseTo(1, 4);
});

test('limit: a small loop loses the resistance of its whole wire', () => {
  const at = wireAerial(described('10 cm loop', 'copper')).at(10e6, LEVEL);
  const round = Math.PI * 0.1;
  // the polygon of the same area is 0.6 % longer round
  expect(at.lossResistance / (straightWireResistance('copper', 0.002, 10e6) * round)).toBeCloseTo(1.006, 2);
});

test('limit: a resistor in series with the feed adds itself, to the impedance and to the loss', () => {
  const wires = [{ from: point(0, 0, -0.7), to: point(0, 0, 0.7), diameter: 0.004, metal: 'copper' as const }];
  const plain: WireStructure = { wires, feed: { wire: 0, at: 0.5 }, loads: [], ground: { kind: 'free-space' } };
  const loaded: WireStructure = { ...plain, loads: [{ place: { wire: 0, at: 0.5 }, kind: 'series', resistance: 22, inductance: 1e-7 }] };
  const a = wireAerialOf(plain, 12).at(98e6, LEVEL);
  const b = wireAerialOf(loaded, 12).at(98e6, LEVEL);
  expect(b.impedance.re - a.impedance.re).toBeCloseTo(22, 4);
  expect(b.impedance.im - a.impedance.im).toBeCloseTo(2 * Math.PI * 98e6 * 1e-7, 3);
  expect(b.lossResistance - a.lossResistance).toBeCloseTo(22, 4);
  expect(C.abs(b.vertical)).toBeCloseTo(C.abs(a.vertical), 5);
});

test('limit: a trap at its own frequency leaves the inner dipole', () => {
  const wire = (half: number) => [{ from: point(0, 0, -half), to: point(0, 0, half), diameter: 0.004, metal: 'lossless' as const }];
  const f = 98e6;
  const inductance = 1e-7;
  const capacitance = 1 / ((2 * Math.PI * f) ** 2 * inductance);
  const place = (at: number) => ({ place: { wire: 0, at }, kind: 'parallel', inductance, capacitance }) as const;
  // the short stub beyond each trap only loads the tip a little
  const trapped = wireAerialOf(
    { wires: wire(0.74), feed: { wire: 0, at: 0.5 }, loads: [place(0.02 / 1.48), place(1.46 / 1.48)], ground: { kind: 'free-space' } },
    24,
  ).at(f, LEVEL);
  const inner = wireAerialOf({ wires: wire(0.72), feed: { wire: 0, at: 0.5 }, loads: [], ground: { kind: 'free-space' } }, 24).at(f, LEVEL);
  expect(C.abs(C.sub(trapped.impedance, inner.impedance)) / C.abs(inner.impedance)).toBeLessThan(0.12);
});

test('identity: the shares of the wires add up to the whole', () => {
  for (const name of ['three-element beam', 'rod with drop wire', 'leaning rod with box']) {
    const aerial = wireAerial(described(name, 'steel'));
    const arrival = { azimuth: 0.4, elevation: 0.1 };
    const at = aerial.at(98e6, arrival);
    const { discretised, solution } = aerial.solved(98e6);
    const shares = wireShares(discretised, solution, arrival);
    const sum = (key: 'horizontal' | 'vertical') => shares.reduce((total, s) => C.add(total, s[key]), C.ZERO);
    const size = Math.hypot(C.abs(at.horizontal), C.abs(at.vertical));
    expect(C.abs(C.sub(sum('horizontal'), at.horizontal)) / size).toBeLessThan(1e-4);
    expect(C.abs(C.sub(sum('vertical'), at.vertical)) / size).toBeLessThan(1e-4);
    expect(shares.reduce((total, s) => total + s.lossResistance, 0) / at.lossResistance).toBeCloseTo(1, 4);
  }
});

test('limit: two cages a metre apart have about the capacitance of two solid boxes', () => {
  // a cube of side s holds 0.6607 * 4 pi eps0 s (many authors; e.g. Wintle, J. Electrostatics 62 (2004) 51; value from memory)
  const side = 0.1;
  const apart = 1;
  const f = 1e6;
  const box = { kind: 'box', width: side, depth: side, height: side, metal: 'lossless' } as const;
  const thin = { length: apart, diameter: 2e-5, metal: 'lossless' } as const;
  const one = wireAerial({
    kind: 'wires',
    shape: { kind: 'rod', rod: thin, lean: { angle: 0, bearing: 0 }, against: box },
    height: 0,
    ground: { kind: 'free-space' },
  }).structure;
  // the second cage upside down at the rod's far end
  const other = one.wires.slice(1).map((w) => ({ ...w, from: { ...w.from, z: apart - w.from.z }, to: { ...w.to, z: apart - w.to.z } }));
  const reactance = (wires: WireStructure['wires']) =>
    wireAerialOf({ wires, feed: { wire: 0, at: 0.5 }, loads: [], ground: { kind: 'free-space' } }, null).at(f, LEVEL).impedance.im;
  const capacitance = -1 / (2 * Math.PI * f * reactance([...one.wires, ...other]));
  const bare = -1 / (2 * Math.PI * f * reactance([one.wires[0]!]));
  const coulomb = 4 * Math.PI * 8.854e-12;
  const boxes = 1 / (2 / (0.6607 * coulomb * side) - 2 / (coulomb * (apart + side)));
  // between: the thin wire's own capacitance is partly shared with the boxes'
  expect(capacitance).toBeGreaterThan(0.85 * boxes);
  expect(capacitance).toBeLessThan(1.05 * (boxes + bare));
});

test('identity: radiation resistance by the sphere is that of the terminals, for a loop three wavelengths round', () => {
  const aerial = wireAerial({
    ...described('square full-wave loop', 'lossless'),
    shape: { ...described('square full-wave loop', 'lossless').shape, side: 2.3 } as never,
  });
  const { discretised, solution } = aerial.solved(98e6);
  expect(radiatedResistance(discretised, solution) / C.inv(solution.admittance).re).toBeCloseTo(1, 3);
});
