import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { bytesSource, MemorySink, openWav, type WavEncoding, type WavFile, WavWriter } from '#wav';
import { BadFile } from '../../../src/cli/bad-file.ts';
import { listenCommand } from '../../../src/cli/listen/command.ts';
import type { ListenOptions } from '../../../src/cli/listen/options.ts';
import { harmonics } from '../listen/signals.ts';
import { soxSamples } from '../wav/sox.ts';
import { earshot } from './run.ts';

/** The sound that the command line writes, read back by our own reader and by sox (Debian), and held against `hear`. */
const DEMO = 'examples/dipole-and-small-coil.json';
const MEDIUM_WAVE = 'examples/medium-wave.json';
const QUIET = 'neighbours,noise,room,hearing';
const folder = mkdtempSync(join(tmpdir(), 'earshot-listen-'));
const path = (name: string): string => join(folder, name);

interface Told {
  readonly out: string;
  readonly err: string;
}

/** The command itself, without a process of its own for each. */
async function command(file: string | undefined, options: Partial<ListenOptions>): Promise<Told> {
  const said = { out: '', err: '' };
  const log = vi.spyOn(console, 'log').mockImplementation((text) => {
    said.out += `${text}\n`;
  });
  const error = vi.spyOn(console, 'error').mockImplementation((text) => {
    said.err += `${text}\n`;
  });
  try {
    await listenCommand(file, { out: path('refused.wav'), gain: '0 dB', depth: '24', seed: '1', ...options });
  } finally {
    log.mockRestore();
    error.mockRestore();
  }
  return said;
}
const listen = (name: string, file: string, options: Partial<ListenOptions> = {}): Promise<Told> =>
  command(file, { out: path(name), ...options });
const opened = (name: string): WavFile => openWav(bytesSource(readFileSync(path(name))));

function samples(file: WavFile): Float64Array {
  const x = new Float64Array(file.frames);
  file.readChannels(0, [x]);
  return x;
}

/** Pascals for a sample of 1 where a sine of 100 dB SPL has its peak there: 20 uPa sqrt 2 10^(100/20). */
const FULL_SCALE = 20e-6 * Math.SQRT2 * 1e5;
const soundLevel = (rmsPascals: number): number => 20 * Math.log10(rmsPascals / 20e-6);
/** Level of a tone in the second half of a file [dB SPL]. */
function toneLevel(x: Float64Array, frequency: number): number {
  const half = x.slice(Math.floor(x.length / 2 / 48) * 48);
  return soundLevel((FULL_SCALE * harmonics(half, 48_000, frequency, 1)[1]!) / Math.SQRT2);
}

const rms = (x: Float64Array): number => Math.sqrt(x.reduce((s, v) => s + v * v, 0) / x.length);
/** Without the breaks of its lines. */
const plain = (text: string): string => text.replace(/\s+/g, ' ');

describe('the file', () => {
  test('length, rate, depth and notes, by our reader; sox reads the same samples', async () => {
    const told = await listen('demo.wav', DEMO, { seconds: '0.25' });
    expect(told.err).toBe(`written: ${path('demo.wav')}\n`);
    const file = opened('demo.wav');
    expect(file).toMatchObject({ rate: 48_000, channels: 1, frames: 12_000, sampleBits: 24, remarks: [] });
    expect(file.info.INAM).toContain('Fen Talk');
    expect(file.info.ICMT).toMatch(/full scale stands for 100 dB SPL at the ear; no make-up gain/);
    const [theirs] = soxSamples(readFileSync(path('demo.wav')), 1);
    expect(theirs).toHaveLength(12_000);
    const ours = samples(file);
    for (let n = 0; n < ours.length; n += 97) expect(ours[n]! * 2 ** 31).toBeCloseTo(theirs![n]!, 3);
  });
  test.each([
    ['16', 16, 'integer'],
    ['float', 32, 'float'],
  ])('depth %s', async (depth, bits, encoding) => {
    await listen(`${depth}.wav`, MEDIUM_WAVE, { station: 'Harbour 1215', seconds: '0.1', depth });
    expect(opened(`${depth}.wav`)).toMatchObject({ frames: 4800, sampleBits: bits, encoding });
  });
  test('the same seed gives the same bytes, another seed others', async () => {
    const bytes = async (name: string, seed: string): Promise<Buffer> => {
      await listen(name, MEDIUM_WAVE, { station: 'Harbour 1215', seconds: '0.1', seed });
      return readFileSync(path(name));
    };
    const first = await bytes('one.wav', '7');
    expect((await bytes('two.wav', '7')).equals(first)).toBe(true);
    const other = await bytes('three.wav', '8');
    expect(other.subarray(44, 9000).equals(first.subarray(44, 9000))).toBe(false);
  });
});

