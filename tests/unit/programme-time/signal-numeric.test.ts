import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  Doubler,
  fourierTransform,
  type Kernel,
  lowPassKernel,
  MersenneTwister,
  PhasorRun,
  Resampler,
  runPhasor,
  type SampleSource,
  SixTapInterpolator,
} from '#engine';

// numpy and scipy: tests/reference/signal/make.py
const values = JSON.parse(readFileSync(new URL('../../reference/signal/values.json', import.meta.url), 'utf8')) as {
  fft: { size: number; re: number[]; im: number[]; bins: number[]; fftRe: number[]; fftIm: number[] }[];
  lowPass: { rate: number; pass: number; stop: number; attenuation: number; taps: number[]; ripple: number; greatestInStopBand: number }[];
  resample: { from: number; to: number; pass: number; stop: number; attenuation: number; input: number[]; output: number[] }[];
  sixTaps: { share: number; interval: number; places: number; worst: number; rms: number }[];
  twister: { seed: number; first: number[]; last: number[] }[];
};

/** Samples once given, then silence; the second channel the first turned over. */
const once = (x: ArrayLike<number>): SampleSource => {
  let at = 0;
  return {
    next(first, second) {
      for (let n = 0; n < first.length; n++, at++) {
        first[n] = at < x.length ? x[at]! : 0;
        second[n] = -first[n]!;
      }
    },
  };
};

test('rival: transforms of any size against numpy, forward and back, to 1e-14 of the greatest', () => {
  for (const { size, re, im, bins, fftRe, fftIm } of values.fft) {
    const a = Float64Array.from(re);
    const b = Float64Array.from(im);
    const { forward, inverse } = fourierTransform(size);
    forward(a, b);
    const top = Math.max(...a.map((x, k) => Math.hypot(x, b[k]!)));
    bins.forEach((k, i) => {
      expect(Math.abs(a[k]! - fftRe[i]!) / top, `${size}, bin ${k}`).toBeLessThan(1e-14);
      expect(Math.abs(b[k]! - fftIm[i]!) / top, `${size}, bin ${k}`).toBeLessThan(1e-14);
    });
    inverse(a, b);
    re.forEach((x, k) => void expect(Math.abs(a[k]! - x)).toBeLessThan(2e-14));
    im.forEach((x, k) => void expect(Math.abs(b[k]! - x)).toBeLessThan(2e-14));
  }
});

test('rival: the low-pass kernel sampled is the Kaiser-windowed filter of scipy, to 1e-13 of its middle; stop band and ripple as asked', () => {
  for (const { rate, pass, stop, attenuation, taps, ripple, greatestInStopBand } of values.lowPass) {
    const kernel = lowPassKernel(pass, stop, attenuation);
    const half = (taps.length - 1) / 2;
    expect(kernel.before * rate).toBeCloseTo(half, 9);
    // the outermost taps stand on the edge, where rounding decides
    taps
      .slice(1, -1)
      .forEach(
        (h, i) => void expect(Math.abs(kernel.at((i + 1 - half) / rate) / rate - h) / taps[half]!, `tap ${i + 1}`).toBeLessThan(1e-13),
      );
    // the order estimate is good to 2 dB
    expect(20 * Math.log10(greatestInStopBand)).toBeLessThan(-attenuation + 2);
    expect(20 * Math.log10(ripple)).toBeLessThan(-attenuation + 2);
  }
});
test('limit: the slope of the kernel is its derivative', () => {
  const kernel = lowPassKernel(15e3, 19e3, 85);
  const d = 1e-9;
  for (let k = -60; k <= 60; k++) {
    const t = (k / 61) * kernel.after;
    expect((kernel.at(t + d) - kernel.at(t - d)) / (2 * d) / 1e9, `${t} s`).toBeCloseTo(kernel.slope(t) / 1e9, 5);
  }
});

test('rival: other rates against upfirdn of scipy with the same filter, to 1e-12', () => {
  for (const { from, to, pass, stop, attenuation, input, output } of values.resample) {
    const resampler = new Resampler(once(input), from, to, lowPassKernel(pass, stop, attenuation), 2);
    const first = new Float64Array(output.length);
    const second = new Float64Array(output.length);
    resampler.next(first, second);
    output.forEach((y, k) => void expect(Math.abs(first[k]! - y), `${from} to ${to}, sample ${k}`).toBeLessThan(1e-12));
    expect(second).toEqual(first.map((y) => -y));
  }
});

