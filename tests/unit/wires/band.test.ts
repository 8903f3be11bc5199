import { expect, test } from 'vitest';
import { C, currentMoment, solveWires, type WireLoad, type WireStructure, wireAerial, wireAerialOf, wireLossResistance } from '#engine';
import { described, NAMES } from './shapes.ts';

const ODD = { azimuth: 1.9, elevation: 0.15 };

/** Two traps near 98 MHz, Q of some 200: sharp poles inside the band. */
const trap = (at: number): WireLoad => ({
  place: { wire: 0, at },
  kind: 'parallel',
  inductance: 1e-7,
  capacitance: 2.64e-11,
  resistance: 12e3,
});
const trapped: WireStructure = {
  wires: [{ from: { x: -1, y: 0, z: 0 }, to: { x: 1, y: 0, z: 0 }, diameter: 0.004, metal: 'copper' }],
  feed: { wire: 0, at: 0.5 },
  loads: [trap(0.2), trap(0.8)],
  ground: { kind: 'free-space' },
};

const aerials = [
  ...NAMES.map((n) => [n, wireAerial(described(n, 'aluminium'))] as const),
  ['dipole with traps', wireAerialOf(trapped, null)] as const,
];
for (const [name, aerial] of aerials)
  test(`rival: between its few solutions the ${name} is what solving there gives`, () => {
    const { discretised: d } = aerial.solved(98e6);
    for (let i = 0; i < 23; i++) {
      const f = 87.3e6 + i * 0.93e6;
      const exact = solveWires(d, f)!;
      const z = C.inv(exact.admittance);
      const got = aerial.at(f, ODD);
      expect(C.abs(C.sub(got.impedance, z)) / C.abs(z)).toBeLessThan(5e-5);
      expect(Math.abs(got.lossResistance / wireLossResistance(d, exact) - 1)).toBeLessThan(2e-4);
      // an aerial on the ground has another effective length: ground.test.ts
      if (d.structure.ground.kind === 'perfect') continue;
      const n = currentMoment(d.mesh, d.feedPoint, f, exact.re, exact.im, ODD);
      const size = Math.hypot(C.abs(n.horizontal), C.abs(n.vertical));
      expect(C.abs(C.sub(C.mul(got.vertical, exact.admittance), n.vertical)) / size).toBeLessThan(1e-4);
      expect(C.abs(C.sub(C.mul(got.horizontal, exact.admittance), n.horizontal)) / size).toBeLessThan(1e-4);
    }
  });

test('identity: the answer does not depend on what was asked before', () => {
  const a = wireAerial(described('three-element beam', 'copper'));
  const b = wireAerial(described('three-element beam', 'copper'));
  a.at(60e6, ODD);
  a.at(107e6, { azimuth: 0, elevation: 0 });
  b.prepare(80e6, 110e6);
  expect(a.at(98.3e6, ODD)).toEqual(b.at(98.3e6, ODD));
});

test('the figures cover what a builder may doubt, each with formula and source, and agree with the source', () => {
  const aerial = wireAerial(described('three-element beam', 'aluminium'));
  const arrival = { azimuth: 0, elevation: 0 };
  const figures = aerial.figures(98e6, arrival);
  const value = (name: string) => figures.find((f) => f.name === `aerial.${name}`)!.value!;
  expect(new Set(figures.map((f) => f.name)).size).toBe(figures.length);
  for (const f of figures) {
    expect(f.working.formula.length).toBeGreaterThan(0);
    expect(f.working.source.length).toBeGreaterThan(0);
    expect(f.value === null || Number.isFinite(f.value)).toBe(true);
  }
  const at = aerial.at(98e6, arrival);
  expect(value('resistance')).toBe(at.impedance.re);
  expect(value('powerBalance')).toBeCloseTo(1, 3);
  expect(value('greatestGain')).toBeGreaterThanOrEqual(value('gain') - 1e-3);
  expect(value('tuningBand')).toBeGreaterThan(0);
  expect(value('tuningBand')).toBeLessThan(0.02);
  expect(value('segments')).toBeGreaterThan(20);
});
