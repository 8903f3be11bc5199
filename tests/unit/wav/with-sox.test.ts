import { describe, expect, test } from 'vitest';
import { bytesSource, MemorySink, openWav, type WavEncoding, WavWriter } from '#wav';
import { chunk, fmt, join, riff, u16 } from './bytes.ts';
import { sox, soxPiped, soxSamples } from './sox.ts';

/** 32-bit whole numbers from end to end, both ends and zero included, without pattern. */
function noise(count: number, seed: number): Int32Array {
  let s = seed >>> 0;
  const x = Int32Array.from({ length: count }, () => {
    s = (Math.imul(s, 1664525) + 1013904223) >>> 0;
    return s | 0;
  });
  x.set([0, 1, -1, 2147483647, -2147483648]);
  return x;
}

/** Our samples of all channels as 32-bit whole numbers times 2^-31. */
function ours(wav: Uint8Array): { readonly file: ReturnType<typeof openWav>; readonly channels: Float64Array[] } {
  const file = openWav(bytesSource(wav));
  const channels = Array.from({ length: file.channels }, () => new Float64Array(file.frames));
  expect(file.readChannels(0, channels)).toBe(file.frames);
  return { file, channels };
}

describe('rival: files written by sox are read as sox reads them', () => {
  const cases: { readonly name: string; readonly args: readonly string[]; readonly encoding: string; readonly bits: number }[] = [
    { name: '8 bits, unsigned', args: ['-e', 'unsigned-integer', '-b', '8'], encoding: 'unsigned', bits: 8 },
    { name: '16 bits', args: ['-e', 'signed-integer', '-b', '16'], encoding: 'integer', bits: 16 },
    { name: '24 bits', args: ['-e', 'signed-integer', '-b', '24'], encoding: 'integer', bits: 24 },
    { name: '32 bits', args: ['-e', 'signed-integer', '-b', '32'], encoding: 'integer', bits: 32 },
    { name: '32 bits, floating', args: ['-e', 'floating-point', '-b', '32'], encoding: 'float', bits: 32 },
    { name: '64 bits, floating', args: ['-e', 'floating-point', '-b', '64'], encoding: 'float', bits: 64 },
    { name: 'A-law', args: ['-e', 'a-law'], encoding: 'a-law', bits: 8 },
    { name: 'mu-law', args: ['-e', 'u-law'], encoding: 'mu-law', bits: 8 },
    { name: 'IMA ADPCM', args: ['-e', 'ima-adpcm'], encoding: 'ima-adpcm', bits: 4 },
  ];
  const kinds = [
    { channels: 1, rate: 8000, extra: [] },
    { channels: 2, rate: 44100, extra: [] },
    { channels: 2, rate: 192000, extra: ['-B'] },
    { channels: 6, rate: 48000, extra: [] },
  ] as const;
  for (const { name, args, encoding, bits } of cases)
    for (const { channels, rate, extra } of kinds) {
      if (encoding === 'ima-adpcm' && (channels > 2 || extra.length > 0)) continue; // sox itself writes neither
      test(`${name}, ${channels} channels at ${rate} Hz${extra.length ? ', big-endian' : ''}`, () => {
        const frames = 3001;
        const raw = new Uint8Array(noise(frames * channels, 7 * bits + channels).buffer);
        const layout = ['-t', 'raw', '-r', String(rate), '-e', 'signed-integer', '-b', '32', '-L', '-c', String(channels), 'in.raw'];
        const wav = sox(['--no-dither', ...layout, ...args, ...extra, 'out.wav'], { 'in.raw': raw }, 'out.wav');
        const { file, channels: read } = ours(wav);
        expect(file).toMatchObject({ rate, channels, encoding, sampleBits: bits, remarks: [] });
        const theirs = soxSamples(wav, channels);
        // sox reads on to the end of the last ADPCM block, beyond the frames that the file says it has
        expect(file.frames).toBe(frames);
        expect(theirs[0]!.length).toBeGreaterThanOrEqual(frames);
        if (encoding !== 'ima-adpcm') expect(theirs[0]).toHaveLength(frames);
        for (let c = 0; c < channels; c++) {
          let worst = 0;
          for (let n = 0; n < file.frames; n++) {
            // sox holds full scale of floating point as its greatest whole number
            const x = Math.min(2147483647, read[c]![n]! * 2 ** 31);
            worst = Math.max(worst, Math.abs(x - theirs[c]![n]!));
          }
          // whole numbers are the same; floating point is rounded by sox to its own whole numbers
          expect(worst).toBeLessThanOrEqual(encoding === 'float' ? 0.5 : 0);
        }
      });
    }
  test('every code of A-law and mu-law', () => {
    const codes = Uint8Array.from({ length: 256 }, (_, k) => k);
    for (const tag of [6, 7]) {
      const wav = riff(fmt(tag, 1, 8000, 8), chunk('data', codes));
      const theirs = soxSamples(wav, 1)[0]!;
      ours(wav).channels[0]!.forEach((x, k) => void expect(x * 2 ** 31, `${tag}, code ${k}`).toBe(theirs[k]));
    }
  });
  test('IMA ADPCM of random codes, where steps and values run into their ends; the last block in part', () => {
    for (const channels of [1, 2]) {
      const blockBytes = 256 * channels;
      const blockFrames = 1 + 2 * (256 - 4);
      const data = new Uint8Array(noise(1000, channels).buffer).slice(0, 3 * blockBytes + 36 * channels);
      // heads: a value, a step index of 0 to 88, and zero
      for (let b = 0; b < 4; b++)
        for (let c = 0; c < channels; c++) data.set([data[b * blockBytes + 4 * c]! % 89, 0], b * blockBytes + 4 * c + 2);
      const format = chunk(
        'fmt ',
        join(u16(0x11, channels), new Uint8Array([0x40, 0x1f, 0, 0, 0, 0, 0, 0]), u16(blockBytes, 4, 2, blockFrames)),
      );
      const whole = riff(format, chunk('data', data.slice(0, 3 * blockBytes)));
      const theirs = soxSamples(whole, channels);
      const { file, channels: read } = ours(whole);
      expect(file.frames).toBe(3 * blockFrames);
      read.forEach((x, c) => void expect(x.map((v) => v * 2 ** 31)).toEqual(Float64Array.from(theirs[c]!)));
      // 32 bytes of codes behind the heads of the fourth block: 1 + 64 frames
      const more = ours(riff(format, chunk('data', data)));
      expect(more.file.frames).toBe(3 * blockFrames + 65);
      read.forEach((x, c) => void expect(more.channels[c]!.subarray(0, x.length)).toEqual(x));
      // read from the middle it is the same
      const part = [new Float64Array(50), new Float64Array(50)].slice(0, channels);
      expect(more.file.readChannels(blockFrames - 20, part)).toBe(50);
      part.forEach((x, c) => void expect(x).toEqual(more.channels[c]!.slice(blockFrames - 20, blockFrames + 30)));
    }
  });
  test('sound piped out by sox, whose length was not known when its head was written', () => {
    const raw = new Uint8Array(noise(4000, 3).buffer);
    const wav = soxPiped(raw);
    const { file } = ours(wav);
    expect(file.frames).toBe(4000);
    expect(file.remarks).toEqual(['its length was left open when it was written; read to its end']);
  });
});

