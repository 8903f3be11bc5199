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
import { listener, mediumWaveCoil, place, set, station } from './base-set.ts';

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
  test('AM is loudest beside the top where a reactive aerial moves it, and a search over the whole dial finds nothing better', () => {
    const am = place(station({ frequency: 1e6, modulation: { kind: 'am', depth: 0.8 }, measuredField: 0.02, polarisation: 'vertical' }));
    const mediumWave: SetDescription = {
      ...set,
      aerial: {
        kind: 'electrical',
        impedance: [{ frequency: 1e6, resistance: 20, reactance: -600 }],
        effectiveLength: 5,
        orientation: { kind: 'vertical' },
        frontToBack: 0,
      },
      tank: {
        ...set.tank,
        coil: {
          kind: 'electrical',
          inductance: 200e-6,
          q: 200,
          frequency: 1e6,
          selfCapacitance: 8e-12,
          turns: 60,
          tapCoupling: 0.95,
        },
        capacitor: { ...set.tank.capacitor, minimum: 15e-12, maximum: 500e-12 },
        aerialCoupling: { kind: 'tap', turns: 12 },
        detectorCoupling: { kind: 'tap', turns: 40 },
      },
    };
    const r = reception(mediumWave, am);
    const dial = bestDial(r, 0);
    if ('missing' in dial) throw new Error('must tune');
    expect(dial.points).toHaveLength(1);
    for (let k = 0; k <= 1500; k++) {
      const e = evaluate(r, 0, (k / 1500) * r.receiver.tank.rotation, false);
      expect(e.rated.earpiece[1]!).toBeLessThanOrEqual(dial.points[0]!.audio * 1.003);
    }
  });
  test('the side that is understood better is listened to, though the other may be louder', () => {
    const r = reception(set, place(station(), station({ name: 'Other', frequency: 95.5e6, power: 40e3 })));
    const dial = bestDial(r, 0);
    if ('missing' in dial) throw new Error('must tune');
    const [loud, other] = dial.points.map((p) => evaluate(r, 0, p.angle).hearing.sii);
    // the neighbour lies below, and the tank tuned below meets it
    expect(dial.points[0]!.side).toBe('below');
    expect(other!).toBeGreaterThan(loud! + 0.01);
    expect(reportStation(r, 0).heard!.at.side).toBe('above');
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
  const beside = (s: SetDescription, power: number, gain: number) => {
    const r = reception(s, place(station(), station({ name: 'Other', frequency: 98.1e6, power })));
    const dial = bestDial(r, 0);
    if ('missing' in dial) throw new Error('must tune');
    const [leaking] = evaluate(weaken(weaken(r, 0, -gain), 1, -gain), 0, dial.points[0]!.angle).leaks;
    return leaking!;
  };
  test('limit: in square law both sound side by side, as the squares of their amplitudes; nothing is hushed', () => {
    // a neighbour 100 kHz away stands on nearly the same slope
    const l = beside(set, 2.5e3, -60);
    expect(Math.abs(l.programme - 2 * l.radio)).toBeLessThan(1);
    expect(Math.abs(l.hush)).toBeLessThan(0.05);
  });
  test('limit: an output that stands at the peak of both follows either alike, as their amplitudes', () => {
    const l = beside(set, 2.5e3, 30);
    expect(Math.abs(l.programme - l.radio)).toBeLessThan(1.5);
  });
  test('limit: a detector that averages the envelope hushes the weaker, by half its square against the stronger', () => {
    // short of the output all of the current flows, and the series resistance makes it linear: <|A1 + A2 e^(j phi)|> = A1 + A2^2/(4 A1)
    const shorted: SetDescription = {
      ...set,
      detector: { ...set.detector, kind: 'junction', seriesResistance: 5e3 } as SetDescription['detector'],
      phones: { ...set.phones, load: 10 },
    };
    const l = beside(shorted, 1e3, 40);
    expect(Math.abs(l.programme - (2 * l.radio - 20 * Math.log10(2)))).toBeLessThan(1.5);
  });
  test('a station beside a much stronger one loses by it, and the stronger one hardly notices', () => {
    const r = reception(set, place(station({ power: 100 }), station({ name: 'Strong', frequency: 99.2e6, power: 1e6 })));
    const changed = (index: number) => {
      const dial = bestDial(r, index);
      if ('missing' in dial) throw new Error('must tune');
      const both = evaluate(r, index, dial.points[0]!.angle);
      const alone = evaluate(r, index, dial.points[0]!.angle, false);
      expect(decibels(both.programmeVoltage / alone.programmeVoltage)).toBeCloseTo(both.leaks[0]!.hush, 6);
      return { ...both.leaks[0]!, sii: both.hearing.sii - alone.hearing.sii };
    };
    const [weak, strong] = [changed(0), changed(1)];
    expect(weak.radio).toBeGreaterThan(6);
    expect(weak.programme).toBeGreaterThan(0);
    expect(weak.sii).toBeLessThanOrEqual(0);
    expect(Math.abs(strong.hush)).toBeLessThan(0.1);
    expect(strong.programme).toBeLessThan(-20);
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
        coil: mediumWaveCoil,
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
