import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { SetInTime, SOUND_RATE } from '#engine';
import { type ReferenceReceiver, referenceCircuit } from './reference-circuits.ts';
import { amTone, decibels, fmTone, harmonics } from './signals.ts';

/**
 * rival: the time engine against integration of the whole receiver with the carrier itself, by SciPy's LSODA.
 * Source: tests/reference/full-carrier/make.py and its output cases.json.
 */
interface Case extends ReferenceReceiver {
  name: string;
  modulation: { kind: 'FM' | 'AM'; carrierFrequency: number; frequency: number; deviation: number; depth: number };
  source: { emf: number; resistance: number };
  result: { meanOutput: number; audio: { harmonic: number; amplitude: number }[] };
}
const { cases } = JSON.parse(readFileSync(new URL('../../reference/full-carrier/cases.json', import.meta.url), 'utf8')) as {
  cases: Case[];
};

/** A long pulse in which RF harmonics meet the load: no method with a sinusoid across the law can have it (cases.json says why). */
const HARMONICS_OF_RADIO = 'tapped-hard-heavy-load';

function inTime(c: Case, rate: number): { h: number[]; failures: number } {
  const { modulation: m, source } = c;
  const station = {
    name: c.name,
    frequency: m.carrierFrequency,
    emf: source.emf / Math.SQRT2,
    halfWidth: m.kind === 'FM' ? m.deviation + 2 * m.frequency : m.frequency,
    source: m.kind === 'FM' ? fmTone(rate, m.frequency, m.deviation) : amTone(rate, m.frequency, m.depth),
  };
  const set = new SetInTime(referenceCircuit(c), [station], { reference: m.carrierFrequency, rate, angle: 0 });
  const settle = new Float64Array(Math.ceil(SOUND_RATE * (0.005 + 25 * c.load.resistance * c.load.capacitance)));
  set.process(settle);
  const x = new Float64Array(Math.ceil(SOUND_RATE * Math.max(0.02, 3 / m.frequency)));
  set.process(x);
  return { h: harmonics(x, SOUND_RATE, m.frequency, m.frequency < 2000 ? 12 : 4), failures: set.report().failures };
}

test('the reference holds thirteen receivers, one of them clipped', () => {
  expect(cases.length).toBe(13);
  expect(cases.some((c) => c.name === 'medium-wave-am-clipped')).toBe(true);
});

describe('rival: full-carrier integration: mean 1 %, fundamental 0.1 dB, harmonics 1 dB', () => {
  for (const c of cases)
    test(c.name, () => {
      const { h, failures } = inTime(c, c.modulation.kind === 'FM' ? 480_000 : 96_000);
      const at = (k: number) => c.result.audio.find((a) => a.harmonic === k)!.amplitude;
      expect(failures).toBe(0);
      expect(Math.abs(h[0]! / c.result.meanOutput - 1)).toBeLessThan(0.01);
      if (c.name === HARMONICS_OF_RADIO) {
        expect(Math.abs(decibels(h[1]!, at(1)))).toBeLessThan(0.6);
        return;
      }
      expect(Math.abs(decibels(h[1]!, at(1)))).toBeLessThan(0.1);
      expect(Math.abs(decibels(h[2]!, at(2)))).toBeLessThan(1);
      expect(Math.abs(decibels(h[3]!, at(3)))).toBeLessThan(1);
    });
});
