import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bytesSource, MemorySink, openWav, WavError, type WavFile, WavWriter, wavAudio } from '#wav';
import { chunk, fmt, join, riff, text, u16, u32 } from './bytes.ts';

const samples = u16(...Array.from({ length: 100 }, (_, n) => (n * 300 - 15000) & 0xffff));
const good = riff(fmt(1, 1, 8000, 16), chunk('data', samples));
const open = (bytes: Uint8Array): WavFile => openWav(bytesSource(bytes));
const first = (file: WavFile): Float64Array => {
  const x = new Float64Array(file.frames);
  file.readChannels(0, [x, ...Array.from({ length: file.channels - 1 }, () => new Float64Array(file.frames))]);
  return x;
};
const values = Float64Array.from({ length: 100 }, (_, n) => (n * 300 - 15000) / 32768);
const patched = (bytes: Uint8Array, at: number, ...parts: Uint8Array[]): Uint8Array => {
  const copy = bytes.slice();
  copy.set(join(...parts), at);
  return copy;
};

describe('what is amiss is told, and what is there is read', () => {
  test.each<[string, Uint8Array, string[]]>([
    ['nothing amiss', good, []],
    ['cut short', good.slice(0, 44 + 101), ['it is cut short: 0.013 s were written and 0.006 s are there']],
    ['length too great', patched(good, 40, u32(10_000)), ['it is cut short: 0.625 s were written and 0.013 s are there']],
    ['length of the whole wrong', patched(good, 4, u32(12)), []],
    ['length of the whole zero', patched(good, 4, u32(0)), []],
    ['length left open, zero', patched(good, 40, u32(0)), ['its length was left open when it was written; read to its end']],
    ['length left open, greatest', patched(good, 40, u32(0xffffffff)), ['its length was left open when it was written; read to its end']],
    ['an unknown chunk before', riff(chunk('bext', new Uint8Array(602)), fmt(1, 1, 8000, 16), chunk('data', samples)), []],
    ['an odd chunk, filled up', riff(chunk('junk', new Uint8Array(7)), fmt(1, 1, 8000, 16), chunk('data', samples)), []],
    [
      'an odd chunk, not filled up',
      riff(chunk('junk', new Uint8Array(7), { pad: false }), fmt(1, 1, 8000, 16), chunk('data', samples)),
      ['a chunk of odd length is not followed by the byte that should fill it up; read without it'],
    ],
    ['chunks behind the sound', riff(fmt(1, 1, 8000, 16), chunk('data', samples), chunk('LIST', text('adtl'))), []],
    [
      'rubbish behind the sound',
      join(
        good,
        Uint8Array.from({ length: 33 }, (_, k) => (k * 91) & 255),
      ),
      [],
    ],
    ['format behind the sound', riff(chunk('data', samples), fmt(1, 1, 8000, 16)), []],
    [
      'frame length wrong',
      riff(fmt(1, 1, 8000, 16, 5), chunk('data', samples)),
      ['it says 5 bytes a frame, which 1 channels of 16 bits do not have; read with 2'],
    ],
    [
      'frame length zero',
      riff(fmt(1, 1, 8000, 16, 0), chunk('data', samples)),
      ['it says 0 bytes a frame, which 1 channels of 16 bits do not have; read with 2'],
    ],
    [
      'a byte over',
      riff(fmt(1, 1, 8000, 16), chunk('data', join(samples, Uint8Array.of(9)))),
      ['it ends within a frame; the part of a frame is left out'],
    ],
    [
      'two sound chunks',
      riff(fmt(1, 1, 8000, 16), chunk('data', samples), chunk('data', samples)),
      ['it has more than one sound chunk; the first is read'],
    ],
    ['format of 14 bytes', riff(chunk('fmt ', join(u16(1, 1), u32(8000, 16000), u16(2))), chunk('data', samples)), []],
    [
      'above 4 GB by its head',
      join(
        text('RF64'),
        u32(0xffffffff),
        text('WAVE'),
        chunk('ds64', join(u32(0, 0), u32(200, 0), u32(100, 0), u32(0))),
        fmt(1, 1, 8000, 16),
        chunk('data', samples, { said: 0xffffffff }),
      ),
      [],
    ],
  ])('%s', (_, bytes, remarks) => {
    const file = open(bytes);
    expect(file.remarks).toEqual(remarks);
    expect(first(file)).toEqual(values.slice(0, file.frames));
    expect(file.frames).toBe(remarks[0]?.includes('and 0.006 s are there') ? 50 : 100);
  });
  test('no sound: zero frames and a remark; as a programme, an error', () => {
    const file = open(riff(fmt(1, 1, 8000, 16), chunk('data', new Uint8Array())));
    expect(file.frames).toBe(0);
    expect(file.remarks).toEqual(['there is no sound in it']);
    expect(() => wavAudio(file, 'repeat')).toThrow('there is no sound in it');
    const followed = open(
      riff(fmt(1, 1, 8000, 16), chunk('data', new Uint8Array()), chunk('LIST', join(text('INFO'), chunk('ICMT', text('none\0'))))),
    );
    expect(followed.frames).toBe(0);
    expect(followed.info).toEqual({ ICMT: 'none' });
  });
  test('what is no number in floating point is taken as zero', () => {
    const body = new Uint8Array(Float32Array.of(0.5, Number.NaN, Number.POSITIVE_INFINITY, -0.25).buffer);
    expect(first(open(riff(fmt(3, 1, 8000, 32), chunk('data', body))))).toEqual(Float64Array.of(0.5, 0, 0, -0.25));
  });
  test('20 bits stand at the top of three bytes, 24 at the top of four; 12 in two', () => {
    const extensible = (bits: number, valid: number): Uint8Array =>
      chunk(
        'fmt ',
        join(
          u16(0xfffe, 1),
          u32(8000, 8000),
          u16(bits / 8, bits, 22, valid),
          u32(4),
          u16(1, 0, 0, 0x10),
          Uint8Array.of(0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71),
        ),
      );
    const half = (bytes: number): Uint8Array => Uint8Array.from({ length: bytes }, (_, k) => (k === bytes - 1 ? 0x40 : 0));
    for (const [bits, valid] of [
      [24, 20],
      [32, 24],
      [16, 12],
    ] as const)
      expect(first(open(riff(extensible(bits, valid), chunk('data', half(bits / 8)))))).toEqual(Float64Array.of(0.5));
  });
  test('notes that are not UTF-8 are read as Latin-1', () => {
    const list = chunk('LIST', join(text('INFO'), chunk('INAM', Uint8Array.of(0x48, 0xf6, 0x72, 0x74, 0))));
    expect(open(riff(fmt(1, 1, 8000, 16), list, chunk('data', samples))).info).toEqual({ INAM: 'H\u00f6rt' });
  });
});

