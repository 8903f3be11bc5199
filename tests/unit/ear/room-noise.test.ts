import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  aWeightedLevel,
  NC_OCTAVES,
  NR_OCTAVES,
  noiseCriterionLevels,
  noiseCriterionRating,
  noiseRating,
  noiseRatingLevels,
  octaveLevel,
  ROOM_BANDS,
  roomBandLevel,
} from '#engine';

test('identity: the thirds of each octave of a noise criterion curve add to its level', () => {
  for (const rating of [10, 15, 22.5, 40, 70, 75]) {
    const level = roomBandLevel({ kind: 'noise-criterion', rating });
    const curve = noiseCriterionLevels(rating);
    NC_OCTAVES.forEach((f, i) => void expect(octaveLevel(level, f), `NC-${rating}, ${f} Hz`).toBeCloseTo(curve[i]!, 9));
  }
});
test('identity: a spectrum that is a curve has that curve’s rating', () => {
  fc.assert(
    fc.property(fc.double({ min: 5, max: 75, noNaN: true }), (rating) => {
      expect(noiseCriterionRating(noiseCriterionLevels(rating))).toBeCloseTo(rating, 6);
      expect(noiseRating(noiseRatingLevels(rating))).toBeCloseTo(rating, 6);
    }),
  );
});
test('limit: one octave that stands out sets the rating', () => {
  const levels = noiseCriterionLevels(20);
  levels[4] = noiseCriterionLevels(35)[4]!;
  expect(noiseCriterionRating(levels)).toBeCloseTo(35, 9);
  const nr = noiseRatingLevels(20);
  nr[3] = noiseRatingLevels(28)[3]!;
  expect(noiseRating(nr)).toBeCloseTo(28, 9);
  expect(nr).toHaveLength(NR_OCTAVES.length);
});
test('identity: an A-weighted room has the A-weighted level that was given', () => {
  for (const level of [10, 30, 55]) {
    const room = roomBandLevel({ kind: 'a-weighted', level });
    expect(aWeightedLevel(ROOM_BANDS, ROOM_BANDS.map(room))).toBeCloseTo(level, 9);
  }
});
test('rival: NC-25 is 35.6 dB(A) by octaves; by its thirds within 0.5 dB', () => {
  const room = roomBandLevel({ kind: 'noise-criterion', rating: 25 });
  expect(Math.abs(aWeightedLevel(ROOM_BANDS, ROOM_BANDS.map(room)) - 35.57)).toBeLessThan(0.5);
});
test('limit: thirds are taken as given, octaves are shared among their thirds, and both are carried on outside', () => {
  const thirds = roomBandLevel({
    kind: 'bands',
    bands: [
      { frequency: 800, level: 30 },
      { frequency: 1000, level: 30 },
    ],
  });
  expect(thirds(800)).toBeCloseTo(30, 9);
  expect(thirds(500)).toBeCloseTo(30 + 5 * Math.log2(800 / 500), 9);
  const octaves = roomBandLevel({
    kind: 'bands',
    bands: [
      { frequency: 500, level: 30 },
      { frequency: 1000, level: 30 },
      { frequency: 2000, level: 30 },
    ],
  });
  expect(octaves(1000)).toBeCloseTo(30 - 10 * Math.log10(3), 9);
  expect(octaveLevel(octaves, 2000)).toBeCloseTo(30, 9);
});
