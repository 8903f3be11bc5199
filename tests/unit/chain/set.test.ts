import { describe, expect, test } from 'vitest';
import {
  assemble,
  bestDial,
  chainFigures,
  evaluate,
  powerBudget,
  type Reception,
  report,
  reportStation,
  type SetDescription,
  type StationReport,
  standAt,
  weaken,
} from '#engine';
import { listener, place, set, station } from './base-set.ts';

const heard = (s: SetDescription, p = place()): StationReport => report(p, s, listener)[0]!;
const audio = (s: SetDescription, p = place()): number => heard(s, p).heard?.evaluation.rated.level[1] ?? Number.NEGATIVE_INFINITY;
const reception = (s: SetDescription = set, p = place()): Reception => standAt(p, assemble(s, listener));
const decibels = (x: number) => 20 * Math.log10(x);

describe('the ladder', () => {
  test('identity: power in equals power dissipated plus delivered, at every level', () => {
    for (const gain of [40, 20, 0, -30, -50]) {
      const r = weaken(reception(), 0, gain);
      const { resonance } = bestDial(r, 0) as { resonance: { angle: number; halfWidth: number } };
      for (const x of [0, 0.6, 2]) {
        const angle = resonance.angle + x * resonance.halfWidth;
        const e = evaluate(r, 0, angle);
        const b = powerBudget(r.receiver, r.signals[0]!, angle, e.rest);
        expect(Math.abs(b.imbalance)).toBeLessThan(1e-6);
        const heat = b.parts.reduce((sum, p) => sum + p.watts, 0);
        expect((heat + b.intoDetector) / b.intoTank).toBeCloseTo(1, 6);
        // two ways to the same power: the network with a conductance, and the describing function at its operating point
        expect(b.intoDetector / e.rest.power).toBeCloseTo(1, 4);
        expect(b.intoTank).toBeLessThanOrEqual(b.available * (1 + 1e-9));
      }
    }
  });
  test('costs lead from rung to rung, and every rung has a working', () => {
    const { ladder } = heard(set).heard!;
    const at = (name: string) => ladder.find((r) => r.figure.name === `ladder.${name}`)!;
    expect(at('intoTank').cost).toBeCloseTo(10 * Math.log10(at('available').figure.value! / at('intoTank').figure.value!), 9);
    for (const r of ladder) {
      expect(Number.isFinite(r.figure.value)).toBe(true);
      expect(r.figure.working.formula.length).toBeGreaterThan(5);
      expect(r.figure.working.source.length).toBeGreaterThan(5);
    }
  });
  test('figures of the chain have unique names and finite values', () => {
    const figures = chainFigures(heard(set));
    expect(new Set(figures.map((f) => f.name)).size).toBe(figures.length);
    for (const f of figures) expect(Number.isFinite(f.value), f.name).toBe(true);
  });
});

describe('the dial', () => {
  test('both flanks are found, the centre between them is nearly dumb and doubles the tone', () => {
    const r = reception();
    const dial = bestDial(r, 0);
    if ('missing' in dial) throw new Error('must tune');
    expect(dial.points.map((p) => p.side).sort()).toEqual(['above', 'below']);
    const [loud, other] = dial.points;
    expect(decibels(loud!.audio / other!.audio)).toBeLessThan(3);
    let centre = Number.POSITIVE_INFINITY;
    let doubled = 0;
    for (let x = -0.15; x <= 0.15; x += 0.01) {
      const { rated } = evaluate(r, 0, dial.resonance.angle + x * dial.resonance.halfWidth);
      if (rated.earpiece[1]! < centre) {
        centre = rated.earpiece[1]!;
        doubled = rated.secondHarmonic;
      }
    }
    expect(decibels(loud!.audio / centre)).toBeGreaterThan(15);
    expect(doubled).toBeGreaterThan(0.3);
  });
  test('a station beyond the dial is a physical no, with what is missing', () => {
    for (const [frequency, sign] of [
      [40e6, 1],
      [250e6, -1],
    ] as const) {
      const r = heard(set, place(station({ frequency })));
      expect(r.verdict.outcome).toBe('out-of-reach');
      if (!('missing' in r.dial)) throw new Error('must not tune');
      expect(Math.sign(r.dial.missing)).toBe(sign);
      expect(chainFigures(r)).toHaveLength(1);
    }
  });
  test('a search over the whole dial finds no louder place than the two flanks', () => {
    const r = reception();
    const dial = bestDial(r, 0);
    if ('missing' in dial) throw new Error('must tune');
    for (let k = 0; k <= 600; k++) {
      const e = evaluate(r, 0, (k / 600) * r.receiver.tank.rotation, false);
      expect(e.rated.earpiece[1]!).toBeLessThanOrEqual(dial.points[0]!.audio * 1.002);
    }
  });
});

describe('level', () => {
  test('limit: audio rises 2 dB for each dB of field in square law, and flattens to 1 dB', () => {
    const r = reception();
    const dial = bestDial(weaken(r, 0, 60), 0);
    if ('missing' in dial) throw new Error('must tune');
    const { angle } = dial.points[0]!;
    const at = (gain: number) => evaluate(weaken(r, 0, -gain), 0, angle).rated.level[1]!;
    expect(at(-70) - at(-71)).toBeCloseTo(2, 2);
    expect(at(41) - at(40)).toBeGreaterThan(0.8);
    expect(at(41) - at(40)).toBeLessThan(1.25);
  });
  test('a strong station damps the tank of a detector that rests at a high resistance, and flattens the slope', () => {
    const germanium: SetDescription = {
      ...set,
      detector: { ...set.detector, kind: 'junction', saturationCurrent: 1e-7 } as SetDescription['detector'],
      phones: { ...set.phones, load: 10e3 },
    };
    const q = (gain: number) => reportStation(weaken(reception(germanium), 0, -gain), 0).heard!.sharpness!.loadedQ;
    expect(q(40)).toBeLessThan(0.9 * q(-60));
  });
  test('limit: a field of nothing gives silence and numbers, not NaN', () => {
    const e = reportStation(weaken(reception(), 0, 400), 0);
    expect(e.verdict.outcome).toBe('silent');
    expect(Number.isFinite(e.verdict.odds)).toBe(true);
  });
});

