import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import {
  type AudioSource,
  fourierTransform,
  multitone,
  music,
  recordedAudio,
  SPEECH_BANDS,
  SPEECH_LEVELS,
  speechNoise,
  toneAudio,
  twoTones,
} from '#engine';
import { bytesSource, openWav, wavAudio } from '#wav';
import { soxSamples } from '../wav/sox.ts';
import { dB } from './stations.ts';

const draw = (audio: AudioSource, count: number): { readonly left: Float64Array; readonly right: Float64Array } => {
  const [left, right] = [new Float64Array(count), new Float64Array(count)];
  audio.next(left, right);
  return { left, right };
};
const rms = (x: ArrayLike<number>): number => Math.sqrt(Array.from(x).reduce((s, v) => s + v * v, 0) / x.length);
const sum = (x: Float32Array | Float64Array): number => {
  let total = 0;
  for (const v of x) total += v;
  return total;
};
const greatest = (x: Float32Array | Float64Array): number => {
  let most = 0;
  for (const v of x) most = Math.max(most, Math.abs(v));
  return most;
};

test('published: third-octave levels of speech noise are those of Byrne et al. 1994, JASA 96, 2108, table II, within 0.01 dB', () => {
  const size = 2 ** 19;
  const { left, right } = draw(speechNoise(5), size);
  expect(right).toEqual(left);
  const [re, im] = [left.slice(), new Float64Array(size)];
  fourierTransform(size).forward(re, im);
  const total = 10 * Math.log10(SPEECH_LEVELS.reduce((s, l) => s + 10 ** (l / 10), 0));
  const level = rms(left);
  SPEECH_BANDS.forEach((f, b) => {
    const middle = 10 ** (Math.round(10 * Math.log10(f)) / 10);
    let power = 0;
    for (let k = 1; k < size / 2; k++) {
      const at = (k * 48_000) / size;
      if (at >= middle / 10 ** 0.05 && at < middle * 10 ** 0.05) power += 2 * ((re[k]! / size) ** 2 + (im[k]! / size) ** 2);
    }
    expect(Math.abs(10 * Math.log10(power / level ** 2) - (SPEECH_LEVELS[b]! - total)), `${f} Hz`).toBeLessThan(0.01);
  });
  expect(dB(level)).toBeCloseTo(-15, 6);
  expect(greatest(left)).toBeLessThan(1);
});
test('limit: speech noise is Gaussian, repeats without a seam, and is another with another seed', () => {
  const source = speechNoise(5);
  const { left } = draw(source, 2 ** 19);
  expect(draw(source, 1000).left).toEqual(left.slice(0, 1000));
  // fourth moment of a Gaussian: 3
  const s = rms(left);
  expect(left.reduce((m, x) => m + (x / s) ** 4, 0) / left.length).toBeCloseTo(3, 0.7);
  const other = draw(speechNoise(6), 2 ** 19).left;
  const likeness = left.reduce((m, x, n) => m + x * other[n]!, 0) / left.length / s ** 2;
  expect(Math.abs(likeness)).toBeLessThan(0.05);
});

test('limit: the tune is stereo, loud enough, without offset, and ends into its beginning', () => {
  const { rate, left, right } = music();
  expect(rate).toBe(32_000);
  expect(left.length / rate).toBeGreaterThan(30);
  for (const side of [left, right]) {
    expect(greatest(side)).toBeLessThanOrEqual(0.9);
    expect(dB(rms(side))).toBeGreaterThan(-18);
    expect(Math.abs(sum(side) / side.length)).toBeLessThan(1e-3);
  }
  const difference = rms(left.map((x, n) => (x - right[n]!) / 2)) / rms(left.map((x, n) => (x + right[n]!) / 2));
  expect(dB(difference)).toBeGreaterThan(-14);
  expect(dB(difference)).toBeLessThan(-3);
  // no greater step from the last sample to the first than elsewhere
  const steps = left.map((x, n) => Math.abs(x - left[(n + 1) % left.length]!));
  expect(steps.at(-1)!).toBeLessThan(0.5 * greatest(steps));
});
test('limit: the plucked notes are in tune: the tune has its power at the pitches of its scale', () => {
  // D major over four octaves against the five notes outside it
  const { rate, left, right } = music();
  const size = 2 ** 20;
  const re = Float64Array.from({ length: size }, (_, n) => left[n]! + right[n]!);
  const im = new Float64Array(size);
  fourierTransform(size).forward(re, im);
  const at = (step: number): number => {
    const f = 440 * 2 ** (step / 12);
    let power = 0;
    for (let k = Math.round(((f * 0.99) / rate) * size); k <= ((f * 1.01) / rate) * size; k++) power += re[k]! ** 2 + im[k]! ** 2;
    return power;
  };
  const [inside, outside] = [
    [2, 4, 5, 7, 9, 10, 0],
    [1, 3, 6, 8, 11],
  ].map((steps) => [-24, -12, 0, 12].reduce((s, octave) => s + steps.reduce((t, step) => t + at(step + octave), 0), 0)) as [number, number];
  // steps from a: d is 5, e 7, fs 9, g 10, a 0, b 2, cs 4
  // overtones of what is played fall outside the scale too, the fifth of fs on as
  expect(10 * Math.log10(inside / outside)).toBeGreaterThan(15);
});