describe('rival: files we write are read by sox with the same samples', () => {
  for (const encoding of ['16-bit', '24-bit', 'float'] as const satisfies readonly WavEncoding[])
    for (const channels of [1, 2] as const)
      test(`${encoding}, ${channels} channels, in pieces of any size, with notes`, () => {
        const frames = 9999;
        const scale = encoding === '16-bit' ? 2 ** 15 : 2 ** 23;
        const whole = (seed: number): Int32Array =>
          noise(frames, seed).map((x) => Math.max(-scale, Math.min(scale - 1, x >> (encoding === '16-bit' ? 16 : 8))));
        const wanted = [whole(5), whole(6)].slice(0, channels);
        const [left, right] = [wanted[0]!, wanted[channels - 1]!].map((w) => Float64Array.from(w, (x) => x / scale)) as [
          Float64Array,
          Float64Array,
        ];
        const sink = new MemorySink();
        const writer = new WavWriter(sink, { rate: 44100, channels, encoding });
        for (let at = 0, size = 1; at < frames; at += size, size = (size * 5) % 4999)
          writer.write(left.subarray(at, at + size), right.subarray(at, at + size));
        const note = 'level 23 dB, \u00bd turn, \u03a9';
        const written = writer.finish({ ICMT: note, ISFT: 'Earshot' });
        const wav = sink.bytes();
        expect(written).toEqual({ frames, bytes: wav.length, clipped: 0 });
        soxSamples(wav, channels).forEach((x, c) => void expect(x).toEqual(wanted[c]!.map((v) => v * (2 ** 31 / scale))));
        const told = (what: string): string => sox(['--info', what, 'in.wav'], { 'in.wav': wav }).toString().trim();
        expect(told('-r')).toBe('44100');
        expect(told('-c')).toBe(String(channels));
        expect(told('-s')).toBe(String(frames));
        expect(told('-e')).toBe(encoding === 'float' ? 'Floating Point PCM' : 'Signed Integer PCM');
        const { file, channels: back } = ours(wav);
        expect(file.info).toEqual({ ICMT: note, ISFT: 'Earshot' });
        expect(file.remarks).toEqual([]);
        expect(back[0]).toEqual(left);
        if (channels === 2) expect(back[1]).toEqual(right);
      });
  test('without sound', () => {
    const sink = new MemorySink();
    new WavWriter(sink, { rate: 8000, channels: 1, encoding: '16-bit' }).finish();
    expect(soxSamples(sink.bytes(), 1)[0]).toHaveLength(0);
    expect(openWav(bytesSource(sink.bytes())).frames).toBe(0);
  });
});
