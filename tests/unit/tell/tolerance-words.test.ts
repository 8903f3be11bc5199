import { describe, expect, test } from 'vitest';
import { mending, type Scatter, type Trim } from '#find';
import { chanceWords, influenceWords, shareWords, toleranceLines, trimRows } from '#tell';

describe('a chance in words', () => {
  test.each([
    [{ value: 0.87, error: 0.021 }, 512, 'in 87 of 100 builds (give or take 2)'],
    [{ value: 0.87, error: 0.004 }, 4096, 'in 87 of 100 builds (give or take less than 1)'],
    [{ value: 0.5, error: null }, 4, 'in 50 of 100 builds (too few yet to say how sure that is)'],
    // never rounded to a certainty that was not counted
    [{ value: 0.998, error: 0.001 }, 512, 'in more than 99 of 100 builds (give or take less than 1)'],
    [{ value: 0.002, error: 0.001 }, 512, 'in fewer than 1 of 100 builds (give or take less than 1)'],
    [{ value: 1, error: 0 }, 64, 'in every one of 64 builds'],
    [{ value: 0, error: 0 }, 64, 'in none of 64 builds'],
    [{ value: 0, error: null }, 0, 'nothing built yet'],
  ])('%j of %i', (estimate, samples, words) => {
    expect(chanceWords(estimate, samples)).toBe(words);
  });

  test('shares', () => {
    expect([0.001, 0.617, 1.02].map(shareWords)).toEqual(['under 1 of 100', '62 of 100', '100 of 100']);
  });
});

const sure = { value: 1, error: 0 };
const TOLERANCE = {
  samples: 64,
  heard: sure,
  understood: sure,
  covers: sure,
  dial: { frequency: 0.0123, place: null, influences: null },
  loudness: { headroom: [8.4, 20.6, 31.5] as const, influences: null },
};

describe('lines', () => {
  test('where the dial stands, in degrees of its rotation: a quarter, a half and three quarters of 180', () => {
    const spread = { place: [0.25, 0.5, 0.75] as const, off: [-420e3, 0, 380e3] as const };
    const text = (k: number) => toleranceLines(TOLERANCE, spread, { station: 'Fen', rotation: Math.PI, reached: 2 })[k]!.text;
    expect(text(2)).toBe('in every one of 64 builds; that is 2 stations');
    expect(text(3)).toBe('45 to 135 degrees in 80 of 100, middle 90 degrees');
    expect(text(4)).toBe('-420 kHz to +380 kHz in 80 of 100, middle 0 Hz (one standard deviation: 1.2 % of the frequency)');
    expect(text(5)).toBe('8 to 32 dB in 80 of 100, middle 21 dB');
  });

  test('what is never reached, never built and never heard is said in words', () => {
    const none = { ...TOLERANCE, loudness: { headroom: null, influences: null } };
    const texts = toleranceLines(none, { place: null, off: null }, { station: 'Fen', rotation: Math.PI, reached: 0 }).map((l) => l.text);
    expect(texts.slice(2)).toEqual([
      'as meant, no station is on the dial',
      'nowhere: it is never reached',
      'nothing that can be built',
      'nothing arrives',
    ]);
  });
});

const scatter = (key: string, ofTheSet = true): Scatter => ({ key, label: `label of ${key}`, extent: '1 %', ofTheSet, apply: (d) => d });
const WAYS: readonly Trim[] = [
  { mends: ['tank.coil'], words: 'squeeze the winding by 1 mm', moves: -200e3, louder: 0.02 },
  { mends: ['tank.coil'], words: 'add half a turn', moves: -900e3, louder: 0.6 },
  { mends: ['tank.coil'], words: 'stretch the winding by 1 mm', moves: 190e3, louder: null },
  { mends: ['tank.joints'], words: 'solder the joints bright', moves: 0, louder: 2 },
];

describe('what matters most, and how it is trimmed', () => {
  test('the dial: one way down and one way up, with how many of them a usual error takes', () => {
    const of = { shares: [0.3, 0.6, 0.1], slopes: [-300e3, 50e3, 1e3], explained: 0.99 };
    const { rows, trust, beyond } = influenceWords(
      [scatter('tank.coil.pitch'), scatter('detector.x'), scatter('ear.y', false)],
      of,
      WAYS,
      'dial',
    );
    expect(rows).toEqual([
      { label: 'label of detector.x', extent: '1 %', share: '60 of 100', deviation: '50 kHz', mends: ['choose another piece'] },
      {
        label: 'label of tank.coil.pitch',
        extent: '1 %',
        share: '30 of 100',
        deviation: '300 kHz',
        // 300 / 200 and 300 / 190
        mends: [
          'tunes too high: squeeze the winding by 1 mm (-200 kHz; a usual error takes 1.5 times as much)',
          'tunes too low: stretch the winding by 1 mm (+190 kHz; a usual error takes 1.6 times as much)',
        ],
      },
    ]);
    expect(trust).toContain('99 of 100');
    // the ear's part of the three
    expect(beyond).toBe('Place and ear have 10 of 100 parts of it: no trimming changes that.');
    expect(influenceWords([], null, WAYS, 'dial')).toEqual({ rows: [], trust: 'Too few sets are built yet to tell.', beyond: '' });
  });

  test('loudness: only what makes it louder, the best first', () => {
    expect(mending(scatter('tank.coil.turns'), WAYS, 'loudness').map((w) => w.words)).toEqual(['add half a turn']);
    expect(mending(scatter('tank.joints.resistance'), WAYS, 'loudness').map((w) => w.words)).toEqual(['solder the joints bright']);
    expect(mending(scatter('tank.joints.resistance'), WAYS, 'dial')).toEqual([]);
  });

  test('a row for each way to trim', () => {
    expect(trimRows(WAYS).map((r) => [r.moves, r.louder])).toEqual([
      ['-200 kHz', 'no change'],
      ['-900 kHz', '+0.6 dB'],
      ['+190 kHz', '-'],
      ['0 Hz', '+2 dB'],
    ]);
  });
});
