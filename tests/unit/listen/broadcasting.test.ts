import { expect, test } from 'vitest';
import { broadcasting, modulator, type Reception, type SentProgramme, sentSound, sentTone } from '#engine';

/** A sound that tells where in it one is: it rises by 1e-6 a sample. */
const ramp: SentProgramme = sentSound(() => {
  let at = 0;
  return {
    rate: 48_000,
    next: (left, right) => {
      for (let n = 0; n < left.length; n++) left[n] = right[n] = 1e-6 * at++;
    },
  };
}, 0);
const AM = { kind: 'am', depth: 0.8 } as const;
const signals = ['wanted', 'first', 'second'].map((name) => ({ received: { station: { name, modulation: AM } } }));
const reception = { signals } as unknown as Reception;

test('the wanted programme begins at its beginning, every other 7 s further on, as a sound read so far from its start', () => {
  const begins: number[] = [];
  const listened: SentProgramme = {
    ...ramp,
    audio: (seed) => {
      const source = ramp.audio(seed);
      return {
        rate: source.rate,
        next: (left, right) => {
          source.next(left, right);
          begins.push(left[0]!);
        },
      };
    },
  };
  const air = broadcasting(reception, { wanted: 0, seed: 3, sent: () => listened });
  for (const [k, seconds] of [
    [0, 0],
    [1, 14],
    [2, 21],
  ] as const) {
    begins.length = 0;
    const { source } = air(k, 96_000, 0);
    source.next(new Float64Array(96), new Float64Array(96));
    // the first block that is heard, after those that were skipped
    const skipped = Math.ceil((seconds * 48_000) / 4096);
    expect(begins[skipped]).toBeCloseTo(1e-6 * seconds * 48_000, 12);
  }
});

test('a test tone begins at once, at rated swing, on whichever station', () => {
  const sent = sentTone(1000);
  const air = broadcasting(reception, { wanted: 0, seed: 0, sent: () => sent });
  const [a, b] = [0, 1].map((k) => {
    const [re, im] = [new Float64Array(960), new Float64Array(960)];
    air(k, 96_000, 0).source.next(re, im);
    return re;
  });
  expect(b).toEqual(a);
  const own = modulator(sent.audio(0), AM, 96_000, { drive: sent.drive(AM) });
  const [re, im] = [new Float64Array(960), new Float64Array(960)];
  own.next(re, im);
  expect(a).toEqual(re);
  // after the filters have filled: depth 0.8 either way
  expect(Math.max(...re.slice(480))).toBeCloseTo(1.8, 2);
});
