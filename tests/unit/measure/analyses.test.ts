import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  aWeighting,
  bandPower,
  C,
  coherentDoubt,
  coherentSplit,
  differenceFrequency,
  filtered,
  findTones,
  GivenError,
  HANN_NOISE_BANDWIDTH,
  MersenneTwister,
  partOf,
  powerSpectrum,
  responseTones,
  rmsOf,
  SPEECH_BANDS,
  SPEECH_LEVELS,
  sinad,
  speechProgramme,
  thirdOctave,
  thirdOctavePowers,
  toneWithHarmonics,
  weighted,
} from '#engine';
import { decibels, noise, RATE, sampled } from './noise.ts';

/** Source: tests/reference/measure/make.py (numpy, scipy) and its output. */
const reference = JSON.parse(readFileSync(new URL('../../reference/measure/values.json', import.meta.url), 'utf8'));
const TURN = 2 * Math.PI;

describe('tones', () => {
  test('rival: least squares by numpy, frequencies of no whole number of periods and two of them 6 Hz apart', () => {
    const r = reference.tones;
    const x = noise(1, 6000).map((u, n) => {
      let sum = 0.3 + 0.1 * u;
      r.frequencies.forEach((f: number, k: number) => {
        sum += r.amplitudes[k] * Math.cos((TURN * f * n) / RATE + r.phases[k]);
      });
      return sum;
    });
    const found = findTones(x, RATE, r.frequencies);
    expect(found.mean).toBeCloseTo(r.mean, 9);
    found.tones.forEach((t, k) => {
      expect(t.re).toBeCloseTo(r.re[k], 9);
      expect(t.im).toBeCloseTo(r.im[k], 9);
    });
    expect(Math.sqrt(found.rest.reduce((s, v) => s + v * v, 0) / 6000)).toBeCloseTo(r.restRms, 9);
  });
  test('tones that cannot be told apart are refused', () => {
    expect(() => findTones(new Float64Array(4), RATE, [100, 200])).toThrow(GivenError);
    expect(() => findTones(sampled(0.1, Math.sin), RATE, [1000, 1000])).toThrow(GivenError);
  });
  test('limit: silence has no tones, no distortion and no SINAD, and nothing is NaN', () => {
    const x = new Float64Array(24_000);
    expect(toneWithHarmonics(x, RATE, 1000, 15_000).thd).toBe(0);
    expect(sinad(x, RATE, 1000, 200, 15_000)).toEqual({ ratio: 0, signal: 0, rest: 0 });
    expect(differenceFrequency(x, RATE, 1800, 2200).second).toBe(0);
  });
});

describe('distortion of known polynomials', () => {
  const [a, b] = [0.03, 0.02];
  const through = (x: number): number => x + a * x * x + b * x * x * x;
  test('closed form: x + a x^2 + b x^3 of a sine: V1 = A + 3 b A^3/4, V2 = a A^2/2, V3 = b A^3/4 (power-reduction formulas, textbook)', () => {
    const A = 0.8;
    const t = toneWithHarmonics(
      sampled(0.5, (s) => through(A * Math.sin(TURN * 1000 * s))),
      RATE,
      1000,
      15_000,
    );
    const first = A + (3 / 4) * b * A ** 3;
    expect(t.rms[1]! * Math.SQRT2).toBeCloseTo(first, 12);
    expect(t.rms[2]! * Math.SQRT2).toBeCloseTo((a * A * A) / 2, 12);
    expect(t.rms[3]! * Math.SQRT2).toBeCloseTo((b * A ** 3) / 4, 12);
    expect(t.rms[0]).toBeCloseTo((a * A * A) / 2, 12);
    expect(t.thd).toBeCloseTo(Math.hypot((a * A * A) / 2, (b * A ** 3) / 4) / first, 12);
    expect(t.rms.length).toBe(16);
    expect(t.top).toBe(15_000);
  });
  test('closed form: two tones of A each: f2 - f1 of a A^2, 2 f1 - f2 and 2 f2 - f1 of 3 b A^3/4, over twice A + 9 b A^3/4', () => {
    const A = 0.4;
    const d = differenceFrequency(
      sampled(0.5, (s) => through(A * (Math.sin(TURN * 1800 * s) + Math.sin(TURN * 2200 * s)))),
      RATE,
      1800,
      2200,
    );
    const twice = 2 * (A + (9 / 4) * b * A ** 3);
    expect(d.reference * Math.SQRT2).toBeCloseTo(twice, 12);
    expect(d.second).toBeCloseTo((a * A * A) / twice, 12);
    expect(d.third).toBeCloseTo(((3 / 2) * b * A ** 3) / twice, 12);
  });
  test('closed form: SINAD of a tone, a harmonic and noise of known power in the band', () => {
    // uniform noise of width 1 has 1/12, evenly up to 24 kHz
    const n = noise(7, 5 * RATE);
    const x = sampled(5, (s) => Math.sin(TURN * 1000 * s) + 0.05 * Math.sin(TURN * 3000 * s) + 0.5).map((v, k) => v + 0.02 * n[k]!);
    const rest = 0.05 ** 2 / 2 + ((0.02 ** 2 / 12) * (15_000 - 200)) / 24_000;
    const found = sinad(x, RATE, 1000, 200, 15_000);
    expect(found.signal).toBeCloseTo(Math.SQRT1_2, 4);
    expect(decibels(found.rest, Math.sqrt(rest))).toBeCloseTo(0, 1);
    expect(found.ratio).toBeCloseTo(10 * Math.log10((0.5 + rest) / rest), 1);
    // a pilot beyond the band does not count
    const pilot = x.map((v, k) => v + 0.3 * Math.sin((TURN * 19_000 * k) / RATE));
    expect(sinad(pilot, RATE, 1000, 200, 15_000).ratio).toBeCloseTo(found.ratio, 3);
  });
});

