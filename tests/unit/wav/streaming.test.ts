import { expect, test } from 'vitest';
import { type ByteSource, bytesSource, channelMix, openWav, wavAudio } from '#wav';
import { chunk, fmt, join, riff, text, u16, u32 } from './bytes.ts';

const SECONDS = 3600;
const RATE = 16000;

/** An hour of stereo whose samples are worked out where they are read. */
function hour(): { readonly source: ByteSource; readonly read: () => number; readonly greatest: () => number } {
  const data = SECONDS * RATE * 4;
  const head = join(text('RIFF'), u32(36 + data), text('WAVE'), fmt(1, 2, RATE, 16), text('data'), u32(data));
  let read = 0;
  let greatest = 0;
  return {
    read: () => read,
    greatest: () => greatest,
    source: {
      size: head.length + data,
      read(at, into) {
        const count = Math.min(into.length, head.length + data - at);
        for (let k = 0; k < count; k++) into[k] = at + k < head.length ? head[at + k]! : ((at + k - head.length) >> 2) & 63;
        read += count;
        greatest = Math.max(greatest, count);
        return count;
      },
    },
  };
}

test('limit: an hour of sound streams in pieces of 64 KiB at most; memory stays flat', () => {
  const { source, read, greatest } = hour();
  const file = openWav(source);
  expect(file.frames).toBe(SECONDS * RATE);
  expect(read()).toBeLessThan(1000);
  const audio = wavAudio(file, 'repeat');
  const [left, right] = [new Float64Array(4800), new Float64Array(4800)];
  audio.next(left, right);
  const before = process.memoryUsage().arrayBuffers;
  for (let k = 1; k < (SECONDS * RATE) / 4800 / 6; k++) audio.next(left, right);
  expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(2 ** 21);
  expect(greatest()).toBeLessThanOrEqual(65_536);
  // any place is reached at once
  const start = read();
  expect(file.readStereo(SECONDS * RATE - 100, left, right)).toBe(100);
  expect(read() - start).toBe(400);
  const value = ((SECONDS * RATE - 1) & 63) * 257;
  expect(left[99]).toBe(value / 32768);
});

test('limit: sound repeats without a seam, or is silent after its end, in pieces of any size', () => {
  const frames = 10_000; // more than is read at a time, and no multiple of it
  const bytes = riff(fmt(1, 1, 8000, 16), chunk('data', u16(...Array.from({ length: frames }, (_, n) => n))));
  for (const afterEnd of ['repeat', 'silence'] as const) {
    const audio = wavAudio(openWav(bytesSource(bytes)), afterEnd);
    const all: number[] = [];
    for (let size = 1; all.length < 2.5 * frames; size = ((size * 7) % 1999) + 1) {
      const [left, right] = [new Float64Array(size), new Float64Array(size)];
      audio.next(left, right);
      expect(right).toEqual(left);
      all.push(...left);
    }
    all.forEach((x, n) => {
      const wanted = afterEnd === 'silence' && n >= frames ? 0 : ((((n % frames) + 32768) % 65536) - 32768) / 32768;
      if (x !== wanted) expect(x, `${afterEnd}, frame ${n}`).toBe(wanted);
    });
  }
});

test('published: 5.1 is mixed with the coefficients of ITU-R BS.775 for two loudspeakers, 1, 0.7071, 0.7071 (from memory), brought to full scale', () => {
  const mix = channelMix(6, 0x3f);
  const half = 7071 / 10_000; // as printed
  const most = 1 + 2 * half;
  const wanted = [
    [1, 0],
    [0, 1],
    [half, half],
    [0, 0],
    [half, 0],
    [0, half],
  ];
  mix.forEach(({ left, right }, c) => {
    expect(left).toBeCloseTo(wanted[c]![0]! / most, 5);
    expect(right).toBeCloseTo(wanted[c]![1]! / most, 5);
  });
  expect(channelMix(6, null)).toEqual(mix);
});
test('limit: one channel goes to both sides, two stay; no mix of any layout goes beyond full scale or loses its sides', () => {
  expect(channelMix(1, null)).toEqual([{ left: 1, right: 1 }]);
  expect(channelMix(2, 0x3)).toEqual([
    { left: 1, right: 0 },
    { left: 0, right: 1 },
  ]);
  for (let channels = 3; channels <= 12; channels++)
    for (const mask of [null, 0, 0x3f, 0xfff, 0xffffffff | 0]) {
      const mix = channelMix(channels, mask);
      expect(mix).toHaveLength(channels);
      const left = mix.reduce((s, g) => s + g.left, 0);
      const right = mix.reduce((s, g) => s + g.right, 0);
      expect(Math.max(left, right)).toBeCloseTo(1, 12);
      expect(Math.abs(left - right)).toBeLessThan(0.75);
    }
  const bytes = riff(fmt(1, 4, 8000, 16), chunk('data', u16(0x4000, 0, 0, 0, 0, 0, 0, 0x4000)));
  const [left, right] = [new Float64Array(2), new Float64Array(2)];
  openWav(bytesSource(bytes)).readStereo(0, left, right);
  // front left whole, back right by -3 dB, both over their sum
  expect(Array.from(left)).toEqual([0.5 / (1 + Math.SQRT1_2), 0]);
  expect(right[1]).toBeCloseTo((0.5 * Math.SQRT1_2) / (1 + Math.SQRT1_2), 12);
});