describe('its level', () => {
  const rated = (file: string, station: string): number => {
    const { stations } = JSON.parse(earshot('hear', file, '--json', '--no-advice', '--station', station).out);
    return stations[0].figures['ladder.soundLevel'].value;
  };
  test('rival: a rated tone stands in the file as loud as `hear` says, within 0.1 dB: a headset on medium wave', async () => {
    const station = 'Harbour 1215';
    await listen('mw-tone.wav', MEDIUM_WAVE, { station, programme: 'tone', without: QUIET, seconds: '0.6' });
    expect(Math.abs(toneLevel(samples(opened('mw-tone.wav')), 1000) - rated(MEDIUM_WAVE, station))).toBeLessThan(0.1);
  });
  test('the same on FM, less the 0.11 dB that a plug with a corner of 400 Hz loses at 1 kHz; it does not click at its beginning', async () => {
    const station = 'Fen Talk';
    await listen('fm-tone.wav', DEMO, { station, programme: 'tone', without: QUIET, seconds: '0.3', depth: 'float' });
    const x = samples(opened('fm-tone.wav'));
    const lost = 10 * Math.log10(1 + 0.4 ** 4);
    expect(Math.abs(toneLevel(x, 1000) + lost - rated(DEMO, station))).toBeLessThan(0.1);
    const peak = (from: number, to: number): number => x.subarray(from, to).reduce((m, v) => Math.max(m, Math.abs(v)), 0);
    expect(peak(0, 480)).toBeLessThan(1.5 * peak(7200, 14_400));
  });
  test('rival: the set that a search puts first is as loud in `listen` as in `hear`, and of the same intelligibility in `hear` as in the search', async () => {
    const station = 'Fen Talk';
    const found = earshot(
      'find',
      'examples/drawer.json',
      '--station',
      station,
      '--trials',
      '150',
      '--most',
      '1',
      '--out',
      folder,
      '--json',
    );
    const [best] = JSON.parse(found.out).sets;
    const file = path('found-1.json');
    const { stations } = JSON.parse(earshot('hear', file, '--json', '--no-advice', '--station', station).out);
    expect(stations[0].verdict.sii).toBeCloseTo(best.stations[0].verdict.sii, 9);
    expect(stations[0].verdict.level).toBeCloseTo(best.stations[0].verdict.level, 7);
    await listen('found-tone.wav', file, { station, programme: 'tone', without: QUIET, seconds: '0.3', depth: 'float' });
    // 0.11 dB of it may be what the corner of a plug loses at 1 kHz
    expect(Math.abs(toneLevel(samples(opened('found-tone.wav')), 1000) - stations[0].figures['ladder.soundLevel'].value)).toBeLessThan(0.2);
  }, 120_000);
  test('make-up gain: louder by just that, and said in the file, on the screen and in JSON; too much is clipped and counted', async () => {
    const tone = { station: 'Harbour 1215', programme: 'tone', without: QUIET, seconds: '0.2' };
    const calm = await listen('true.wav', MEDIUM_WAVE, tone);
    expect(calm.out).not.toContain('Cautions');
    const run = await listen('gain.wav', MEDIUM_WAVE, { ...tone, gain: '12 dB', json: true });
    const [a, b] = [samples(opened('true.wav')), samples(opened('gain.wav'))];
    expect(toneLevel(b, 1000) - toneLevel(a, 1000)).toBeCloseTo(12, 3);
    expect(opened('gain.wav').info.ICMT).toMatch(/Make-up gain 12 dB.*stands for 88 dB SPL/);
    const json = JSON.parse(run.out);
    expect(json.scale).toContain('Make-up gain 12 dB');
    expect(json.wav).toMatchObject({ clipped: 0, stopped: false });
    const loud = plain((await listen('loud.wav', MEDIUM_WAVE, { ...tone, gain: '60' })).out);
    expect(loud).toMatch(/samples were beyond full scale/);
    expect(loud).toMatch(/Cautions - Played at its calibration this sound reaches \d+ dB\(A\)/);
  });
  test('the reference tone: 1 kHz at 74 dB SPL, without a set', async () => {
    const told = await command(undefined, { out: path('reference.wav'), calibrate: true, seconds: '0.5' });
    expect(told.out).toContain('74 dB SPL');
    const x = samples(opened('reference.wav'));
    expect(toneLevel(x, 1000)).toBeCloseTo(74, 3);
    expect(soundLevel(FULL_SCALE * rms(x))).toBeCloseTo(74, 3);
  });
});

