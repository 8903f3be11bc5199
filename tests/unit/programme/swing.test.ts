import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  BANDS,
  crestRoom,
  GivenError,
  integrate,
  type ProgrammeModulation,
  preEmphasisPower,
  programmeFigures,
  programmeSwing,
  SPEECH_BANDS,
  SPEECH_LEVELS,
  speechBandSwing,
  toneSwing,
} from '#engine';

const mono: ProgrammeModulation = { kind: 'fm', deviation: 75e3, preEmphasis: 50e-6, stereo: false };
const stereo: ProgrammeModulation = { ...mono, stereo: true };
const am: ProgrammeModulation = { kind: 'am', depth: 0.9 };
const dB = (ratio: number): number => 20 * Math.log10(ratio);
const squares = (a: ArrayLike<number>): number => Array.from(a).reduce((s, x) => s + x * x, 0);

test('published: programme at the multiplex power limit, 13.435 kHz rms in mono and 12.559 kHz beside a 9 % pilot (BS.412-9)', () => {
  expect(programmeSwing(mono, 0)).toBeCloseTo(13435.029, 3);
  expect(programmeSwing(stereo, 0)).toBeCloseTo(12558.613, 3);
});
test('published: a tone in stereo has 0.9 of the deviation (BS.450-3, sec. 2)', () => {
  expect(toneSwing(stereo)).toBeCloseTo(67.5e3, 9);
  expect(toneSwing(mono)).toBe(75e3);
  expect(toneSwing(am)).toBe(0.9);
});
test('limit: without pre-emphasis the bands stand to each other as in the speech spectrum', () => {
  const bands = speechBandSwing({ ...mono, preEmphasis: 0 }, 0);
  const level = (f: number) => SPEECH_LEVELS[SPEECH_BANDS.indexOf(f)]!;
  BANDS.forEach((f, i) => void expect(dB(bands[i]! / bands[0]!)).toBeCloseTo(level(f) - level(160), 9));
});
test('identity: bands outside those of speech hold the rest of the power', () => {
  for (const [m, top] of [
    [stereo, 15e3],
    [mono, 15e3],
    [am, 4500],
  ] as const) {
    const tau = m.kind === 'fm' ? m.preEmphasis : 0;
    const power = (f: number) => 10 ** (SPEECH_LEVELS[SPEECH_BANDS.indexOf(f)]! / 10) * preEmphasisPower(f, tau);
    const sent = SPEECH_BANDS.filter((f) => f <= top);
    const counted = BANDS.filter((f) => f <= top);
    const share = counted.reduce((s, f) => s + power(f), 0) / sent.reduce((s, f) => s + power(f), 0);
    expect(squares(speechBandSwing(m, 0)) / programmeSwing(m, 0) ** 2).toBeCloseTo(share, 12);
  }
});
test('rival: gain at the middle of a band against the mean of the gain over the band, within 0.1 dB', () => {
  for (const tau of [50e-6, 75e-6])
    for (const f of SPEECH_BANDS) {
      const low = f * 2 ** (-1 / 6);
      const high = f * 2 ** (1 / 6);
      // equal power in each hertz of the octave's logarithm, as a smooth spectrum has within a third of an octave
      const mean = integrate((x) => preEmphasisPower(Math.exp(x), tau), Math.log(low), Math.log(high), 8) / Math.log(high / low);
      expect(Math.abs(10 * Math.log10(mean / preEmphasisPower(f, tau))), `${f} Hz`).toBeLessThan(0.1);
    }
});
test('limit: AM has nothing above 4.5 kHz and a crest of 12 dB', () => {
  const bands = speechBandSwing(am, 0);
  BANDS.forEach((f, i) => {
    if (f > 4500) expect(bands[i]).toBe(0);
    else expect(bands[i]).toBeGreaterThan(0);
  });
  expect(crestRoom(am, 0)).toBeCloseTo(12, 9);
});
test('limit: the level moves all bands alike, until the programme is as dense as a tone at full swing', () => {
  const at = speechBandSwing(stereo, 0);
  const up = speechBandSwing(stereo, 6);
  at.forEach((x, i) => void expect(dB(up[i]! / x)).toBeCloseTo(6, 9));
  expect(crestRoom(am, 12)).toBeCloseTo(dB(Math.SQRT2), 9);
  expect(crestRoom(mono, 12)).toBeCloseTo(dB(Math.SQRT2), 9);
});
test('practice: at the limit speech fits under the peak without compression, at +6 dB it must be compressed (common practice, no source)', () => {
  expect(crestRoom(stereo, 0)).toBeGreaterThan(12);
  expect(crestRoom(stereo, 6)).toBeLessThan(12);
});
test('practice: pre-emphasis makes the sent speech brighter than the talker (common practice, no source)', () => {
  const flat = speechBandSwing({ ...mono, preEmphasis: 0 }, 0);
  const sent = speechBandSwing(mono, 0);
  expect(dB(sent[17]! / flat[17]!)).toBeGreaterThan(5);
  expect(sent[2]!).toBeLessThan(flat[2]!);
});
test('property: finite and never negative for any station and level', () => {
  fc.assert(
    fc.property(
      fc.oneof(
        fc.record({
          kind: fc.constant('fm' as const),
          deviation: fc.double({ min: 1e3, max: 1e5, noNaN: true }),
          preEmphasis: fc.double({ min: 0, max: 1e-4, noNaN: true }),
          stereo: fc.boolean(),
        }),
        fc.record({ kind: fc.constant('am' as const), depth: fc.double({ min: 0.01, max: 1, noNaN: true }) }),
      ),
      fc.double({ min: -60, max: 12, noNaN: true }),
      (m, level) => {
        for (const x of speechBandSwing(m, level)) expect(Number.isFinite(x) && x >= 0).toBe(true);
        expect(crestRoom(m, level)).toBeGreaterThan(3);
        const figures = programmeFigures(m, { tone: 1000, level });
        expect(new Set(figures.map((f) => f.name)).size).toBe(figures.length);
        for (const f of figures) expect(f.value === null || Number.isFinite(f.value), f.name).toBe(true);
      },
    ),
  );
});
describe('what cannot be is refused', () => {
  for (const level of [12.1, Number.NaN, Number.POSITIVE_INFINITY])
    test(`level ${level}`, () => {
      expect(() => programmeSwing(mono, level)).toThrow(GivenError);
      expect(() => speechBandSwing(am, level)).toThrow(/programme.level/);
    });
});