test('rival: doubling is the same as the half-way low-pass among all rate changes, to 1e-12, and in blocks of any size to the bit', () => {
  const noise = new MersenneTwister(5);
  const x = Float64Array.from({ length: 1500 }, () => 2 * noise.uniform() - 1);
  for (const channels of [1, 2] as const) {
    const [a, b, c, d] = [0, 0, 0, 0].map(() => new Float64Array(2500)) as [Float64Array, Float64Array, Float64Array, Float64Array];
    new Doubler(once(x), 48000, 15e3, 90, channels).next(a, b);
    new Resampler(once(x), 48000, 96000, lowPassKernel(15e3, 33e3, 90), channels).next(c, d);
    c.forEach((y, k) => void expect(Math.abs(a[k]! - y)).toBeLessThan(1e-12));
    d.forEach((y, k) => void expect(Math.abs(b[k]! - y)).toBeLessThan(1e-12));
    const pieces = new Doubler(once(x), 48000, 15e3, 90, channels);
    for (let at = 0, size = 1; at < 2500; at += size, size = ((size * 7) % 97) + 1)
      pieces.next(c.subarray(at, at + size), d.subarray(at, at + size));
    expect(c).toEqual(a);
    expect(d).toEqual(b);
  }
});
test('limit: a sine of a passed frequency comes out as the same sine, whatever the rates', () => {
  for (const [from, to] of [
    [8000, 48000],
    [11025, 48000],
    [22050, 48000],
    [44100, 48000],
    [44056, 48000],
    [47999, 48000],
    [96000, 48000],
    [192000, 48000],
    [352799, 48000],
  ] as const) {
    const pass = Math.min(15e3, 0.46 * from);
    const kernel = lowPassKernel(pass, Math.min(19e3, from - pass), 85);
    const frequency = 0.95 * pass;
    const sine = Float64Array.from({ length: from / 4 }, (_, n) => Math.sin((2 * Math.PI * frequency * n) / from));
    const out = new Float64Array(0.2 * to);
    new Resampler(once(sine), from, to, kernel, 1).next(out, out.slice());
    let worst = 0;
    for (let m = 0.1 * to; m < out.length; m++) worst = Math.max(worst, Math.abs(out[m]! - Math.sin((2 * Math.PI * frequency * m) / to)));
    // ripple of the pass band and images, both 5.6e-5
    expect(worst, `${from} to ${to}`).toBeLessThan(1.5e-4);
  }
});
test('limit: rates without a common factor lose nothing by the interpolated table: within 2e-5 of sums over the kernel itself', () => {
  const from = 44057;
  const kernel = lowPassKernel(15e3, 19e3, 85);
  const noise = new MersenneTwister(3);
  const x = Float64Array.from({ length: 400 }, () => 2 * noise.uniform() - 1);
  const out = new Float64Array(300);
  new Resampler(once(x), from, 48000, kernel, 1).next(out, out.slice());
  out.forEach((y, m) => {
    const sum = x.reduce((s, v, n) => s + (v * kernel.at(m / 48000 - n / from)) / from, 0);
    expect(Math.abs(y - sum)).toBeLessThan(2e-5);
  });
});

test('rival: six taps miss no more of the band than the best fit of numpy, worst and in the mean square', () => {
  for (const { share, interval, places, worst, rms } of values.sixTaps) {
    const from = 1000;
    const impulse = new Float64Array(40);
    impulse[20] = 1;
    const out = new Float64Array(40 * places);
    new SixTapInterpolator(once(impulse), from, from * places, (share / 2) * from, interval / from).next(out);
    let greatest = 0;
    let square = 0;
    for (let p = 0; p < places; p++) {
      let sum = 0;
      for (let i = 0; i <= 2000; i++) {
        const f = share * (i / 2000 - 0.5);
        let [re, im] = [0, 0];
        // the output at p/places after sample n has the impulse at k = 20 - n
        for (let n = 17; n <= 22; n++) {
          const angle = 2 * Math.PI * f * (20 - n);
          re += out[n * places + p]! * Math.cos(angle);
          im += out[n * places + p]! * Math.sin(angle);
        }
        const droop = f * interval === 0 ? 1 : Math.sin(Math.PI * f * interval) / (Math.PI * f * interval);
        const angle = (2 * Math.PI * f * p) / places;
        const miss = (re - droop * Math.cos(angle)) ** 2 + (im - droop * Math.sin(angle)) ** 2;
        greatest = Math.max(greatest, Math.sqrt(miss));
        sum += miss / 2001;
      }
      square = Math.max(square, sum);
    }
    expect(greatest / worst, `${share}`).toBeLessThan(1.02);
    expect(Math.sqrt(square) / rms, `${share}`).toBeLessThan(1.02);
  }
  // what the interpolation of a stereo multiplex and of mono is said to miss
  expect(20 * Math.log10(values.sixTaps[0]!.worst)).toBeLessThan(-76);
  expect(20 * Math.log10(values.sixTaps[0]!.rms)).toBeLessThan(-87);
  expect(20 * Math.log10(values.sixTaps[2]!.worst)).toBeLessThan(-93);
});