describe('what cannot be read says what it is, why, and how to mend it', () => {
  const format = (body: Uint8Array): Uint8Array => riff(chunk('fmt ', body), chunk('data', samples));
  test.each<[Uint8Array, string]>([
    [new Uint8Array(), 'it is empty'],
    [text('RIFF'), 'it ends within its head'],
    [text('FORM....AIFF'), 'it is an AIFF file'],
    [text('fLaC............'), 'it is a FLAC file'],
    [text('OggS............'), 'it is an Ogg file'],
    [text('ID3.............'), 'it is an MP3 file'],
    [join(Uint8Array.of(0xff, 0xfb), text('..............')), 'it is an MP3 file'],
    [text('{ "version": 1 }'), 'it is a text file'],
    [text('nothing known....'), 'it does not begin as one'],
    [join(text('RIFF'), u32(4), text('AVI ')), 'of kind "AVI"'],
    [riff(chunk('data', samples)), 'no fmt chunk'],
    [riff(fmt(1, 1, 8000, 16)), 'no data chunk'],
    [format(u16(1, 1)), 'only 4 bytes'],
    [riff(fmt(1, 0, 8000, 16), chunk('data', samples)), '0 channels'],
    [riff(fmt(1, 65, 8000, 16), chunk('data', samples)), '65 channels'],
    [riff(fmt(1, 1, 0, 16), chunk('data', samples)), '0 samples a second'],
    [riff(fmt(1, 1, 8000, 0), chunk('data', samples)), '0 bits a sample'],
    [riff(fmt(1, 1, 8000, 40), chunk('data', samples)), '40 bits a sample'],
    [riff(fmt(3, 1, 8000, 16), chunk('data', samples)), '16 bits a sample, and floating-point samples have 32 or 64'],
    [riff(fmt(6, 1, 8000, 16), chunk('data', samples)), 'A-law and mu-law samples have 8'],
    [riff(fmt(2, 1, 8000, 4, 256), chunk('data', samples)), 'Microsoft ADPCM'],
    [riff(fmt(0x55, 2, 44100, 0, 1), chunk('data', samples)), 'MP3'],
    [riff(fmt(0x1234, 2, 44100, 16), chunk('data', samples)), 'of kind 0x1234'],
    [riff(fmt(0xfffe, 2, 44100, 16), chunk('data', samples)), 'the extensible form needs 40 bytes'],
    [
      format(join(u16(0xfffe, 1), u32(8000, 16000), u16(2, 16, 22, 16), u32(4), new Uint8Array(16))),
      'a kind of sample that is not known here',
    ],
    [format(join(u16(0x11, 2), u32(8000, 8000), u16(11, 4, 2, 9))), 'blocks of 11 bytes cannot hold 2 channels'],
  ])('%#: %s', (bytes, why) => {
    let error: unknown = null;
    try {
      open(bytes);
    } catch (e) {
      error = e;
    }
    expect(error).toBeInstanceOf(WavError);
    const { what, why: said, mend } = error as WavError;
    expect(said).toContain(why);
    expect(`${what}: ${said}. ${mend}`).toBe((error as WavError).message);
    expect(mend).toMatch(/^[A-Z].*\.$/);
  });
  test('nor is what cannot be written', () => {
    const writer = (rate: number): WavWriter => new WavWriter(new MemorySink(), { rate, channels: 2, encoding: '16-bit' });
    expect(() => writer(44100.5)).toThrow(WavError);
    expect(() => writer(0)).toThrow(WavError);
    expect(() => writer(8000).write(Float64Array.of(0, Number.NaN), new Float64Array(2))).toThrow('sample 1 is NaN');
    // refused before a sample is looked at, so that nothing need be that long here
    const long = { length: 2 ** 29 } as Float64Array;
    expect(() => new WavWriter(new MemorySink(), { rate: 48000, channels: 2, encoding: 'float' }).write(long, long)).toThrow(
      'longer than the 4 GB',
    );
  });
});