describe('programmes of the user', () => {
  /** One second of 500 Hz, in the left channel alone where there are two. */
  function own(name: string, rate: number, channels: 1 | 2, encoding: WavEncoding): string {
    const sink = new MemorySink();
    const writer = new WavWriter(sink, { rate, channels, encoding });
    const left = Float64Array.from({ length: rate }, (_, n) => 0.5 * Math.sin((2 * Math.PI * 500 * n) / rate));
    writer.write(left, new Float64Array(rate));
    writer.finish();
    writeFileSync(path(name), sink.bytes());
    return path(name);
  }
  test.each([
    ['44.1 kHz, 16 bits, stereo', 44_100, 2, '16-bit'],
    ['8 kHz, 16 bits, mono', 8000, 1, '16-bit'],
    ['96 kHz, floating point, mono', 96_000, 1, 'float'],
  ] as const)('%s: its tone is in the sound', async (words, rate, channels, encoding) => {
    const programme = own(`own-${rate}.wav`, rate, channels, encoding);
    const run = await listen(`heard-${rate}.wav`, MEDIUM_WAVE, { station: 'Harbour 1215', programme, without: QUIET, seconds: '0.4' });
    expect(plain(run.out)).toContain(`(1.0 s, ${rate} Hz, ${words.split(', ')[2]})`);
    const x = samples(opened(`heard-${rate}.wav`));
    // nearly all of the sound is that tone
    expect(toneLevel(x, 500)).toBeGreaterThan(soundLevel(rms(x.subarray(9600)) * FULL_SCALE) - 0.5);
  });
  test('silence is silent, a tone of any frequency is sent, speech-shaped noise is sent', async () => {
    const sent = async (programme: string): Promise<Float64Array> => {
      await listen('sent.wav', MEDIUM_WAVE, { station: 'Harbour 1215', programme, without: QUIET, seconds: '0.2', depth: 'float' });
      return samples(opened('sent.wav'));
    };
    const tone = await sent('400 Hz');
    expect(toneLevel(tone, 400)).toBeGreaterThan(soundLevel(rms(tone) * FULL_SCALE) - 2);
    expect(rms(await sent('silence'))).toBeLessThan(1e-4 * rms(tone));
    expect(rms(await sent('speech-noise'))).toBeGreaterThan(0.1 * rms(tone));
  });
});

