import { describe, expect, test } from 'vitest';
import { assemble, bestDial, listeningPoint, MersenneTwister, normalQuantile, reportStation, type SetDescription, standAt } from '#engine';
import {
  Bench,
  handScatter,
  influences,
  leading,
  type Meant,
  mending,
  partScatter,
  placeScatter,
  type Scatter,
  ToleranceRun,
  trims,
  USUAL_HAND,
} from '#find';
import type { UsedPart } from '#set-file';
import { listener, mediumWaveCoil, place, set, station } from '../../chain/base-set.ts';

const meant: Meant = { place: place(station({ power: 300 })), set, listener, station: 0 };
/** A tank of which the resonance is known in closed form: a coil by its values, a capacitor without leads, nothing else. */
const L = 150e-9;
const plain: SetDescription = {
  ...set,
  tank: {
    ...set.tank,
    coil: { kind: 'electrical', inductance: L, q: 200, frequency: 98e6, selfCapacitance: 0, turns: 5, tapCoupling: 0.6 },
    capacitor: { ...set.tank.capacitor, minimum: 8e-12, maximum: 30e-12, leadInductance: 0 },
    wiring: { length: 0, diameter: 1e-3 },
    strayCapacitance: 1e-12,
    // next to nothing: the aerial leaves the tank as it is
    aerialCoupling: { kind: 'series-capacitor', capacitance: 1e-16 },
  },
  detector: { ...set.detector, junctionCapacitance: 0, seriesResistance: 0 } as SetDescription['detector'],
};
const simple: Meant = { ...meant, set: plain };
const scatter = (key: string, apply: Scatter['apply']): Scatter => ({ key, label: key, extent: '', ofTheSet: true, apply });
const tank =
  (change: (t: SetDescription['tank'], z: number) => Partial<SetDescription['tank']>): Scatter['apply'] =>
  (d, z) => ({
    ...d,
    set: { ...d.set, tank: { ...d.set.tank, ...change(d.set.tank, z) } },
  });
const inductance = (sd: number): Scatter =>
  scatter(
    'L',
    tank(({ coil }, z) => ({ coil: coil.kind === 'electrical' ? { ...coil, inductance: coil.inductance * (1 + sd * z) } : coil })),
  );
const strays = (sd: number): Scatter =>
  scatter(
    'C',
    tank((t, z) => ({ strayCapacitance: Math.max(0, t.strayCapacitance + sd * z) })),
  );

describe('small scatter: closed form', () => {
  const dL = 0.01;
  const dC = 0.1e-12;
  const run = new ToleranceRun(simple, { scatters: [inductance(dL), strays(dC)], seed: 3 });
  run.step(512);
  const { dial } = run.result();
  const c = capacitance();

  test('limit: spread of the resonance by Thomson, df/f = -(dL/L + dC/C)/2, errors adding as squares', () => {
    const expected = 0.5 * Math.hypot(dL, dC / c);
    expect(dial.frequency / expected).toBeGreaterThan(0.97);
    expect(dial.frequency / expected).toBeLessThan(1.03);
  });
  test('limit: shares of it, as the squares of the parts', () => {
    const whole = dL ** 2 + (dC / c) ** 2;
    expect(dial.influences!.shares[0]).toBeCloseTo(dL ** 2 / whole, 1);
    expect(dial.influences!.shares[1]).toBeCloseTo((dC / c) ** 2 / whole, 1);
    expect(dial.influences!.explained).toBeGreaterThan(0.995);
    expect(leading(run.scatters, dial.influences, 1)[0]!.scatter.key).toBe(dL > dC / c ? 'L' : 'C');
  });
  test('limit: a picofarad across the tank moves it by -f dC / (2 C); half the inductance would move it up', () => {
    const f = 1 / (2 * Math.PI * Math.sqrt(L * c));
    const one = trims(simple).find((t) => t.words.includes('1 pF'))!;
    // exact: the square root, not its tangent
    expect(one.moves).toBeCloseTo(f * (Math.sqrt(c / (c + 1e-12)) - 1), -3);
  });

  test('limit: an aerial of no impedance behind 4 pF adds them to the tank: the same picofarad then moves the whole set by less', () => {
    const aerial = { kind: 'electrical', impedance: [{ frequency: 98e6, resistance: 0.01, reactance: 0 }], effectiveLength: 1 } as const;
    const joined: Meant = {
      ...simple,
      set: {
        ...plain,
        aerial: { ...aerial, orientation: { kind: 'horizontal', broadside: 0 }, frontToBack: 0 },
        tank: { ...plain.tank, aerialCoupling: { kind: 'series-capacitor', capacitance: 4e-12 } },
      },
    };
    // Thomson: where the dial stands for 98 MHz all capacitance together is 1 / (w^2 L), the aerial's among it
    const f = 98e6;
    const all = 1 / ((2 * Math.PI * f) ** 2 * L);
    const expected = f * (Math.sqrt(all / (all + 1e-12)) - 1);
    const one = trims(joined).find((t) => t.words.includes('1 pF'))!;
    expect(Math.abs(one.moves / expected - 1)).toBeLessThan(2e-3);
    // the tank alone, without the 4 pF, would move by a quarter more
    const alone = f * Math.sqrt(all / (all - 4e-12)) * (Math.sqrt((all - 4e-12) / (all - 3e-12)) - 1);
    expect(Math.abs(alone / expected - 1)).toBeGreaterThan(0.2);
  });

  /** All that lies across the coil where the dial stands for the station. */
  function capacitance(): number {
    const bench = new Bench(simple);
    const receiver = assemble(plain, listener);
    return receiver.tank.capacitance(bench.angle!) + 1e-12;
  }
});