test('rival: the spoken sentences are read as sox reads them; mono, 20 to 30 s, below 400 kB', () => {
  const bytes = new Uint8Array(readFileSync('assets/programmes/sentences.wav'));
  expect(bytes.length).toBeLessThan(400e3);
  const file = openWav(bytesSource(bytes));
  expect(file).toMatchObject({ rate: 22_050, channels: 1, encoding: 'ima-adpcm', remarks: [] });
  expect(file.frames / file.rate).toBeGreaterThan(20);
  expect(file.frames / file.rate).toBeLessThan(30);
  const { left, right } = draw(wavAudio(file, 'silence'), file.frames + 100);
  const theirs = soxSamples(bytes, 1)[0]!;
  const ours = left.map((x) => x * 2 ** 31).subarray(0, file.frames);
  expect(ours).toEqual(Float64Array.from(theirs.subarray(0, file.frames)));
  expect(right).toEqual(left);
  expect(rms(left.subarray(file.frames))).toBe(0);
  expect(dB(rms(left))).toBeGreaterThan(-24);
});

test('limit: tones repeat every second to the bit, two are full scale together, many keep a low crest', () => {
  const { left } = draw(toneAudio([{ frequency: 997, amplitude: 0.5, phase: 1 }]), 96_000);
  left.forEach((x, n) => void expect(Math.abs(x - 0.5 * Math.sin((2 * Math.PI * 997 * n) / 48_000 + 1))).toBeLessThan(1e-10));
  expect(left.slice(48_000)).toEqual(left.slice(0, 48_000));
  expect(greatest(draw(toneAudio(twoTones(400, 410)), 48_000).left)).toBeCloseTo(1, 2);
  const many = draw(toneAudio(multitone(Array.from({ length: 60 }, (_, k) => 200 * (k + 1)))), 48_000).left;
  expect(greatest(many)).toBeCloseTo(1, 9);
  // Newman's phases give a crest of about 4.6 dB (Boyd 1986, from memory); a sine has 3.01 dB
  expect(dB(1 / rms(many))).toBeLessThan(6);
  expect(rms(draw(toneAudio([]), 100).left)).toBe(0);
});
test('limit: sides of a tone', () => {
  const x = draw(toneAudio([{ frequency: 1000, amplitude: 1 }]), 100).left;
  for (const [side, l, r] of [
    ['left', 1, 0],
    ['right', 0, 1],
    ['opposite', 1, -1],
  ] as const) {
    const { left, right } = draw(toneAudio([{ frequency: 1000, amplitude: 1 }], side), 100);
    x.forEach((v, n) => {
      expect(left[n]).toBeCloseTo(l * v, 15);
      expect(right[n]).toBeCloseTo(r * v, 15);
    });
  }
});
test('limit: a recording repeats, or is silent after its end, or always where it is empty', () => {
  const held = { rate: 8000, left: Float64Array.of(1, 2, 3), right: Float64Array.of(4, 5, 6) };
  expect(draw(recordedAudio(held, 'repeat'), 7)).toEqual({
    left: Float64Array.of(1, 2, 3, 1, 2, 3, 1),
    right: Float64Array.of(4, 5, 6, 4, 5, 6, 4),
  });
  expect(draw(recordedAudio(held, 'silence'), 5)).toEqual({ left: Float64Array.of(1, 2, 3, 0, 0), right: Float64Array.of(4, 5, 6, 0, 0) });
  const empty = { rate: 8000, left: new Float64Array(), right: new Float64Array() };
  expect(draw(recordedAudio(empty, 'repeat'), 3).left).toEqual(new Float64Array(3));
});