describe('the dial', () => {
  const dialOf = async (options: Partial<ListenOptions>): Promise<Record<string, { value: number }>> =>
    JSON.parse((await listen('dial.wav', DEMO, { seconds: '0.1', without: QUIET, json: true, ...options })).out).groups[0].figures;
  test('a frequency is where the set is tuned to, and the nearest station the wanted one; an angle is an angle', async () => {
    const at = await dialOf({ dial: '94.5MHz' });
    expect(at['dial.tuned']!.value).toBeCloseTo(94.5e6, -2);
    expect(at['dial.beside']!.value).toBeCloseTo(94.5e6 - 94.6e6, -2);
    const there = await dialOf({ dial: '41 degrees', station: 'Fen Talk' });
    expect(there['dial.angle']!.value).toBeCloseTo((41 * Math.PI) / 180, 9);
  });
  test('out of reach is an answer: what is missing, what the dial covers, and nothing is written', async () => {
    const run = await listen('none.wav', DEMO, { dial: '40 MHz', station: 'Fen Talk' });
    expect(plain(run.out)).toMatch(/does not reach 40 MHz. It covers [\d.]+ MHz to [\d.]+ MHz, .*; [\d.]+ pF of capacitance is missing/);
    expect(existsSync(path('none.wav'))).toBe(false);
    expect(JSON.parse((await listen('none.wav', DEMO, { dial: '40 MHz', json: true })).out)).toMatchObject({ reached: false });
  });
  test('turned across a station: two humps either side of the carrier and a dip on it, in numbers and as a picture', async () => {
    const run = await listen('turn.wav', DEMO, { turn: '2 s', picture: path('turn.svg'), without: QUIET, json: true });
    expect(opened('turn.wav').frames).toBe(96_000);
    const json = JSON.parse(run.out);
    const f = json.groups[0].figures;
    expect(f['turn.first.beside'].value * f['turn.second.beside'].value).toBeLessThan(0);
    expect(Math.abs(f['turn.dip.beside'].value)).toBeLessThan(0.5 * Math.abs(f['turn.first.beside'].value));
    expect(f['turn.dip.level'].value).toBeLessThan(f['turn.first.level'].value - 6);
    expect(json.turn.level.values).toHaveLength(40);
    const svg = readFileSync(path('turn.svg'), 'utf8');
    expect(svg).toContain('Fen Talk 99.2 MHz');
    expect(svg).toContain(`${f['turn.first.level'].value.toFixed(1)} dB SPL`);
  });
});

test('measures with test programmes agree with levels; the spectrum is drawn over threshold and room', async () => {
  const station = 'Harbour 1215';
  const told = await listen('measured.wav', MEDIUM_WAVE, {
    station,
    seconds: '0.3',
    measure: true,
    spectrum: path('spectrum.svg'),
    json: true,
  });
  const [sound, measured] = JSON.parse(told.out).groups;
  expect(measured.name).toContain('measured');
  // programme of speech as levels foretell it, and as it is heard
  const difference = measured.figures['measured.speech.level'].value - sound.figures['sound.foretold'].value;
  expect(Math.abs(difference)).toBeLessThan(1);
  const svg = readFileSync(path('spectrum.svg'), 'utf8');
  for (const words of ['sound of the set', 'hearing threshold', 'room noise']) expect(svg).toContain(words);
  // sixteen seconds of test programmes
}, 300_000);

describe('Ctrl-C', () => {
  test('leaves a whole file of what was made, says so, and ends with 130', async () => {
    const child = spawn(process.execPath, ['dist/cli/earshot.mjs', 'listen', MEDIUM_WAVE, '-o', path('cut.wav'), '--seconds', '600']);
    let err = '';
    child.stderr.on('data', (text) => {
      err += text;
    });
    const ended = new Promise<number | null>((resolve) => child.on('exit', resolve));
    const size = (): number => (existsSync(path('cut.wav')) ? readFileSync(path('cut.wav')).length : 0);
    for (let k = 0; k < 600 && size() < 20_000; k++) await new Promise((resolve) => setTimeout(resolve, 50));
    child.kill('SIGINT');
    expect(await ended).toBe(130);
    expect(err).toMatch(/stopped: the file is whole and holds the [\d.]+ s that were made of 600 s/);
    const file = opened('cut.wav');
    expect(file.remarks).toEqual([]);
    expect(file.frames).toBeGreaterThan(4800);
    expect(file.info.ICMT).toContain(`Stopped after ${(file.frames / 48_000).toFixed(2)} s`);
    expect(soxSamples(readFileSync(path('cut.wav')), 1)[0]).toHaveLength(file.frames);
    // no progress in a pipe
    expect(err).not.toContain('%');
  });
});