describe('trims', () => {
  test('rival: a squeezed coil, wound anew and looked up, resonates where the trim says', () => {
    const bench = new Bench(meant);
    const { coil } = set.tank;
    if (coil.kind !== 'geometry') throw new Error('wound');
    const before = bench.build([], []);
    const after = new Bench(meant).build(
      [
        scatter(
          'p',
          tank(() => ({ coil: { ...coil, pitch: coil.pitch - 1e-3 / coil.turns } })),
        ),
      ],
      [0],
    );
    const squeeze = trims(meant).find((t) => t.words.startsWith('squeeze'))!;
    expect(squeeze.moves).toBeCloseTo(after.frequency! - before.frequency!, 3);
    expect(squeeze.moves).toBeLessThan(0);
    const ways = trims(meant);
    expect(ways.find((t) => t.words.startsWith('stretch'))!.moves).toBeGreaterThan(0);
    expect(ways.find((t) => t.words === 'add half a turn')!.moves).toBeLessThan(0);
    expect(ways.find((t) => t.words === 'take off half a turn')!.moves).toBeGreaterThan(0);
  });
});

describe('large scatter: plain chance', { timeout: 300_000 }, () => {
  const parts: UsedPart[] = [
    {
      path: 'tank.capacitor',
      name: 'c',
      title: 'capacitor',
      source: '',
      estimate: true,
      band: [
        { key: 'maximum', low: 12e-12, high: 22e-12, unit: 'F' },
        { key: 'contactResistance', low: 0.01, high: 0.8, unit: 'ohm' },
      ],
    },
    {
      path: 'detector',
      name: 'd',
      title: 'detector',
      source: '',
      estimate: true,
      band: [{ key: 'saturationCurrent', low: 2e-8, high: 8e-6, unit: 'A' }],
    },
  ];
  const edge: Meant = { ...meant, set: { ...set, tank: { ...set.tank, capacitor: { ...set.tank.capacitor, maximum: 15e-12 } } } };
  const run = new ToleranceRun(edge, { parts, seed: 2 });
  run.step(512);
  const result = run.result();

  test('rival: as many sets drawn by the Mersenne twister come to the same odds within three standard errors', () => {
    const twister = new MersenneTwister(99);
    const n = 400;
    const built = Array.from({ length: n }, () =>
      run.bench.build(
        run.scatters,
        run.scatters.map(() => normalQuantile(Math.max(1e-12, twister.uniform()))),
      ),
    );
    for (const [name, mine, fact] of [
      ['heard', result.heard, (k: number) => built[k]!.heard],
      ['understood', result.understood, (k: number) => built[k]!.understood],
      ['covers', result.covers, (k: number) => built[k]!.covers],
    ] as const) {
      const p = built.filter((_, k) => fact(k)).length / n;
      // something to tell: neither never nor always
      if (name !== 'heard') expect(p, name).toBeGreaterThan(0.02);
      if (name !== 'heard') expect(p, name).toBeLessThan(0.98);
      const error = Math.hypot(Math.sqrt((p * (1 - p)) / n), mine.error!, 1 / n);
      expect(Math.abs(p - mine.value) / error, name).toBeLessThan(3);
    }
  });

  test('the error that is told falls with the number of sets, and is of the size that runs with other seeds differ by', () => {
    const runs = [11, 12, 13].map((seed) => new ToleranceRun(edge, { parts, seed }));
    for (const r of runs) r.step(64);
    const early = runs.map((r) => r.result().understood);
    for (const r of runs) r.step(128);
    const late = runs.map((r) => r.result().understood);
    const size = (list: readonly { error: number | null }[]): number =>
      Math.sqrt(list.reduce((s, e) => s + e.error! ** 2, 0) / list.length);
    const spread = (list: readonly { value: number }[]): number => {
      const m = list.reduce((s, e) => s + e.value, 0) / list.length;
      return Math.sqrt(list.reduce((s, e) => s + (e.value - m) ** 2, 0) / (list.length - 1));
    };
    // a third of the variance at most, as plain chance would have it, with room for the luck of three runs
    expect(size(late)).toBeLessThan(0.85 * size(early));
    expect(spread(late) / size(late)).toBeLessThan(3);
    expect(spread(late) / size(late)).toBeGreaterThan(1 / 8);
  });

  test('a run can be stopped and gone on with: the first sets of a longer one are those of a shorter', () => {
    const short = new ToleranceRun(edge, { parts, seed: 2 });
    short.step(5);
    short.step(7);
    expect(short.built).toEqual(run.built.slice(0, 12));
  });

  test('bands: the ends stand at the tenth and ninetieth of a hundred, the value meant in the middle', () => {
    const [maximum, contact, saturation] = partScatter(edge.set, parts);
    const drawn = (s: Scatter, z: number): SetDescription => s.apply({ set: edge.set, listener, fields: [0] }, z).set;
    const edgeOf80 = 1.2815515655446004; // normal quantile of 0.9, NIST/SEMATECH e-Handbook
    expect(drawn(maximum!, 0).tank.capacitor.maximum).toBe(15e-12);
    expect(drawn(maximum!, edgeOf80).tank.capacitor.maximum).toBeCloseTo(22e-12, 18);
    expect(drawn(maximum!, -edgeOf80).tank.capacitor.maximum).toBeCloseTo(12e-12, 18);
    expect(drawn(contact!, edgeOf80).tank.capacitor.contactResistance).toBeCloseTo(0.8, 9);
    const { detector } = drawn(saturation!, -edgeOf80);
    expect(detector.kind === 'junction' && detector.saturationCurrent).toBeCloseTo(2e-8, 14);
  });
});

