import { describe, expect, test } from 'vitest';
import { assemble, powerBudget, type Reception, reportStation, type SetDescription, type StationReport, standAt } from '#engine';
import { listener, place, set, station } from './base-set.ts';

const freely = (...stations: Parameters<typeof place>) => ({ ...place(...stations), method: 'free-space' as const });
const receive = (s: SetDescription, p = place()): Reception => standAt(p, assemble(s, listener));
const rung = (r: StationReport, name: string) => r.heard!.ladder.find((x) => x.figure.name === `ladder.${name}`)!;

describe('the coil as aerial', () => {
  const { aerialCoupling: _, ...tank } = set.tank;
  const loop: SetDescription = {
    ...set,
    aerial: { kind: 'coil', axis: { kind: 'vertical' } },
    tank: {
      ...tank,
      coil: {
        kind: 'geometry',
        turns: 1,
        innerDiameter: 0.096,
        wireDiameter: 4e-3,
        pitch: 5e-3,
        metal: 'copper',
        surfaceFactor: 1,
        leadLength: 5e-3,
      },
    },
  };
  // an empty world: nothing scatters
  const near = freely(station({ power: 100e3, position: { distance: 4000, bearing: 0 } }));
  const r = receive(loop, near);
  const [signal] = r.signals;

  test('limit: loss-free, it could hand over what any small aerial gathers, 1.5 lambda^2 / (4 pi) of the wave', () => {
    const wavelength = 299_792_458 / 98e6;
    const gathered = (signal!.received.field ** 2 / 376.730313668) * ((1.5 * wavelength ** 2) / (4 * Math.PI));
    // towards a mast just above the horizon, so a little less than its best
    expect(signal!.emf ** 2 / (4 * signal!.radiationResistance) / gathered).toBeCloseTo(1, 2);
  });
  test('limit: lying flat it hears nothing of an upright wave, standing across nothing from its side', () => {
    const field = station({ power: 100e3, polarisation: 'vertical' });
    const flat = receive(loop, freely(field));
    expect(flat.signals[0]!.emf / signal!.emf).toBeLessThan(1e-6);
    const standing = (plane: number) =>
      receive({ ...loop, aerial: { kind: 'coil', axis: { kind: 'horizontal', plane } } }, freely(field)).signals[0]!.emf;
    expect(standing(Math.PI / 2) / standing(0)).toBeLessThan(1e-6);
  });
  test('identity: what it hands over is heat elsewhere and the power into the detector, and never more than it could', () => {
    const report = reportStation(r, 0);
    const { at, evaluation, budget } = report.heard!;
    const elsewhere = budget.parts.filter((p) => !/^(coil copper|coil leads|radiation)/.test(p.name)).reduce((sum, p) => sum + p.watts, 0);
    expect((elsewhere + budget.intoDetector) / budget.intoTank).toBeCloseTo(1, 6);
    for (let k = -3; k <= 3; k++) {
      const b = powerBudget(r.receiver, signal!, at.angle + 0.004 * k, evaluation.rest);
      expect(b.intoTank).toBeLessThanOrEqual(b.available);
    }
    expect(rung(report, 'intoTank').cost).toBeGreaterThanOrEqual(0);
    // its copper is what the aerial costs
    expect(rung(report, 'available').cost).toBeCloseTo(10 * Math.log10(budget.sourceResistance / signal!.radiationResistance), 9);
  });
});