describe('what is refused, each with its reason and its mend', () => {
  const text = join(folder, 'text.wav');
  writeFileSync(text, 'this is no sound');
  test.each<[string, Partial<ListenOptions>, RegExp]>([
    ['a name that is no WAV file', { out: path('sound.mp3') }, /sound is written as a WAV file\s+Give a name that ends in \.wav/],
    ['a folder that is not there', { out: join(folder, 'none', 'a.wav') }, /it cannot be written: there is no such file or folder/],
    ['a programme that there is not', { programme: 'sentence' }, /there is no such programme; did you mean "sentences"\?/],
    ['a WAV file that is not there', { programme: 'none.wav' }, /none\.wav: it cannot be read: there is no such file/],
    ['a WAV file that is none', { programme: text }, /text\.wav: .*\n {2}/],
    ['a tone beyond audio', { programme: '30 kHz' }, /--programme 30 kHz: test tones have a whole number of hertz, 1 to 23999/],
    ['neighbours that there are not', { neighbours: 'musik' }, /--neighbours musik: .*did you mean "music"/],
    ['a place beyond the dial', { dial: '400°', station: 'Fen Talk' }, /--dial 400°: this dial turns from 0° .* to 180/],
    ['a dial in words', { dial: 'left', station: 'Fen Talk' }, /neither a frequency, nor an angle, nor "best"/],
    ['no time', { seconds: '0' }, /--seconds 0: sound is made from 0\.1 s to an hour/],
    ['a length in metres', { seconds: '3 m' }, /--seconds 3 m: /],
    ['a depth', { depth: '12' }, /16 or 24 bits, or floating point of 32\s+Give 16, 24 or float/],
    ['a gain', { gain: '300' }, /--gain 300: a make-up gain is no more than 80 dB/],
    ['a seed', { seed: '-1' }, /--seed -1: a seed is a whole number/],
    ['a part of the sound', { without: 'rom' }, /did you mean "room"\?\s+There are: neighbours, noise, room, hearing/],
    ['two lengths', { turn: '5', seconds: '5' }, /with --turn the sound is as long as the turn/],
    ['a dial that turns and stands', { turn: '5', dial: 'best' }, /Leave one of the two out/],
    ['measures while the dial turns', { turn: '5', measure: true }, /--measure: measures need a dial that stands/],
    ['a picture of nothing', { picture: 'a.svg' }, /it shows a turn of the dial\s+Add --turn/],
    ['a station', { station: 'Fen Tlk' }, /Fen Talk/],
    ['a reference tone at another level', { calibrate: true, gain: '6' }, /has its true level/],
    ['a turn with a tone that does not fit its pieces', { turn: '1', programme: '50 Hz' }, /multiple of 20 Hz, from 60 Hz on/],
  ])('%s', async (_, options, message) => {
    const refusal = await command(DEMO, options).then(
      () => null,
      (e: unknown) => e,
    );
    expect(refusal).toBeInstanceOf(BadFile);
    expect((refusal as BadFile).message).toMatch(message);
    expect(existsSync(path('refused.wav'))).toBe(false);
  });
  test('to write over the programme', async () => {
    await listen('kept.wav', MEDIUM_WAVE, { seconds: '0.1' });
    const before = readFileSync(path('kept.wav'));
    await expect(listen('kept.wav', MEDIUM_WAVE, { programme: path('kept.wav') })).rejects.toThrow('would be written over');
    expect(readFileSync(path('kept.wav')).equals(before)).toBe(true);
  });
  test('exit codes: 2 where no file to write is given, 3 where there is no set', () => {
    expect(earshot('listen', DEMO).code).toBe(2);
    expect(earshot('listen', '-o', path('refused.wav'))).toMatchObject({ code: 3, err: expect.stringContaining('--calibrate') });
  });
});
