import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  C,
  type CoilGeometry,
  type Coupling,
  EARTH,
  type Element,
  Network,
  poles,
  powers,
  type TankDescription,
  type TankModel,
  tankFigures,
  tankModel,
  tankResonance,
  unloadedQ,
} from '#engine';
import { airVariable, coil, tank, withoutAerial } from './described-tank.ts';

const off = (got: number, want: number) => Math.abs(got / want - 1);
const windings = (model: TankModel, f: number) => {
  const found = model.elements(f, 1).find((e) => e.kind === 'windings' && e.name === 'coil');
  if (found?.kind !== 'windings') throw new Error('no coil');
  return found;
};
/** Cholesky's test. */
function positiveDefinite(m: readonly (readonly number[])[]): boolean {
  const l: number[][] = [];
  for (let i = 0; i < m.length; i++) {
    l.push([]);
    for (let j = 0; j <= i; j++) {
      let s = m[i]![j]!;
      for (let k = 0; k < j; k++) s -= l[i]![k]! * l[j]![k]!;
      if (i === j && !(s > 0)) return false;
      l[i]!.push(i === j ? Math.sqrt(s) : s / l[j]![j]!);
    }
  }
  return true;
}
const link = (over: Partial<Extract<Coupling, { kind: 'link' }>> = {}): Coupling => ({
  kind: 'link',
  turns: 1,
  innerDiameter: 0.01,
  wireDiameter: 0.001,
  pitch: 0.002,
  gap: 0.001,
  ...over,
});

const turns = fc.integer({ min: 4, max: 48 }).map((n) => n / 4);
const anyCoil: fc.Arbitrary<CoilGeometry> = fc.record({
  kind: fc.constant('geometry' as const),
  turns,
  innerDiameter: fc.double({ min: 0.004, max: 0.1, noNaN: true }),
  wireDiameter: fc.double({ min: 0.0003, max: 0.002, noNaN: true }),
  pitch: fc.double({ min: 0.0021, max: 0.006, noNaN: true }),
  metal: fc.constantFrom('copper' as const, 'silver' as const, 'brass' as const),
  surfaceFactor: fc.double({ min: 1, max: 2, noNaN: true }),
  leadLength: fc.double({ min: 0, max: 0.03, noNaN: true }),
});
const anyCoupling = (coilTurns: number): fc.Arbitrary<Coupling> =>
  fc.oneof(
    fc.constant<Coupling>({ kind: 'direct' }),
    fc.integer({ min: 1, max: Math.round(4 * coilTurns) }).map((n): Coupling => ({ kind: 'tap', turns: n / 4 })),
    fc.double({ min: 1e-13, max: 1e-11, noNaN: true }).map((c): Coupling => ({ kind: 'series-capacitor', capacitance: c })),
    fc
      .record({
        turns: fc.integer({ min: 4, max: 20 }).map((n) => n / 4),
        innerDiameter: fc.double({ min: 0.003, max: 0.12, noNaN: true }),
        wireDiameter: fc.double({ min: 0.0003, max: 0.001, noNaN: true }),
        pitch: fc.double({ min: 0.001, max: 0.004, noNaN: true }),
        gap: fc.double({ min: -0.02, max: 0.02, noNaN: true }),
      })
      .map((l): Coupling => ({ kind: 'link', ...l })),
  );
const anyTank: fc.Arbitrary<TankDescription> = anyCoil.chain((c) =>
  fc
    .record({ aerial: anyCoupling(c.turns), detector: anyCoupling(c.turns), joint: fc.double({ min: 0, max: 0.02, noNaN: true }) })
    .map(({ aerial, detector, joint }) => ({
      ...tank,
      coil: c,
      joints: { count: 3, resistance: joint },
      aerialCoupling: aerial,
      detectorCoupling: detector,
      detectorReturn: 470e3,
    })),
);