describe('place and ear', () => {
  test('rival: with nothing but field and earpiece uncertain, the odds are those of the verdict', () => {
    // weak enough for even odds
    const weak: Meant = { ...meant, place: place(station({ power: 5 })) };
    const reception = standAt(weak.place, assemble(weak.set, listener));
    const { verdict } = reportStation(reception, 0);
    expect(verdict.odds).toBeGreaterThan(0.1);
    expect(verdict.odds).toBeLessThan(0.97);
    const bench = new Bench(weak);
    const scatters = placeScatter(weak.place, bench.fields, weak.set).filter((s) => s.key !== 'ear.hearingLevel');
    const run = new ToleranceRun(weak, { scatters });
    run.step(512);
    const { heard } = run.result();
    // the verdict takes headroom to follow the field by a straight line
    expect(Math.abs(heard.value - verdict.odds)).toBeLessThan(0.03 + 3 * heard.error!);
  });
  test('limit: no scatter, no spread; the set is heard as it was meant', () => {
    const run = new ToleranceRun(meant, { scatters: [inductance(0)] });
    run.step(16);
    const { dial, loudness, heard } = run.result();
    expect(dial.frequency).toBeLessThan(1e-12);
    expect(heard).toEqual({ value: 1, error: 0 });
    const reception = standAt(meant.place, assemble(set, listener));
    const best = bestDial(reception, 0);
    if ('missing' in best) throw new Error('must tune');
    const { hearing } = listeningPoint(reception, 0, best).evaluation;
    expect(Math.abs(loudness.headroom![1] - Math.max(...hearing.headroom))).toBeLessThan(0.2);
  });
});

