import { describe, expect, test } from 'vitest';
import { assemble, EarInTime, LevelMeter, SOUND_RATE, settleEar } from '#engine';
import { listener, set } from '../chain/base-set.ts';

const tone = (seconds: number, frequency: number, rms: number, mean = 0): Float64Array =>
  Float64Array.from(
    { length: Math.round(seconds * SOUND_RATE) },
    (_, n) => mean + Math.SQRT2 * rms * Math.sin((2 * Math.PI * frequency * n) / SOUND_RATE),
  );
const measured = (...parts: Float64Array[]) => {
  const meter = new LevelMeter();
  for (const p of parts) for (let n = 0; n < p.length; n += 777) meter.add(p.subarray(n, n + 777));
  return meter.levels();
};

describe('level of a sound', () => {
  test('definition: 1 Pa rms is 93.98 dB SPL, a mean not counted; peak as it is', () => {
    const { level, peak } = measured(tone(2 ** 15 / SOUND_RATE, 3000, 1, 5));
    expect(level).toBeCloseTo(20 * Math.log10(1 / 20e-6), 4);
    expect(peak).toBeCloseTo(5 + Math.SQRT2, 3);
  });
  test('IEC 61672-1: A-weighting of tones at 100 Hz, 1 kHz and 8 kHz within 0.1 dB, the rounding of its table', () => {
    // Table 3 of the standard: -19.1, 0, -1.1 dB
    for (const [f, a] of [
      [100, -19.1],
      [1000, 0],
      [8000, -1.1],
    ] as const) {
      const { level, levelA } = measured(tone(2, f, 0.1));
      expect(Math.abs(levelA! - level! - a)).toBeLessThan(0.1);
    }
  });
  test('IEC 61672-1: low tones within 0.1 dB from 50 Hz, 0.3 dB at 31.5 Hz, where weighting takes 30 dB and more', () => {
    // Table 3 of the standard, nominal frequencies: exact ones are 10^(n/10) Hz
    for (const [f, a, allowed] of [
      [10 ** 1.5, -39.4, 0.3],
      [10 ** 1.7, -30.2, 0.1],
      [10 ** 1.8, -26.2, 0.1],
    ] as const) {
      // whole periods: where it is cut off in its midst a tone clicks
      const { level, levelA } = measured(tone(Math.round(10 * f) / f, f, 0.1));
      // the table is rounded to 0.1 dB
      expect(Math.abs(levelA! - level! - a), `${f} Hz`).toBeLessThan(allowed + 0.05);
    }
  });
  test('a burst reads the same wherever it falls, within 1 dB; an end that fills no piece does not count as one', () => {
    const burst = tone(2 ** 15 / SOUND_RATE, 1000, 0.1);
    const at = (seconds: number): number =>
      measured(new Float64Array(Math.round(seconds * SOUND_RATE)), burst, new Float64Array(SOUND_RATE)).loudestA!;
    const levels = [1, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.7].map(at);
    expect(Math.max(...levels) - Math.min(...levels)).toBeLessThan(1);
    // 20 log10(0.1/20e-6) = 74 dB
    for (const l of levels) expect(Math.abs(l - 74)).toBeLessThan(1);
    // a click of 10 samples in the last 64 of 1.4 s is not 20 dB more than the tone before it
    const click = new Float64Array(64);
    click.fill(0.5, 20, 25);
    click.fill(-0.5, 25, 30);
    const steady = tone((2 * 2 ** 15) / SOUND_RATE, 1000, 0.1);
    expect(measured(steady, click).loudestA! - measured(steady).loudestA!).toBeLessThan(0.1);
  });
  test('the loudest part is never below the whole; reading the meter changes nothing', () => {
    const short = measured(tone(0.25, 1000, 0.1));
    expect(short.loudestA).toBe(short.levelA);
    expect(Math.abs(short.levelA! - 74)).toBeLessThan(0.1);
    const [read, unread] = [new LevelMeter(), new LevelMeter()];
    const sound = tone(2, 440, 0.05);
    for (let n = 0; n < sound.length; n += 5000) {
      read.add(sound.subarray(n, n + 5000));
      read.levels();
      unread.add(sound.subarray(n, n + 5000));
    }
    expect(read.levels()).toEqual(unread.levels());
  });
  test('the loudest part stands beside the whole', () => {
    const { levelA, loudestA } = measured(tone(3, 1000, 0.01), tone(1.5, 1000, 0.1), tone(3, 1000, 0.01));
    expect(loudestA).toBeCloseTo(20 * Math.log10(0.1 / 20e-6), 1);
    expect(levelA).toBeCloseTo(10 * Math.log10((6 * 0.01 ** 2 + 1.5 * 0.1 ** 2) / 7.5 / 4e-10), 1);
  });
  test('silence has no level', () => {
    expect(measured(new Float64Array(1000))).toEqual({ level: null, levelA: null, loudestA: null, peak: 0 });
  });
});

test('an earpiece brought to rest on a steady voltage does not click when the sound begins', () => {
  const receiver = assemble(set, listener);
  const begun = (settled: boolean): number => {
    const ear = new EarInTime(receiver, { seed: 1, room: false, hearingLimit: false });
    if (settled) settleEar(ear, 0.01);
    const p = new Float64Array(4800);
    ear.process(new Float64Array(4800).fill(0.01), p);
    return p.reduce((m, v) => Math.max(m, Math.abs(v)), 0);
  };
  expect(begun(true)).toBeLessThan(1e-3 * begun(false));
});