describe('taps and links', () => {
  test('property: taps anywhere leave the inductance whole, and every matrix is positive definite', () => {
    fc.assert(
      fc.property(anyTank, (d) => {
        const model = tankModel(d, false);
        const { windings: w, inductance } = windings(model, 1e8);
        const stretches = w.filter((x) => x.name.startsWith('coil')).length;
        let sum = 0;
        for (let i = 0; i < stretches; i++) for (let k = 0; k < stretches; k++) sum += inductance[i]![k]!;
        const plain = tankModel({ ...d, aerialCoupling: { kind: 'direct' }, detectorCoupling: { kind: 'direct' } }, false);
        expect(off(sum, windings(plain, 1e8).inductance[0]![0]!)).toBeLessThan(1e-12);
        expect(positiveDefinite(inductance)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
  test('limit: a tap in the middle of a long coil has a quarter of the inductance, and nearly a half of the voltage', () => {
    const long = { ...coil, turns: 12, pitch: 0.02, leadLength: 0 };
    const m = tankModel({ ...tank, coil: long, aerialCoupling: { kind: 'tap', turns: 6 }, detectorCoupling: { kind: 'direct' } }, false);
    const { inductance } = windings(m, 1e8);
    const whole = inductance[0]![0]! + 2 * inductance[0]![1]! + inductance[1]![1]!;
    // turns far apart do not couple: half the turns, half the inductance
    expect(off(inductance[0]![0]!, whole / 2)).toBeLessThan(0.03);
    expect(off((inductance[0]![0]! + inductance[0]![1]!) / whole, 0.5)).toBeLessThan(1e-9);
    const tight = tankModel(
      { ...tank, coil: { ...coil, turns: 12, pitch: 0.00105, innerDiameter: 0.1 }, aerialCoupling: { kind: 'tap', turns: 6 } },
      false,
    );
    const t = windings(tight, 1e8).inductance;
    expect(t[0]![0]! / (t[0]![0]! + 2 * t[0]![1]! + t[1]![1]!)).toBeLessThan(0.4);
  });
  test('limit: a tap at the top is the top, two taps at one place are one node', () => {
    const top = tankModel({ ...tank, aerialCoupling: { kind: 'tap', turns: 5 }, detectorCoupling: { kind: 'tap', turns: 2 } }, false);
    expect(top.aerialNode).toBe('top');
    const same = tankModel({ ...tank, aerialCoupling: { kind: 'tap', turns: 2 }, detectorCoupling: { kind: 'tap', turns: 2 } }, false);
    expect(same.aerialNode).toBe(same.detectorNode);
    expect(windings(same, 1e8).windings).toHaveLength(2);
  });
  test('limit: a link far away couples like a dipole, one pushed to the middle couples most', () => {
    const mutual = (gap: number, over = {}) => {
      const m = tankModel(
        { ...tank, aerialCoupling: link({ gap, innerDiameter: 0.004, ...over }), detectorCoupling: { kind: 'direct' } },
        false,
      );
      return windings(m, 1e8).inductance[0]![1]!;
    };
    expect(mutual(0.2) / mutual(0.4)).toBeGreaterThan(7);
    expect(mutual(0.2) / mutual(0.4)).toBeLessThan(8);
    // one turn of 2 mm pitch with its end 6 mm inside lies in the middle of the 10 mm winding
    expect(mutual(-0.006)).toBeGreaterThan(mutual(-0.003));
    expect(mutual(-0.006)).toBeGreaterThan(mutual(-0.009));
    expect(mutual(-0.003)).toBeGreaterThan(mutual(0));
  });
  test('limit: a link of the same size inside the winding is wound between its turns, and says so', () => {
    const m = tankModel({ ...tank, aerialCoupling: link({ gap: -0.004 }) }, false);
    expect(m.remarks.join()).toMatch(/between those of the coil/);
    expect(positiveDefinite(windings(m, 1e8).inductance)).toBe(true);
  });
  test('electrical coil: voltage divides as turns', () => {
    const electrical = {
      kind: 'electrical',
      inductance: 2e-7,
      q: 250,
      frequency: 1e8,
      selfCapacitance: 5e-13,
      turns: 5,
      tapCoupling: 0.6,
    } as const;
    const d: TankDescription = {
      ...tank,
      coil: electrical,
      aerialCoupling: { kind: 'tap', turns: 1 },
      detectorCoupling: { kind: 'tap', turns: 2.5 },
    };
    const { inductance } = windings(tankModel(d, false), 1e8);
    const sum = inductance.flat().reduce((a, b) => a + b);
    expect(off(sum, 2e-7)).toBeLessThan(1e-12);
    expect(positiveDefinite(inductance)).toBe(true);
    expect(tankModel(d, false).coilResistance(1e8)).toBeCloseTo((2 * Math.PI * 1e8 * 2e-7) / 250, 9);
    expect(tankModel(d, false).coilResistance(4e8)).toBeCloseTo((2 * 2 * Math.PI * 1e8 * 2e-7) / 250, 9);
  });
});

describe('the network', () => {
  test('rival: admittance by hand against the solver by nodes, any tank, ports loaded', () => {
    const out = new Float64Array(4);
    fc.assert(
      fc.property(
        anyTank,
        fc.double({ min: 0, max: Math.PI, noNaN: true }),
        fc.double({ min: 3e7, max: 3e8, noNaN: true }),
        (d, angle, f) => {
          const model = tankModel(d, false);
          const port: Element[] = [
            { kind: 'capacitor', name: 'aerial port', a: model.aerialNode, b: EARTH, capacitance: 2e-12 },
            { kind: 'capacitor', name: 'detector port', a: model.detectorNode, b: EARTH, capacitance: 1e-12 },
          ];
          const network = new Network([...model.elements(f, angle), ...port]);
          expect(network.thevenin(f, network.node('top'), out)).toBe(true);
          const y = C.inv({ re: out[2]!, im: out[3]! });
          const got = model.admittance(f, angle, { aerial: 2e-12, detector: 1e-12 });
          expect(C.abs(C.sub(got, y))).toBeLessThan(1e-6 * C.abs(y) + 1e-10);
        },
      ),
      { numRuns: 60 },
    );
  });
  test('limit: with fixed capacitors in series and parallel too', () => {
    const d = { ...tank, capacitor: { ...airVariable, series: 30e-12, parallel: 2e-12 } };
    const model = tankModel(d, false);
    const network = new Network(model.elements(1e8, 1));
    const out = new Float64Array(4);
    network.thevenin(1e8, network.node('top'), out);
    const y = C.inv({ re: out[2]!, im: out[3]! });
    expect(C.abs(C.sub(model.admittance(1e8, 1), y))).toBeLessThan(1e-7 * C.abs(y));
  });
  test('rival: resonance and unloaded Q from the slope of the susceptance against the natural frequency of the network', () => {
    for (const angle of [0.3, 1.5, 3]) {
      const model = tankModel(tank, false);
      const f = tankResonance(model, angle)!;
      const s = poles(model.elements(f, angle), f)![0]!;
      expect(off(s.im / (2 * Math.PI), f)).toBeLessThan(1e-5);
      expect(off(s.im / (-2 * s.re), unloadedQ(model, f, angle)!)).toBeLessThan(2e-3);
    }
  });
  test('limit: power in is power in the named losses, and the budget adds up to w L / Q', () => {
    const model = tankModel(tank, false);
    const f = tankResonance(model, 1.5)!;
    const network = new Network([...model.elements(f, 1.5), { kind: 'current', name: 'drive', a: 'top', b: EARTH, re: 1, im: 0 }]);
    const solution = network.solveAt(f)!;
    const sum = powers(network, solution, f).reduce((s, p) => s + p.watts, 0);
    expect(Math.abs(sum)).toBeLessThan(1e-6 * solution.voltage('top').re);
    const figures = tankFigures(model, f, 1.5);
    const value = (name: string) => figures.find((g) => g.name === name)!.value!;
    const parts = figures.filter((g) => g.name.startsWith('tank.loss.') && g.name !== 'tank.loss.total');
    expect(
      off(
        parts.reduce((s, g) => s + g.value!, 0),
        value('tank.loss.total'),
      ),
    ).toBeLessThan(1e-12);
    // energy in the wiring inductance, too, belongs to w L: a few per cent
    expect(off((2 * Math.PI * f * model.inductance) / value('tank.loss.total'), value('tank.unloadedQ'))).toBeLessThan(0.06);
  });
  test('property: any tank gives finite elements, positive losses, figures without NaN', () => {
    fc.assert(
      fc.property(anyTank, fc.boolean(), (d, aerialIsCoil) => {
        const model = tankModel(aerialIsCoil ? withoutAerial(d) : d, aerialIsCoil);
        for (const e of model.elements(9.8e7, 1)) if (e.kind === 'resistor') expect(e.resistance).toBeGreaterThan(0);
        const names = model.elements(9.8e7, 1).map((e) => e.name);
        expect(new Set(names).size).toBe(names.length);
        const figures = tankFigures(model, 9.8e7, 1);
        for (const g of figures) expect(g.value === null || Number.isFinite(g.value), g.name).toBe(true);
        expect(new Set(figures.map((g) => g.name)).size).toBe(figures.length);
        expect(Number.isFinite(model.directResistance)).toBe(true);
        expect(tankResonance(model, 1)).not.toBeNull();
      }),
      { numRuns: 40 },
    );
  });
  test('where the coil is the aerial its cold end is open, elsewhere it is earth', () => {
    const nodes = (m: TankModel) =>
      new Set(m.elements(1e8, 1).flatMap((e) => (e.kind === 'windings' ? e.windings.map((w) => w.b) : [e.a, e.b])));
    expect(nodes(tankModel(withoutAerial(tank), true))).toContain('coil-cold');
    expect(nodes(tankModel(tank, false))).not.toContain('coil-cold');
  });
  test('direct current of the detector: through the coil, a share of it, the link, or the return resistor', () => {
    const direct = (c: Coupling, back?: number) =>
      tankModel({ ...tank, detectorCoupling: c, ...(back ? { detectorReturn: back } : {}) }, false).directResistance;
    const whole = direct({ kind: 'direct' });
    // 5 turns of 11 mm and two leads of 8 mm: 0.189 m of 1 mm copper at 22 milliohm a metre
    expect(off(whole, 0.189 * 0.022)).toBeLessThan(0.01);
    expect(off(direct({ kind: 'tap', turns: 2.5 }), whole / 2)).toBeLessThan(1e-9);
    expect(direct({ kind: 'series-capacitor', capacitance: 1e-12 }, 470e3)).toBe(470e3);
    expect(direct({ kind: 'direct' }, 470e3)).toBeLessThan(whole);
  });
  test('limit: losses of a frequency do not depend on what was asked before', () => {
    const fresh = tankModel(tank, false).coilResistance(9.8e7);
    const used = tankModel(tank, false);
    for (let f = 5e7; f < 3e8; f *= 1.07) used.elements(f, 1);
    expect(used.coilResistance(9.8e7)).toBe(fresh);
  });
});
