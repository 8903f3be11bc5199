import { expect, test } from 'vitest';
import {
  CALIBRATION_LEVEL,
  GivenError,
  hearingCautionDue,
  quantisationFloor,
  REFERENCE_SOUND_PRESSURE,
  ReferenceTone,
  soundFigures,
  soundScale,
  toSamples,
} from '#engine';

const rms = (x: ArrayLike<number>): number => {
  let sum = 0;
  for (let n = 0; n < x.length; n++) sum += x[n]! ** 2;
  return Math.sqrt(sum / x.length);
};
const level = (pressure: ArrayLike<number>): number => 20 * Math.log10(rms(pressure) / REFERENCE_SOUND_PRESSURE);
const samples = (pressure: Float64Array, options: Parameters<typeof soundScale>[0]): Float64Array => {
  const out = new Float64Array(pressure.length);
  toSamples(soundScale(options), pressure, out);
  return out;
};

test('published: 94 dB SPL is one pascal (IEC 60942), and a sine of the level of full scale peaks at 1', () => {
  // 20 log10(1/20e-6) = 93.979 dB
  const exact = 20 * Math.log10(1 / 20e-6);
  expect(soundScale({ fullScale: exact }).samplesPerPascal).toBeCloseTo(1 / Math.SQRT2, 12);
  for (const fullScale of [80, 85]) {
    const tone = new Float64Array(480);
    new ReferenceTone(fullScale).next(tone);
    expect(Math.max(...samples(tone, { fullScale }))).toBeCloseTo(1, 12);
    expect(Math.max(...samples(tone, { fullScale: fullScale + 20, makeUpGain: 14 }))).toBeCloseTo(10 ** (-6 / 20), 12);
  }
});

test('limit: the tone has its level, its frequency, no seam, and no drift', () => {
  const tone = new ReferenceTone();
  const x = new Float64Array(48_000);
  for (let n = 0, size = 1; n < x.length; n += size, size = (size * 7 + 1) % 500) tone.next(x.subarray(n, Math.min(n + size, x.length)));
  expect(level(x)).toBeCloseTo(CALIBRATION_LEVEL, 9);
  const peak = Math.SQRT2 * REFERENCE_SOUND_PRESSURE * 10 ** (CALIBRATION_LEVEL / 20);
  for (let n = 0; n < x.length; n += 1013) expect(x[n]! / peak).toBeCloseTo(Math.sin((2 * Math.PI * n) / 48), 9);
});

test('rival: the noise of whole numbers, measured on a sine of odd frequency rounded to them', () => {
  for (const bits of [16, 24])
    for (const makeUpGain of [0, 12]) {
      const scale = soundScale({ fullScale: 100, makeUpGain });
      const step = 2 ** (1 - bits);
      const error = Float64Array.from({ length: 200_000 }, (_, n) => {
        const x = 0.7 * Math.sin(0.1234567 * n);
        return (step * Math.round(x / step) - x) / scale.samplesPerPascal;
      });
      expect(Math.abs(level(error) - quantisationFloor(scale, bits)), `${bits} bits`).toBeLessThan(0.1);
    }
});

test('published: full scale over the noise of n bits is 6.02 n + 1.76 dB (Bennett 1948)', () => {
  for (const bits of [16, 24]) expect(100 - quantisationFloor(soundScale({ fullScale: 100 }), bits)).toBeCloseTo(6.0206 * bits + 1.7609, 3);
});

test('a caution is due where the make-up gain takes the sound past 85 dB(A), and not before', () => {
  expect(hearingCautionDue(soundScale(), 70)).toBe(false);
  expect(hearingCautionDue(soundScale({ makeUpGain: 14 }), 70)).toBe(false);
  expect(hearingCautionDue(soundScale({ makeUpGain: 16 }), 70)).toBe(true);
  expect(hearingCautionDue(soundScale({ makeUpGain: -10 }), 90)).toBe(false);
});

test('figures: every one has its working, and silence has no level', () => {
  const figures = soundFigures(soundScale({ fullScale: 94, makeUpGain: 20 }), '24-bit', null);
  const value = (name: string): number | null => figures.find((f) => f.name === name)!.value;
  expect(value('sound.fullScale')).toBe(74);
  expect(value('sound.makeUpGain')).toBe(20);
  expect(value('sound.floor')).toBeCloseTo(74 - 146.26, 1);
  expect(value('sound.playedLevel')).toBeNull();
  for (const f of figures) expect(f.working.source.length, f.name).toBeGreaterThan(3);
});

test('what no file can stand for is refused', () => {
  for (const options of [{ fullScale: Number.NaN }, { fullScale: 300 }, { makeUpGain: 100 }, { makeUpGain: Number.NaN }])
    expect(() => soundScale(options)).toThrow(GivenError);
  for (const tone of [100, 0, Number.NaN]) expect(() => new ReferenceTone(tone)).toThrow(GivenError);
});
