import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type Complex, detectorModel, EARTH, type Element, harmonicBalance, modulated, RfHalf } from '#engine';
import { type ReferenceReceiver, tankElements } from '../listen/reference-circuits.ts';

/**
 * rival: the steady large-signal result against integration of the whole receiver with the carrier itself, by SciPy's LSODA.
 * Source: tests/reference/full-carrier/make.py and its output cases.json.
 */
interface Case extends ReferenceReceiver {
  name: string;
  describingFunctionHolds: boolean;
  modulation: { kind: 'FM' | 'AM'; carrierFrequency: number; frequency: number; deviation: number; depth: number };
  source: { emf: number; resistance: number };
  result: { meanOutput: number; audio: { harmonic: number; amplitude: number; phase: number }[]; meanTankAmplitude: number };
}
const { cases } = JSON.parse(readFileSync(new URL('../../reference/full-carrier/cases.json', import.meta.url), 'utf8')) as {
  cases: Case[];
};

/** The receiver's radio half with its source at one volt. */
const elementsOf = (c: Case): Element[] => [{ kind: 'voltage', name: 'emf', a: 'source', b: EARTH, re: 1, im: 0 }, ...tankElements(c)];

function steady(c: Case): Complex[] {
  const rf = new RfHalf(elementsOf(c), 'top', c.load.capacitance);
  const m = c.modulation;
  const carrier = modulated(
    rf,
    m.carrierFrequency,
    c.source.emf / Math.SQRT2,
    m.kind === 'FM' ? { kind: 'fm', deviation: m.deviation, preEmphasis: 50e-6, stereo: false } : { kind: 'am', depth: m.depth },
  );
  const { law } = detectorModel({ kind: 'junction', junctionCapacitance: 0, nominalTemperature: c.detector.temperature, ...c.detector });
  const samples = 32;
  const load = Array.from({ length: samples / 2 + 1 }, (_, k) => {
    const w = 2 * Math.PI * m.frequency * k * c.load.resistance * c.load.capacitance;
    return { re: c.load.resistance / (1 + w * w), im: (-c.load.resistance * w) / (1 + w * w) };
  });
  const balance = harmonicBalance(law, carrier.toneDrive(samples, m.frequency, m.kind === 'FM' ? m.deviation : m.depth), load);
  expect(balance.converged).toBe(true);
  return [...balance.harmonics];
}

const decibels = (a: number, b: number) => Math.abs(20 * Math.log10(a / b));

test('the reference holds what is asked of it: three tanks, three levels, FM and AM', () => {
  const held = cases.filter((c) => c.describingFunctionHolds);
  expect(new Set(held.map((c) => c.tank.kind)).size).toBe(3);
  expect(held.filter((c) => c.modulation.kind === 'FM').length).toBeGreaterThanOrEqual(9);
  expect(held.some((c) => c.modulation.kind === 'AM')).toBe(true);
});

for (const c of cases.filter((x) => x.describingFunctionHolds))
  test(`rival: full-carrier integration, ${c.name}: mean 1 %, fundamental 0.1 dB, harmonics 1 dB`, () => {
    const h = steady(c).map((z) => Math.hypot(z.re, z.im));
    expect(Math.abs(h[0]! / c.result.meanOutput - 1)).toBeLessThan(0.01);
    const at = (k: number) => c.result.audio.find((a) => a.harmonic === k)!.amplitude;
    expect(decibels(h[1]!, at(1))).toBeLessThan(0.1);
    expect(decibels(h[2]!, at(2))).toBeLessThan(1);
    expect(decibels(h[3]!, at(3))).toBeLessThan(1);
  });
