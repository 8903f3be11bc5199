import { describe, expect, test } from 'vitest';
import {
  type AudioSource,
  GivenError,
  type ModulatorOptions,
  modulator,
  music,
  type ProgrammeModulation,
  recordedAudio,
  speechNoise,
  toneAudio,
} from '#engine';
import { am, asGiven, mono, stereo } from './stations.ts';

const kinds: readonly (readonly [string, ProgrammeModulation, number, ModulatorOptions, () => AudioSource])[] = [
  ['stereo, ridden, music at 32 kHz', stereo, 1_500_000, { drive: { kind: 'ridden', level: 3 } }, () => recordedAudio(music(), 'repeat')],
  [
    'stereo, limiting, beside the middle',
    stereo,
    1_100_000,
    { drive: { kind: 'fixed', gain: 30 }, offset: -400_000 },
    () => speechNoise(2),
  ],
  ['mono, an odd rate', mono, 257_000, asGiven, () => ({ ...recordedAudio(music(), 'repeat'), rate: 44_057 })],
  ['AM', am, 96_000, asGiven, () => speechNoise(2)],
  ['AM beside the middle, fewer samples than the audio', am, 20_000, { ...asGiven, offset: 3000 }, () => speechNoise(2)],
];

describe('limit: blocks of any size give the same envelope to the bit', () => {
  for (const [name, modulation, rate, options, audio] of kinds)
    test(name, () => {
      const count = 40_000;
      const [re, im, a, b] = [0, 0, 0, 0].map(() => new Float64Array(count)) as [Float64Array, Float64Array, Float64Array, Float64Array];
      modulator(audio(), modulation, rate, options).next(re, im);
      const pieces = modulator(audio(), modulation, rate, options);
      for (let at = 0, size = 1; at < count; at += size, size = ((size * 13) % 2999) + 1)
        pieces.next(a.subarray(at, at + size), b.subarray(at, at + size));
      expect(a).toEqual(re);
      expect(b).toEqual(im);
      expect(re.some((x, n) => Math.abs(Math.hypot(x, im[n]!) - 1) > 1e-7)).toBe(modulation.kind === 'am');
    });
});

test('limit: a carrier beside the middle is that of the middle turned by the difference', () => {
  for (const modulation of [stereo, am]) {
    const [rate, offset, count] = [1_000_000, 290_000, 50_000];
    const [re, im, a, b] = [0, 0, 0, 0].map(() => new Float64Array(count)) as [Float64Array, Float64Array, Float64Array, Float64Array];
    const audio = (): AudioSource => toneAudio([{ frequency: 1000, amplitude: 0.7 }], 'left');
    modulator(audio(), modulation, rate, asGiven).next(re, im);
    modulator(audio(), modulation, rate, { ...asGiven, offset }).next(a, b);
    // only their difference in phase is told, so the first sample is set against the first
    const start = Math.atan2(b[0]!, a[0]!) - Math.atan2(im[0]!, re[0]!);
    for (let n = 0; n < count; n++) {
      const angle = start + (2 * Math.PI * ((offset * n) % rate)) / rate;
      expect(
        Math.hypot(
          a[n]! - (re[n]! * Math.cos(angle) - im[n]! * Math.sin(angle)),
          b[n]! - (re[n]! * Math.sin(angle) + im[n]! * Math.cos(angle)),
        ),
      ).toBeLessThan(3e-8);
    }
  }
});

test('limit: nothing is allocated while it runs', () => {
  for (const [, modulation, rate, options] of kinds.slice(0, 4)) {
    const station = modulator(toneAudio([]), modulation, rate, options);
    const [re, im] = [new Float64Array(4096), new Float64Array(4096)];
    for (let k = 0; k < 300; k++) station.next(re, im);
    const before = process.memoryUsage();
    for (let k = 0; k < 1000; k++) station.next(re, im);
    const after = process.memoryUsage();
    expect(after.arrayBuffers - before.arrayBuffers).toBeLessThan(1e5);
    // four million samples: one number kept in the heap for each block of 1 ms would be a hundred times this
    expect(after.heapUsed - before.heapUsed).toBeLessThan(2e6);
  }
});

describe('what cannot be sent is refused with what, why and how to mend it', () => {
  const quiet = toneAudio([]);
  test.each<[string, string, () => unknown]>([
    ['programme.rate', '200000 Hz', () => modulator(quiet, stereo, 200_000, asGiven)],
    ['programme.rate', '1500500 Hz', () => modulator(quiet, stereo, 1_500_500, asGiven)],
    ['programme.rate', 'NaN Hz', () => modulator(quiet, am, Number.NaN, asGiven)],
    ['programme.rate', '30000000 Hz', () => modulator(quiet, am, 3e7, asGiven)],
    ['programme.offset', '700000 Hz', () => modulator(quiet, stereo, 1_500_000, { ...asGiven, offset: 700_000 })],
    ['programme.offset', 'NaN Hz', () => modulator(quiet, am, 48_000, { ...asGiven, offset: Number.NaN })],
    ['programme.audio.rate', '3000 Hz', () => modulator({ ...quiet, rate: 3000 }, stereo, 1_500_000, asGiven)],
    ['programme.audio.rate', '44100.5 Hz', () => modulator({ ...quiet, rate: 44_100.5 }, stereo, 1_500_000, asGiven)],
    ['programme.pilotShare', '0.3', () => modulator(quiet, stereo, 1_500_000, { ...asGiven, pilotShare: 0.3 })],
    ['programme.drive.gain', '0', () => modulator(quiet, stereo, 1_500_000, { drive: { kind: 'fixed', gain: 0 } })],
    [
      'programme.drive.gain',
      'Infinity',
      () => modulator(quiet, stereo, 1_500_000, { drive: { kind: 'fixed', gain: Number.POSITIVE_INFINITY } }),
    ],
    ['programme.level', '13 dB', () => modulator(quiet, stereo, 1_500_000, { drive: { kind: 'ridden', level: 13 } })],
    ['programme.tone', '0 Hz', () => toneAudio([{ frequency: 0, amplitude: 1 }])],
    ['programme.tone', '440.5 Hz', () => toneAudio([{ frequency: 440.5, amplitude: 1 }])],
  ])('%s: %s', (path, given, make) => {
    let error: unknown = null;
    try {
      make();
    } catch (e) {
      error = e;
    }
    expect(error).toBeInstanceOf(GivenError);
    expect(error).toMatchObject({ path, given });
  });
});
