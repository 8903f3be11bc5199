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