test('limit: blocks of any size give the same samples to the bit', () => {
  const noise = new MersenneTwister(7);
  const x = Float64Array.from({ length: 5000 }, () => 2 * noise.uniform() - 1);
  const kernel = (from: number): Kernel => lowPassKernel(0.2 * from, 0.8 * from, 70);
  for (const [from, to] of [
    [48000, 44100],
    [44057, 48000],
    [8000, 192000],
    [192000, 12000],
  ] as const) {
    const whole = new Float64Array(2000);
    const pieces = new Float64Array(2000);
    new Resampler(once(x), from, to, kernel(from), 1).next(whole, whole.slice());
    const r = new Resampler(once(x), from, to, kernel(from), 1);
    const wholeSix = new Float64Array(2000);
    const piecesSix = new Float64Array(2000);
    new SixTapInterpolator(once(x), from, to, 0.1 * from, 0).next(wholeSix);
    const six = new SixTapInterpolator(once(x), from, to, 0.1 * from, 0);
    for (let at = 0, size = 0; at < 2000; at += size, size = ((size * 7) % 97) + 1) {
      r.next(pieces.subarray(at, at + size), new Float64Array(size));
      six.next(piecesSix.subarray(at, at + size));
    }
    expect(pieces, `${from} to ${to}`).toEqual(whole);
    expect(piecesSix, `${from} to ${to}`).toEqual(wholeSix);
  }
});

test('rival: random numbers of numpy, also past the first twist', () => {
  for (const { seed, first, last } of values.twister) {
    const twister = new MersenneTwister(seed);
    const all = Array.from({ length: 2000 }, () => twister.uniform());
    expect(all.slice(0, 5)).toEqual(first);
    expect(all.slice(-5)).toEqual(last);
  }
});

test('limit: the phasor is the exponential to 5e-9, and its phase the sum of steps in whole numbers over two million samples', () => {
  const count = 2000;
  const rate = 1.5e6;
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  const noise = new MersenneTwister(11);
  // steps as whole multiples of 2^-50 turns add up exactly in 64-bit integers
  const UNIT = 2n ** 50n;
  let exact = 0n;
  let phase = 0;
  let worst = 0;
  for (let block = 0; block < 1000; block++) {
    const steps = Float64Array.from({ length: count }, () => Math.round((noise.uniform() - 0.47) * 0.1 * 2 ** 50));
    im.set(steps.map((s) => (s / 2 ** 50) * rate - 90e3));
    phase = runPhasor(phase, re, im, 1 / rate, 90e3);
    for (const s of steps) exact += BigInt(s);
    const turns = Number(exact % UNIT) / 2 ** 50;
    expect(Math.abs(phase - turns - Math.round(phase - turns))).toBeLessThan(1e-11);
    worst = Math.max(
      worst,
      Math.abs(re[count - 1]! - Math.cos(2 * Math.PI * turns)),
      Math.abs(im[count - 1]! - Math.sin(2 * Math.PI * turns)),
    );
  }
  expect(worst).toBeLessThan(5e-9);
});

describe('a phasor run along a frequency known at a lower rate', () => {
  const from = 192_000;
  /** frequency D sin(2 pi f t), without end */
  const swinging = (deviation: number, tone: number): SampleSource => {
    let n = 0;
    return {
      next(first) {
        for (let k = 0; k < first.length; k++, n++) first[k] = deviation * Math.sin((2 * Math.PI * ((n * tone) % from)) / from);
      },
    };
  };
  test('limit: the phase is the integral of D sin(2 pi f t) and of the offset, -D/(2 pi f) cos + f0 t, in closed form', () => {
    for (const [to, tone, offset] of [
      [2_976_000, 15_000, 1.2e6],
      [2_976_000, 1000, -0.8e6],
      [601_000, 15_000, 200e3],
      [20_000_000, 15_000, 9.8e6],
    ] as const) {
      const deviation = 75e3;
      const count = 20_000;
      const re = new Float64Array(count);
      const im = new Float64Array(count);
      new PhasorRun(swinging(deviation, tone), from, to, 19e3, offset).add(re, im, 0, count, 0.7);
      // the means of the first sample are over the interval about time zero: the phasor stands half an interval later; silence before is left behind
      const phase = (n: number): number => {
        const t = (n + 0.5) / to;
        return ((offset * t) % 1) - (deviation / (2 * Math.PI * tone)) * Math.cos(2 * Math.PI * tone * t);
      };
      const start = 2000;
      const turn = Math.atan2(im[start]!, re[start]!) - 2 * Math.PI * phase(start);
      for (let n = start; n < count; n++) {
        const angle = 2 * Math.PI * phase(n) + turn;
        const off = Math.hypot(re[n]! - 0.7 * Math.cos(angle), im[n]! - 0.7 * Math.sin(angle)) / 0.7;
        // -94 dB of the phase's swing of D/f, and that of the point it is set against
        expect(off, `${to}, ${tone}, ${n}`).toBeLessThan((2 * 2e-5 * deviation) / tone + 2e-8);
      }
    }
  });
  test('limit: blocks of any size give the same to the bit', () => {
    const count = 9000;
    const [re, im, a, b] = [0, 0, 0, 0].map(() => new Float64Array(count)) as [Float64Array, Float64Array, Float64Array, Float64Array];
    new PhasorRun(swinging(5e4, 7000), from, 1_999_000, 19e3, -5e5).add(re, im, 0, count, 0.3);
    const pieces = new PhasorRun(swinging(5e4, 7000), from, 1_999_000, 19e3, -5e5);
    for (let at = 0, size = 1; at < count; at += size, size = ((size * 7) % 97) + 1) pieces.add(a, b, at, Math.min(size, count - at), 0.3);
    expect(a).toEqual(re);
    expect(b).toEqual(im);
  });
});
