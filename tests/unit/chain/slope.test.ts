import { describe, expect, test } from 'vitest';
import {
  type DescribingFunction,
  detectorModel,
  EARTH,
  type Element,
  goldenMaximum,
  harmonicBalance,
  modulated,
  poles,
  RfHalf,
} from '#engine';

const F0 = 100e6;
const OMEGA = 2 * Math.PI * F0;
const resistor = (name: string, a: string, resistance: number): Element => ({ kind: 'resistor', name, a, b: EARTH, resistance });
const SUSCEPTANCE = 1 / 60; // of coil and capacitor at F0 [S]

/** A parallel tank fed by an aerial of conductance gs and available power p, its own loss gu, detuned by x half bandwidths of total g. */
function tank(gu: number, gs: number, p: number, x: number, g: number): Element[] {
  // detuning by capacitance: B = x g
  return [
    { kind: 'current', name: 'aerial current', a: 'top', b: EARTH, re: 2 * Math.sqrt(p * gs), im: 0 },
    resistor('aerial', 'top', 1 / gs),
    resistor('loss', 'top', 1 / gu),
    { kind: 'windings', name: 'coil', windings: [{ name: 'coil', a: 'top', b: EARTH }], inductance: [[1 / (SUSCEPTANCE * OMEGA)]] },
    { kind: 'capacitor', name: 'tuning', a: 'top', b: EARTH, capacitance: (SUSCEPTANCE + x * g) / OMEGA },
  ];
}

/** Audio of a small swing with a short-circuited or loaded output; one volt of "e.m.f." stands for the current source here. */
function audio(elements: readonly Element[], law: DescribingFunction, load: number, deviation = 5e3): number {
  const rf = new RfHalf(elements, 'top', 1e-6);
  const carrier = modulated(rf, F0, Math.SQRT1_2, { kind: 'fm', deviation, preEmphasis: 50e-6, stereo: false });
  const zs = Array.from({ length: 9 }, () => ({ re: load, im: 0 }));
  const { harmonics } = harmonicBalance(law, carrier.toneDrive(16, 1000, deviation), zs);
  return Math.hypot(harmonics[1]!.re, harmonics[1]!.im);
}
/** The source of `tank` is in amperes peak when read through `modulated` at 1/sqrt 2 volt: amplitude 1. */
const junction = (saturationCurrent: number) =>
  detectorModel({
    kind: 'junction',
    saturationCurrent,
    ideality: 1,
    seriesResistance: 0,
    junctionCapacitance: 0,
    nominalTemperature: 300,
    temperature: 300,
  });

describe('slope detection, analytic', () => {
  test('limit: with equal loading by source and detector, square-law audio is greatest at loaded Q = unloaded / 3', () => {
    // gs = gd = g: audio current goes as P 4 g^2 / (gu + 2 g)^2 times Q, Q as 1/(gu + 2 g); its maximum is at g = gu
    const gu = SUSCEPTANCE / 300;
    const at = (g: number): number => {
      const total = gu + 2 * g;
      // the law with this conductance at rest; output shorted by a small load, level in the depth of square law
      const law = junction(g * 0.025852);
      return audio(tank(gu, g, 1e-12, 1 / Math.sqrt(3), total), law.law, 1e-3 / g) * g;
    };
    const best = goldenMaximum((t) => at(gu * Math.exp(t)), -2, 2, 1e-4);
    const g = gu * Math.exp(best);
    const [joined] = poles([...tank(gu, g, 1e-12, 0, gu), resistor('detector', 'top', 1 / g)], F0)!;
    const [alone] = poles(tank(gu, 1e-12, 1e-12, 0, gu), F0)!;
    const ratio = joined!.im / joined!.re / (alone!.im / alone!.re);
    // the textbook curve is symmetric; a circuit of Q = 100 departs from it by some 1/Q
    expect(Math.abs(ratio - 1 / 3)).toBeLessThan(2e-3);
  });

  test('limit: best detuning is 1/sqrt 3 in square law and moves to 1/sqrt 2 in linear law as the level rises', () => {
    const gu = SUSCEPTANCE / 300;
    // a weak junction with an open output: it damps the tank by less than a thousandth at any level
    const law = junction(1e-9).law;
    const best = (power: number): number => goldenMaximum((x) => audio(tank(gu, gu, power, x, 2 * gu), law, 1e9), 0.4, 0.9, 1e-5);
    const levels = [1e-12, 1e-7, 1e-5, 3e-4].map(best);
    expect(Math.abs(levels[0]! - 1 / Math.sqrt(3))).toBeLessThan(3e-3);
    // the linear limit is reached as ln(A/nVt): within half a per cent at some volts
    expect(levels[3]! / Math.SQRT1_2).toBeGreaterThan(0.985);
    expect(levels[3]! / Math.SQRT1_2).toBeLessThan(1.005);
    for (let k = 1; k < levels.length; k++) expect(levels[k]).toBeGreaterThan(levels[k - 1]! - 1e-4);
  });

  test('limit: an unloaded tank follows the resonance curve 1 / sqrt(1 + x^2)', () => {
    const g = SUSCEPTANCE / 2000;
    const rf = new RfHalf(tank(g, 1e-15, 1e-12, 0, g), 'top', 1e-6);
    rf.solve(F0);
    const top = Math.hypot(rf.vRe, rf.vIm);
    for (const x of [-2, -0.7, 0.5, 3]) {
      rf.solve(F0 * (1 + (x * g) / (2 * SUSCEPTANCE)));
      // the tank is sharp, so the exact circuit and the symmetric curve part by some x/Q
      expect(Math.hypot(rf.vRe, rf.vIm) / top).toBeCloseTo(1 / Math.sqrt(1 + x * x), 2);
    }
  });
});
