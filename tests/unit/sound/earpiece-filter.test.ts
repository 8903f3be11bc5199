import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { earpieceFilter, fourierTransform, minimumPhase, phonesModel, pressureOf, REFERENCE_SOUND_PRESSURE } from '#engine';
import { LIBRARY } from '#parts';
import { readEarpiece } from './earpieces.ts';

const RATE = 48_000;
const reference = JSON.parse(readFileSync('tests/reference/sound/values.json', 'utf8')) as {
  minimumPhase: { given: number[]; minimum: number[] }[];
  lowPass: { given: number[]; minimum: number[] };
  earpiece: { points: [number, number][]; phase: [number, number][] }[];
};

/** Response at one frequency, the sum written out. */
function response(taps: ArrayLike<number>, frequency: number): { readonly level: number; readonly phase: number } {
  let re = 0;
  let im = 0;
  for (let n = 0; n < taps.length; n++) {
    const angle = (2 * Math.PI * frequency * n) / RATE;
    re += taps[n]! * Math.cos(angle);
    im -= taps[n]! * Math.sin(angle);
  }
  return { level: 20 * Math.log10(Math.hypot(re, im) / REFERENCE_SOUND_PRESSURE), phase: Math.atan2(im, re) };
}

/** ln |H| of a filter, round the upper half of the circle. */
function logMagnitude(taps: readonly number[], size: number): Float64Array {
  const re = new Float64Array(size);
  const im = new Float64Array(size);
  re.set(taps);
  fourierTransform(size).forward(re, im);
  return Float64Array.from({ length: size / 2 + 1 }, (_, k) => Math.log(Math.hypot(re[k]!, im[k]!)));
}

const phones = (name: string) => phonesModel({ bypass: 1e-9, earpiece: readEarpiece(name) });
const grid = (from: number, to: number, perOctave: number): number[] => {
  const count = Math.floor(perOctave * Math.log2(to / from));
  return Array.from({ length: count + 1 }, (_, k) => from * 2 ** (k / perOctave));
};

test('published: a filter with zeros outside the circle has the minimum-phase partner with those zeros reflected', () => {
  for (const { given, minimum } of reference.minimumPhase) {
    const h = minimumPhase(logMagnitude(given, 4096));
    for (let n = 0; n < 4096; n++) expect(h[n]!, `${given.length} taps, ${n}`).toBeCloseTo(minimum[n] ?? 0, 12);
  }
});

test('rival: a low-pass against scipy.signal.minimum_phase', () => {
  const { given, minimum } = reference.lowPass;
  const h = minimumPhase(logMagnitude(given, 1 << 16));
  minimum.forEach((value, n) => {
    expect(Math.abs(h[n]! - value), `tap ${n}`).toBeLessThan(1e-7);
  });
});

test('limit: every earpiece of the library has its sensitivity within 0.1 dB from 50 Hz to 15 kHz', () => {
  const names = Object.keys(LIBRARY.earpieces);
  expect(names.length).toBeGreaterThan(5);
  for (const name of names) {
    const { sensitivity } = phones(name);
    const { taps, error } = earpieceFilter(sensitivity);
    let worst = 0;
    for (const f of [50, 100, 125, 200, 300, 500, 3000, 3400, ...grid(50, 15_000, 6)])
      worst = Math.max(worst, Math.abs(response(taps, f).level - sensitivity(f)));
    expect(worst, name).toBeLessThan(0.1);
    expect(worst, name).toBeLessThan(error + 0.002);
  }
});

test('limit: steep curves, and flat ones, within 0.1 dB from 50 Hz to 15 kHz, 1 dB from 20 Hz to 20 kHz; nothing at 0 Hz', () => {
  const curves: readonly (readonly [string, (f: number) => number])[] = [
    ['flat from 50 Hz', (f) => 100 - 12 * Math.max(0, Math.log2(50 / f))],
    ['flat from 20 Hz to 20 kHz', (f) => 100 - 12 * Math.max(0, Math.log2(20 / f), Math.log2(f / 20_000))],
    ['rising by 12 dB per octave', (f) => 60 + 12 * Math.log2(f / 1000)],
    ['a roof at 1 kHz', (f) => 100 - 12 * Math.abs(Math.log2(f / 1000))],
  ];
  for (const [name, curve] of curves) {
    const { taps } = earpieceFilter(curve);
    for (const f of grid(50, 15_000, 6)) expect(Math.abs(response(taps, f).level - curve(f)), `${name}, ${f} Hz`).toBeLessThan(0.1);
    for (const f of [20, 25, 30, 40, 16_000, 18_000, 20_000])
      expect(Math.abs(response(taps, f).level - curve(f)), `${name}, ${f} Hz`).toBeLessThan(1);
    expect(Math.abs(taps.reduce((a, b) => a + b, 0)), `${name}, 0 Hz`).toBeLessThan(pressureOf(100 - 40));
  }
});

test('rival: phase from the magnitude by the integral that joins them (scipy.integrate.quad), within 0.01 rad', () => {
  for (const { points, phase } of reference.earpiece) {
    const { sensitivity } = phonesModel({
      bypass: 1e-9,
      earpiece: {
        ...readEarpiece('crystal-earplug'),
        sensitivity: points.map(([frequency, level]) => ({ frequency, level })),
      },
    });
    const { taps } = earpieceFilter(sensitivity);
    for (const [f, angle] of phase) {
      const gap = response(taps, f).phase - angle;
      expect(Math.abs(gap - 2 * Math.PI * Math.round(gap / (2 * Math.PI))), `${f} Hz`).toBeLessThan(0.01);
    }
  }
});