describe('spectra', () => {
  test('rival: scipy.signal.welch, bin by bin, and its noise bandwidth', () => {
    const r = reference.spectrum;
    const s = powerSpectrum(noise(2, 24_000), RATE, r.size);
    r.bins.forEach((k: number, i: number) => {
      expect(s.power[k]! / r.power[i]).toBeCloseTo(1, 9);
    });
    expect(s.power.reduce((a, p) => a + p, 0) / r.whole).toBeCloseTo(1, 9);
    expect(s.noiseBandwidth).toBeCloseTo(r.noiseBandwidth, 12);
    expect(HANN_NOISE_BANDWIDTH).toBe(s.noiseBandwidth);
  });
  test('closed form: a sine on a bin: its power in all bins together, and 1/1.5 of it in the highest', () => {
    const s = powerSpectrum(
      sampled(1, (t) => Math.sin((TURN * 1000 * 48 * t) / 48)),
      RATE,
      480,
    );
    expect(bandPower(s, 500, 1500)).toBeCloseTo(0.5, 9);
    expect(s.power[10]!).toBeCloseTo(0.5 / 1.5, 9);
  });
  test('rival: third octaves of white noise by numpy, whole transform, exact edges, 0.25 dB', () => {
    const s = powerSpectrum(noise(2, 24_000), RATE, 4096);
    for (const b of reference.bands) {
      const band = thirdOctave(b.nominal);
      expect(band.low / b.low).toBeCloseTo(1, 12);
      expect(band.high / b.high).toBeCloseTo(1, 12);
      const power = thirdOctavePowers(s, [band])[0]!;
      // half a second of noise in 37 Hz has 18 lines: windows that count its middle more may differ by a decibel there
      expect(Math.abs(5 * Math.log10(power / b.power) * 2)).toBeLessThan(b.nominal === 160 ? 1.2 : 0.25);
    }
  });
  test('published: mid-band and edges of IEC 61260-1: 1 kHz from 891.25 to 1122.02 Hz, 160 Hz is 158.49 Hz', () => {
    expect(thirdOctave(1000).low).toBeCloseTo(891.25, 2);
    expect(thirdOctave(1000).high).toBeCloseTo(1122.02, 2);
    expect(thirdOctave(160).middle).toBeCloseTo(158.49, 2);
  });
  test('identity: bands side by side hold what the whole holds', () => {
    const s = powerSpectrum(noise(5, 24_000), RATE, 4096);
    const parts = thirdOctavePowers(s).reduce((a, p) => a + p, 0);
    expect(parts).toBeCloseTo(bandPower(s, thirdOctave(160).low, thirdOctave(8000).high), 12);
  });
  test('identity: a weighted sine has its weight', () => {
    const s = weighted(
      powerSpectrum(
        sampled(1, (t) => Math.sin(TURN * 125 * t)),
        RATE,
        48_000 / 5,
      ),
      aWeighting,
    );
    // -16.1 dB at 125 Hz: IEC 61672-1, table 3
    expect(10 * Math.log10(bandPower(s, 100, 150) / 0.5)).toBeCloseTo(-16.1, 0);
  });
});