describe('hand', () => {
  test('every scatter leaves the set as it was meant at z = 0, and changes it elsewhere; a large error is still a set', () => {
    for (const one of [set, { ...set, tank: { ...set.tank, coil: mediumWaveCoil } }]) {
      const draft = { set: one, listener, fields: [0] };
      for (const s of handScatter(one, USUAL_HAND)) {
        expect(s.apply(draft, 0), s.key).toEqual(draft);
        expect(s.apply(draft, 1).set, s.key).not.toEqual(draft.set);
        for (const z of [-6, 6]) expect(() => assemble(s.apply(draft, z).set, listener), `${s.key} ${z}`).not.toThrow();
      }
    }
  });
  test('limit: of more scatters than the sequence has dimensions none is left out, and each stands at its own odds', () => {
    // a place of 90 stations, the last of which is judged: its field alone decides, and is above its median half of the time
    const stations = Array.from({ length: 90 }, (_, k) => scatter(`s${k}`, (d) => d));
    const heard: number[] = [];
    const last = scatter('last', (d, z) => {
      heard.push(z);
      return d;
    });
    const many = new ToleranceRun(simple, { scatters: [...stations, last], seed: 5 });
    many.step(400);
    expect(many.scatters).toHaveLength(91);
    const n = heard.length;
    expect(n).toBe(400);
    // standard errors of a mean and of a variance of normal numbers: 1/sqrt(n), sqrt(2/n)
    const m = heard.reduce((a, b) => a + b, 0) / n;
    const v = heard.reduce((a, b) => a + (b - m) ** 2, 0) / (n - 1);
    expect(Math.abs(m)).toBeLessThan(3 / Math.sqrt(n));
    expect(Math.abs(v - 1)).toBeLessThan(3 * Math.sqrt(2 / n));
  });

  test('what a trim is said to mend, it moves: a saturation current is not mended at the coil', () => {
    const at = (key: string) => mending({ key }, trims(meant), 'dial').map((t) => t.words);
    expect(at('detector.saturationCurrent').filter((w) => !w.includes('tap'))).toEqual([]);
    expect(at('detector.junctionCapacitance')).toEqual(expect.arrayContaining(['stretch the winding by 1 mm']));
  });

  test('limit: what is pure chance has no shares and explains nothing, however few the samples', () => {
    const twister = new MersenneTwister(9);
    const draw = (): number => normalQuantile(twister.uniform());
    const d = 24;
    let [shares, explained, rounds] = [0, 0, 0];
    for (let k = 0; k < 200; k++) {
      const z = Array.from({ length: 64 }, () => Array.from({ length: d }, draw));
      const found = influences(z, z.map(draw))!;
      shares += found.shares.reduce((a, b) => a + b, 0) / d;
      explained += found.explained;
      rounds++;
    }
    // cut off at 0 a share with no truth in it still has some: E max(0, t^2 - 1) = 0.48 of the sampling variance 1/38; uncorrected all of it and R^2 = 24/63
    expect(shares / rounds).toBeLessThan(0.6 / 38);
    expect(explained / rounds).toBeLessThan(0.1);
  });

  test('limit: a straight line is told apart from what does not matter', () => {
    const twister = new MersenneTwister(4);
    const z = Array.from({ length: 400 }, () => Array.from({ length: 4 }, () => normalQuantile(twister.uniform())));
    const found = influences(
      z,
      z.map(([a, b]) => 3 * a! - 4 * b! + 10),
    )!;
    expect(found.slopes[0]).toBeCloseTo(3, 9);
    expect(found.slopes[1]).toBeCloseTo(-4, 9);
    expect(found.shares[2]).toBeLessThan(1e-12);
    expect(found.explained).toBeCloseTo(1, 9);
  });
});
