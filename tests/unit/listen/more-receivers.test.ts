import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { SetInTime, SOUND_RATE } from '#engine';
import { type ReferenceReceiver, referenceCircuit } from './reference-circuits.ts';
import { amTone, decibels, fmTone, harmonics } from './signals.ts';

/**
 * rival: the time engine against integration with the carrier itself: a coupled pair of tanks, two stations at once, low and high tones, two detectors.
 * Source: tests/reference/listen/make.py and its output cases.json.
 */
interface Case extends ReferenceReceiver {
  name: string;
  base: number;
  stations: { emf: number; carrierFrequency: number; frequency: number; deviation: number; depth: number }[];
  result: { meanOutput: number; amplitudes: number[] };
}
const { cases } = JSON.parse(readFileSync(new URL('../../reference/listen/cases.json', import.meta.url), 'utf8')) as { cases: Case[] };

/** Multiples of `base` that are looked at: for two stations the tone of each, then what they make between them. */
const LINES: Record<string, readonly [number, number][]> = {
  'two-stations-weak-neighbour': [
    [2, 0.1],
    [3, 0.1],
    [4, 1],
    [6, 1],
  ],
  'two-stations-strong-neighbour': [
    [2, 0.1],
    [3, 0.1],
    [4, 1],
    [6, 1],
  ],
  'high-tone': [
    [1, 0.1],
    [2, 1],
    [3, 1],
  ],
  // its harmonics, 57 dB down, are what the RF harmonics of its pulses make of them
  'strong-am-narrow-tank': [[1, 0.1]],
  balanced: [
    [1, 0.1],
    // 50 dB down, what is left of two that cancel
    [2, 1],
    [3, 1],
  ],
};

function inTime(c: Case, rate: number): { lines: number[]; failures: number } {
  const reference = c.stations[0]!.carrierFrequency;
  const stations = c.stations.map((s, k) => ({
    name: `station ${k}`,
    frequency: s.carrierFrequency,
    emf: s.emf / Math.SQRT2,
    halfWidth: s.depth > 0 ? s.frequency : s.deviation + 2 * s.frequency,
    source: s.depth > 0 ? amTone(rate, s.frequency, s.depth) : fmTone(rate, s.frequency, s.deviation),
  }));
  const set = new SetInTime(referenceCircuit(c), stations, { reference, rate, angle: 0 });
  set.process(new Float64Array(0.02 * SOUND_RATE));
  const x = new Float64Array(Math.ceil(SOUND_RATE * Math.max(0.02, 4 / c.base)));
  set.process(x);
  return { lines: harmonics(x, SOUND_RATE, c.base, Math.min(12, Math.floor(23e3 / c.base))), failures: set.report().failures };
}

/** Rates other than those for one station [Hz]: strong beats reach far up before they die away (see foldingBound); two detectors have no reaction taps. */
const RATES: Record<string, number> = {
  'two-stations-weak-neighbour': 2_304_000,
  'two-stations-strong-neighbour': 4_608_000,
  balanced: 960_000,
};
const rateFor = (c: Case): number => RATES[c.name] ?? (c.stations[0]!.depth > 0 ? 96_000 : 480_000);

test('the reference holds what is asked of it', () => {
  const names = [
    'coupled-pair-middle',
    'coupled-pair-hard',
    'two-stations-weak-neighbour',
    'two-stations-strong-neighbour',
    'low-tone',
    'high-tone',
  ];
  expect(new Set(cases.map((c) => c.name))).toEqual(new Set([...names, 'high-tone-am', 'strong-am-narrow-tank', 'balanced']));
});

describe('rival: full-carrier integration: mean 1 %, fundamental 0.1 dB, harmonics 1 dB', () => {
  for (const c of cases)
    test(c.name, () => {
      const { lines, failures } = inTime(c, rateFor(c));
      const expected = c.result.amplitudes;
      expect(failures).toBe(0);
      const scale = c.name === 'balanced' ? expected[0]! : c.result.meanOutput;
      expect(Math.abs(lines[0]! - c.result.meanOutput)).toBeLessThan(0.01 * scale);
      for (const [line, tolerance] of LINES[c.name] ?? [
        [1, 0.1],
        [2, 1],
        [3, 1],
      ])
        expect(Math.abs(decibels(lines[line]!, expected[line - 1]!)), `line ${line}`).toBeLessThan(tolerance);
    });
});