describe('what follows a programme, and what does not', () => {
  test('rival: scipy.signal.csd, bin by bin, before the rest is given what the fit took', () => {
    const r = reference.coherence;
    const both = noise(2, 48_000);
    const [a, b] = [both.subarray(0, 24_000), both.subarray(24_000)];
    const y = a.map((v, n) => 0.5 * v + 0.3 * (a[n - 1] ?? 0) - 0.1 * (a[n - 2] ?? 0) + 0.2 * b[n]!);
    const s = coherentSplit(y, a, RATE, r.size);
    expect(s.independent / r.stretches).toBeCloseTo(18 / 19, 9);
    r.bins.forEach((k: number, i: number) => {
      expect(s.whole[k]! / r.whole[i]).toBeCloseTo(1, 9);
      const left = ((r.whole[i] - r.followed[i]) * s.independent) / (s.independent - 1);
      expect(s.rest[k]! / left).toBeCloseTo(1, 9);
      expect(s.coherent[k]!).toBeCloseTo(r.whole[i] - left, 12);
    });
    const all = (part: 'coherent' | 'rest'): number => bandPower(partOf(s, part), 0, 24_000);
    expect(10 * Math.log10(all('coherent') / r.truth.coherent)).toBeCloseTo(0, 1);
    expect(10 * Math.log10(all('rest') / r.truth.rest)).toBeCloseTo(0, 1);
  });
  test('limit: a sound that has nothing of the programme has a coherent part of zero within its doubt', () => {
    const chance = (seed: number): Float64Array => {
      const twister = new MersenneTwister(seed);
      return Float64Array.from({ length: 2 * RATE }, () => twister.uniform() - 0.5);
    };
    let beyond = 0;
    for (let seed = 1; seed <= 20; seed++) {
      const s = coherentSplit(chance(seed), chance(seed + 100), RATE, 4096);
      const z = bandPower(partOf(s, 'coherent'), 891, 1122) / coherentDoubt(s, 891, 1122);
      expect(Math.abs(z)).toBeLessThan(4);
      if (Math.abs(z) > 1) beyond++;
    }
    // a third lie beyond one standard deviation, give or take
    expect(beyond).toBeGreaterThan(1);
    expect(beyond).toBeLessThan(14);
  });
  test('rival: a filter by its response, numpy.fft', () => {
    const r = reference.filtered;
    const y = filtered(noise(2, 24_000), RATE, (f) => C.inv({ re: 1, im: f / 21 }));
    r.samples.forEach((n: number, i: number) => {
      expect(y[n]!).toBeCloseTo(r.values[i], 9);
    });
  });
  test('a linear set that integrates leaves a rest below -55 dB when compared with its shape, and above -45 dB when not', () => {
    const x = speechProgramme(MONO, 0, 2, 4).samples;
    const y = filtered(x, RATE, (f) => C.inv({ re: 1, im: f / 21 }));
    const near = filtered(x, RATE, (f) => C.inv({ re: 1, im: f / 25 }));
    const rest = (shape: Float64Array): number => {
      const s = coherentSplit(y.subarray(24_000), shape.subarray(24_000), RATE, 4096);
      return 10 * Math.log10(bandPower(partOf(s, 'rest'), 141, 8900) / bandPower(partOf(s, 'coherent'), 141, 8900));
    };
    expect(rest(near)).toBeLessThan(-55);
    expect(rest(x)).toBeGreaterThan(-45);
  });
});

const MONO = { kind: 'fm', deviation: 75e3, preEmphasis: 50e-6, stereo: false } as const;

describe('test signals', () => {
  for (const modulation of [MONO, { kind: 'am', depth: 0.8 } as const])
    test(`tones for a response in ${modulation.kind}: odd, near the middles, no product of second or third order on any`, () => {
      const tones = responseTones(modulation, 0);
      const f = tones.map((t) => t.frequency);
      const on = new Set(f);
      expect(on.size).toBe(f.length);
      expect(f.at(-1)!).toBeLessThan(modulation.kind === 'am' ? 4500 : 15_000);
      for (const t of tones) {
        expect(t.frequency % 2).toBe(1);
        expect(t.frequency).toBeGreaterThan(thirdOctave(t.nominal).low);
        expect(t.frequency).toBeLessThan(thirdOctave(t.nominal).high);
      }
      for (const a of f)
        for (const b of f) {
          expect(on.has(a + b) || on.has(Math.abs(a - b))).toBe(false);
          for (const c of f) {
            expect(on.has(a + b + c)).toBe(false);
            if (c !== a && c !== b) expect(on.has(Math.abs(a + b - c)), `${a} + ${b} - ${c}`).toBe(false);
          }
        }
    });
  test('published: the noise has the spectrum of speech of Byrne et al. 1994 in its bands, 1 dB over ten seconds', () => {
    const s = powerSpectrum(speechProgramme(MONO, 0, 10, 2).samples, RATE, 8192);
    const at = (nominal: number): number => 10 * Math.log10(thirdOctavePowers(s, [thirdOctave(nominal)])[0]!);
    for (const nominal of [250, 1000, 4000]) {
      const table = (f: number): number => SPEECH_LEVELS[SPEECH_BANDS.indexOf(f)]!;
      expect(Math.abs(at(nominal) - at(500) - (table(nominal) - table(500)))).toBeLessThan(1);
    }
  });
  test('rms of a tone is its peak over the root of two', () => {
    expect(rmsOf({ re: 3, im: 4 })).toBeCloseTo(5 / Math.SQRT2, 12);
  });
});
