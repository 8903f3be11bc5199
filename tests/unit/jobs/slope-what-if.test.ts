import { afterAll, describe, expect, test } from 'vitest';
import type { SlopeCurves, WhatIf } from '#jobs';
import { bench, document, ok } from './examples.ts';

const jobs = bench();
afterAll(() => jobs.close());

const ask = async (name: string, whatIf?: WhatIf, angle?: number): Promise<SlopeCurves> =>
  ok(await jobs.call('slopeCurves', { document: document(name), station: 0, whatIf, angle }))!;
const DEMO = 'dipole-and-small-coil.json';
const MEDIUM_WAVE = 'medium-wave.json';

describe('the slope as it would be', () => {
  test('small swings: depth as the swing, second harmonic as the swing, third as its square (the first terms of a power series)', async () => {
    const [a, b] = [await ask(DEMO, { modulation: 4e3 }), await ask(DEMO, { modulation: 8e3 })];
    expect(a.rated.swing).toBe(4e3);
    expect(b.rated.depth / a.rated.depth).toBeCloseTo(2, 1);
    expect(b.rated.secondHarmonic / a.rated.secondHarmonic).toBeCloseTo(2, 1);
    expect(b.rated.thirdHarmonic / a.rated.thirdHarmonic).toBeGreaterThan(3.7);
    expect(b.rated.thirdHarmonic / a.rated.thirdHarmonic).toBeLessThan(4.3);
  });
  test('a swing beyond the real one is followed as far as it goes: the amplitude at its ends is that of the slope there', async () => {
    const s = await ask(DEMO, { modulation: 150e3 });
    const at = (offset: number): number => s.amplitude[s.offset.findIndex((o) => o >= offset)]!;
    // the tank lies above the carrier here: upwards is towards its top. The output moves with a tone, and the slope was drawn with it held: a few per cent
    for (const i of [0, 48]) expect(s.rated.amplitude[i]! / at(s.rated.modulation[i]!)).toBeCloseTo(1, 0);
    expect(s.builtModulation).toBe(75e3);
    expect(s.builtAmplitude).not.toBeNull();
  });
  test('losses ten times as great: Q falls, though less than tenfold, for aerial and detector take their share as before; the slope is flatter', async () => {
    const [built, poor] = [await ask(DEMO), await ask(DEMO, { losses: 10 })];
    expect(built.builtAmplitude).toBeNull();
    expect(poor.sharpness!.unloadedQ / built.sharpness!.unloadedQ).toBeCloseTo(0.1, 2);
    const ratio = poor.sharpness!.loadedQ / built.sharpness!.loadedQ;
    expect(ratio).toBeGreaterThan(0.1);
    expect(ratio).toBeLessThan(0.3);
    expect(poor.rated.depth).toBeLessThan(built.rated.depth / 2);
    // it stays where it was tuned
    expect(poor.angle).toBe(built.angle);
    expect(Math.abs(poor.sharpness!.frequency - built.sharpness!.frequency)).toBeLessThan(20e3);
    expect(Array.from(poor.builtAmplitude!)).toEqual(Array.from(built.amplitude));
  });
  test('the output without distortion has the mean of the output, and what it leaves has no fundamental', async () => {
    const { output, pure, phase } = (await ask(DEMO)).rated;
    const rest = Array.from(output.slice(0, -1), (v, i) => v - pure[i]!);
    const most = Math.max(...output) - Math.min(...output);
    for (const wave of [() => 1, (p: number) => Math.cos(2 * Math.PI * p), (p: number) => Math.sin(2 * Math.PI * p)])
      expect(Math.abs(rest.reduce((sum, v, i) => sum + v * wave(phase[i]!), 0) / rest.length / most)).toBeLessThan(1e-9);
    expect(Math.max(...rest.map(Math.abs)) / most).toBeGreaterThan(0.01);
  });
  test('the tank runs as the dial turns: so far as its resonance is found elsewhere', async () => {
    const here = await ask(DEMO);
    const there = await ask(DEMO, undefined, here.angle + 0.01);
    const moved = there.sharpness!.frequency - here.sharpness!.frequency;
    expect(moved / (0.01 * here.run!)).toBeGreaterThan(0.97);
    expect(moved / (0.01 * here.run!)).toBeLessThan(1.03);
  });
  test('AM: the depth is that of the station, supposed or not; for small depths the amplitude follows in proportion', async () => {
    const [built, small, twice] = [
      await ask(MEDIUM_WAVE),
      await ask(MEDIUM_WAVE, { modulation: 0.05 }),
      await ask(MEDIUM_WAVE, { modulation: 0.1 }),
    ];
    expect(built.kind).toBe('am');
    expect(built.modulation).toBe(0.8);
    expect(small.rated.swing).toBe(0.05);
    expect(twice.rated.depth / small.rated.depth).toBeCloseTo(2, 1);
  });
  test('what cannot be is refused with what would', async () => {
    const given = { document: document(DEMO), station: 0 };
    for (const whatIf of [{ losses: 0 }, { modulation: -1 }, { modulation: Number.NaN }]) {
      const answer = await jobs.call('slopeCurves', { ...given, whatIf });
      expect(answer.ok).toBe(false);
    }
  });
});