describe('what the way to the earpiece costs', () => {
  // a narrow swing on a broad slope is small enough for the straight formula
  const modulation = { kind: 'fm', deviation: 2e3, preEmphasis: 50e-6, stereo: false } as const;
  const gentle = place(station({ modulation }));
  const magnetic = (resistance: number): SetDescription['phones'] => ({
    ...set.phones,
    bypass: 100e-12,
    load: 1e9,
    earpiece: { ...set.phones.earpiece, kind: 'magnetic', resistance, inductance: 0 },
  });
  test('identity: into a resistance it is the ratio of the powers', () => {
    for (const resistance of [300, 3e3, 30e3]) {
      const report = reportStation(receive({ ...set, phones: magnetic(resistance) }, gentle), 0);
      const ratio = rung(report, 'audioAvailable').figure.value! / rung(report, 'audioPower').figure.value!;
      expect(Math.abs(rung(report, 'audioVoltage').cost! - 10 * Math.log10(ratio))).toBeLessThan(0.05);
    }
  });
  test('limit: an ideal transformer of the best ratio costs nothing; for a piezo that is n^2 = w C / g', () => {
    const weak = place(station({ measuredField: 1e-3, modulation }));
    const bare = reportStation(receive(set, weak), 0);
    const g = bare.heard!.evaluation.rest.outputConductance;
    const ratio = Math.sqrt((2 * Math.PI * 1000 * 15e-9) / g);
    const { load: _, ...open } = set.phones;
    const matched = (by: number) => {
      const transformer = {
        ratio: by * ratio,
        primaryInductance: 1e6,
        primaryResistance: 1,
        secondaryResistance: 1e-3,
        leakageInductance: 1e-6,
        coreLoss: 1e9,
        capacitance: 0,
      };
      return rung(reportStation(receive({ ...set, phones: { ...open, bypass: 100e-12, transformer } }, weak), 0), 'audioVoltage').cost!;
    };
    expect(Math.abs(matched(1))).toBeLessThan(0.15);
    expect(rung(bare, 'audioVoltage').cost!).toBeGreaterThan(matched(1));
    for (const by of [0.7, 1.4]) expect(matched(by)).toBeGreaterThan(matched(1));
  });
  test('the costliest step is one that a builder can mend: not the nature of a detector, nor the little power a piezo takes', () => {
    const report = reportStation(receive(set), 0);
    expect(rung(report, 'audioPower').cost).toBeNull();
    expect(['tank', 'phones']).toContain(report.verdict.costliest!.stage);
  });
});

test('no bypass: the cord of the phones returns the radio current', () => {
  const report = reportStation(receive({ ...set, phones: { ...set.phones, bypass: 0 } }), 0);
  expect(report.heard!.evaluation.rated.converged).toBe(true);
  const fitted = reportStation(receive(set), 0);
  expect(Math.abs(report.heard!.evaluation.rated.level[1]! - fitted.heard!.evaluation.rated.level[1]!)).toBeLessThan(1);
});

describe('a station across the polarisation', () => {
  const emf = (polarisation: 'horizontal' | 'vertical', over: Partial<ReturnType<typeof place>>) => {
    const p = { ...place(station({ polarisation, measuredField: 0.01 })), ...over };
    return receive(set, p).signals[0]!.emf;
  };
  test('practice: what is scattered leaves it some 20 dB below, less far below indoors; along the right one it does not count', () => {
    const ratio = 20 * Math.log10(emf('vertical', {}) / emf('horizontal', {}));
    expect(ratio).toBeGreaterThan(-25);
    expect(ratio).toBeLessThan(-15);
    const { site } = place();
    const within = { site: { ...site, building: { kind: 'traditional', probability: 0.5 } as const } };
    expect(20 * Math.log10(emf('vertical', within) / emf('horizontal', within))).toBeGreaterThan(ratio + 5);
  });
  test('limit: an empty world scatters nothing', () => {
    const alone = (polarisation: 'horizontal' | 'vertical') => receive(set, freely(station({ polarisation }))).signals[0]!.emf;
    expect(alone('vertical') / alone('horizontal')).toBeLessThan(1e-6);
  });
  test('limit: of waves from all round any aerial gathers lambda^2 / (8 pi), whatever its shape', () => {
    const { signals } = receive(set, place(station({ polarisation: 'vertical', measuredField: 0.01 })));
    const [s] = signals;
    const wavelength = 299_792_458 / 98e6;
    // both polarisations, each 18 dB below the wave
    const density = (2 * 0.01 ** 2 * 10 ** (-18 / 10)) / 376.730313668;
    expect(s!.emf ** 2 / (4 * s!.radiationResistance) / ((density * wavelength ** 2) / (8 * Math.PI))).toBeCloseTo(1, 3);
  });
});