test('limit: samples beyond full scale are written as full scale and counted; +1 is full scale', () => {
  const sink = new MemorySink();
  const writer = new WavWriter(sink, { rate: 8000, channels: 1, encoding: '16-bit' });
  writer.write(Float64Array.of(1, -1, 1.5, -1.5, 0.25), new Float64Array());
  expect(writer.finish().clipped).toBe(2);
  expect(first(open(sink.bytes()))).toEqual(Float64Array.of(32767 / 32768, -1, 32767 / 32768, -1, 0.25));
});
test('limit: a file cut off while it was written is read as far as it came', () => {
  const sink = new MemorySink();
  new WavWriter(sink, { rate: 8000, channels: 1, encoding: '24-bit' }).write(values, values);
  const file = open(sink.bytes());
  expect(file.frames).toBe(100);
  expect(file.remarks).toEqual(['its length was left open when it was written; read to its end']);
});
test('property: good files cut anywhere and with any bytes changed give finite samples or a WavError, never anything else', () => {
  const stereo = riff(fmt(3, 2, 44100, 32), chunk('fact', u32(16)), chunk('data', new Uint8Array(128)));
  const ima = riff(
    chunk('fmt ', join(u16(0x11, 1), u32(8000, 4000), u16(36, 4, 2, 65))),
    chunk('fact', u32(100)),
    chunk('data', new Uint8Array(72)),
  );
  const change = fc.record({ at: fc.nat(200), byte: fc.nat(255) });
  fc.assert(
    fc.property(fc.constantFrom(good, stereo, ima), fc.nat(260), fc.array(change, { maxLength: 6 }), (bytes, length, changes) => {
      const broken = bytes.slice(0, length);
      for (const { at, byte } of changes) if (at < broken.length) broken[at] = byte;
      try {
        const file = open(broken);
        const channels = Array.from({ length: file.channels }, () => new Float64Array(Math.min(1000, file.frames)));
        const count = file.readChannels(0, channels);
        for (const c of channels) for (let n = 0; n < count; n++) if (!Number.isFinite(c[n]!)) return false;
        return file.frames >= 0;
      } catch (error) {
        return error instanceof WavError;
      }
    }),
    { numRuns: 3000 },
  );
});