describe('neighbours', () => {
  const leak = (offset: number, power: number) => {
    const r = reception(set, place(station(), station({ name: 'Other', frequency: 98e6 + offset, power })));
    const dial = bestDial(r, 0);
    if ('missing' in dial) throw new Error('must tune');
    return evaluate(r, 0, dial.points[0]!.angle).leaks[0]!;
  };
  test('a neighbour leaks less the farther and the weaker it is', () => {
    expect(leak(8e6, 10e3).programme).toBeLessThan(leak(3e6, 10e3).programme);
    expect(leak(3e6, 1e3).programme).toBeLessThan(leak(3e6, 10e3).programme - 5);
  });
  test('carriers a few kHz apart whistle; hundreds of kHz apart they do not', () => {
    expect(leak(5e3, 10e3).whistle).toBeCloseTo(5e3, 0);
    expect(leak(400e3, 10e3).whistle).toBeNull();
  });
  test('limit: in square law two equal stations sound side by side; a linear detector hushes the weaker', () => {
    const weak = reception(set, place(station(), station({ name: 'Other', frequency: 98.1e6, power: 2.5e3 })));
    const dial = bestDial(weak, 0);
    if ('missing' in dial) throw new Error('must tune');
    const programmeAt = (gain: number) => {
      const both = weaken(weaken(weak, 0, -gain), 1, -gain);
      return evaluate(both, 0, dial.points[0]!.angle).leaks[0]!.programme;
    };
    expect(programmeAt(30)).toBeLessThan(programmeAt(-60) - 3);
  });
});

describe('what the trade says (common practice, no source)', () => {
  const rod = (counterpoise: Extract<SetDescription['aerial'], { kind: 'whip' }>['counterpoise']): SetDescription => ({
    ...set,
    aerial: { kind: 'whip', length: 1, diameter: 3e-3, metal: 'copper', counterpoise },
  });
  const upright = place(station({ polarisation: 'vertical' }));
  /** The best of a few taps, since each aerial wants its own. */
  const bestTap = (s: SetDescription, p = upright): number =>
    Math.max(...[0.25, 0.5, 1, 1.5, 2.5].map((turns) => audio({ ...s, tank: { ...s.tank, aerialCoupling: { kind: 'tap', turns } } }, p)));
  const alone = rod({ kind: 'set', size: 0.12 });
  const dropped = rod({ kind: 'drop-wire', length: 1, diameter: 1e-3 });
  const beam: SetDescription = {
    ...set,
    aerial: {
      kind: 'electrical',
      impedance: [{ frequency: 98e6, resistance: 75, reactance: 0 }],
      gain: 9.2,
      orientation: { kind: 'vertical' },
      frontToBack: 0,
    },
  };

  test('practice: a drop wire beats the rod alone, and a small beam beats both', () => {
    const [a, d, b] = [bestTap(alone), bestTap(dropped), bestTap(beam)];
    expect(d).toBeGreaterThan(a + 3);
    expect(b).toBeGreaterThan(d + 3);
  });
  test('practice: an earth wire does not help at VHF', () => {
    const earthed = rod({ kind: 'earth-wire', length: 5, diameter: 1e-3, earthResistance: 100 });
    expect(bestTap(earthed)).toBeLessThan(bestTap(dropped));
  });
  test('practice: with a rod, 20 km is hard', () => {
    const far = report(place(station({ polarisation: 'vertical', position: { distance: 20e3, bearing: 0 } })), alone, listener)[0]!;
    expect(['silent', 'faint']).toContain(far.verdict.outcome);
  });
  test('practice: an FM set is quieter than its medium-wave cousin in the same field', () => {
    const am = station({
      frequency: 1e6,
      modulation: { kind: 'am', depth: 0.8 },
      measuredField: 10e-3,
      polarisation: 'vertical',
      mastHeight: 60,
    });
    const mediumWave: SetDescription = {
      ...set,
      aerial: { kind: 'wire-to-earth', horizontal: 20, vertical: 8, diameter: 1e-3, earthResistance: 50 },
      tank: {
        ...set.tank,
        coil: {
          kind: 'geometry',
          turns: 60,
          innerDiameter: 75e-3,
          wireDiameter: 0.6e-3,
          pitch: 0.9e-3,
          metal: 'copper',
          surfaceFactor: 1,
          leadLength: 0.05,
        },
        capacitor: { ...set.tank.capacitor, minimum: 15e-12, maximum: 365e-12 },
        aerialCoupling: { kind: 'tap', turns: 20 },
        detectorCoupling: { kind: 'tap', turns: 30 },
      },
    };
    const fm = report(place(station({ measuredField: 10e-3 })), set, listener)[0]!;
    const mw = report({ ...place(am), method: 'auto' }, mediumWave, listener)[0]!;
    expect(mw.heard!.evaluation.hearing.level).toBeGreaterThan(fm.heard!.evaluation.hearing.level + 6);
  });
  test('practice: stronger stations are hardly louder: ten times the power is far less than ten times as loud once the detector is full', () => {
    const strong = place(station({ measuredField: 1 }));
    const stronger = place(station({ measuredField: Math.sqrt(10) }));
    expect(audio(set, stronger) - audio(set, strong)).toBeLessThan(12);
  });
});
