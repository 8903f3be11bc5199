import fc from 'fast-check';
import { expect, test } from 'vitest';
import { equalLoudnessContour, phonsFromSones, sonesFromPhons, toneLoudnessLevel, ZWICKER_BANDS, zwickerLoudness } from '#engine';

/** Third-octave levels of a tone as third-order band filters pass it. */
const tone = (frequency: number, level: number): number[] => {
  const quality = 1 / (10 ** 0.05 - 10 ** -0.05);
  return Array.from({ length: 28 }, (_, i) => {
    const centre = 1000 * 10 ** ((i - 16) / 10);
    return level - 10 * Math.log10(1 + ((frequency / centre - centre / frequency) * quality) ** 6);
  });
};

test('published: ISO 532-1:2017 Annex B.2, machine noise by third octaves (levels from a public transcription), 83.296 sone (from memory)', () => {
  const levels = [-60, -60, 78, 79, 89, 72, 80, 89, 75, 87, 85, 79, 86, 80, 71, 70, 72, 71, 72, 74, 69, 65, 67, 77, 68, 58, 45, 30];
  expect(levels).toHaveLength(ZWICKER_BANDS.length);
  expect(zwickerLoudness(levels)).toBeCloseTo(83.296, 3);
});
test('published: a 1 kHz tone of 40 dB has one sone, within 5 % (definition, ISO 532-1)', () => {
  expect(zwickerLoudness(tone(1000, 40))).toBeCloseTo(1, 1);
});
test('limit: silence has no loudness, nor has what lies below threshold', () => {
  expect(zwickerLoudness(ZWICKER_BANDS.map(() => -60))).toBe(0);
  expect(zwickerLoudness(tone(1000, 2))).toBe(0);
});
test('rival: tones by ISO 532-1 (which follows the contours of 1987) against ISO 226:2023, 40 to 80 phon, 500 Hz to 4 kHz, within 6 phon', () => {
  for (const f of [500, 1000, 2000, 4000])
    for (const phon of [40, 60, 80]) {
      const level = equalLoudnessContour(f, phon);
      expect(Math.abs(phonsFromSones(zwickerLoudness(tone(f, level))) - phon), `${f} Hz, ${phon} phon`).toBeLessThan(6);
    }
});
test('identity: loudness does not fall when a band rises, nor rise with a hearing loss, beyond the steps of the tables', () => {
  const levels = fc.array(fc.double({ min: -20, max: 100, noNaN: true }), { minLength: 28, maxLength: 28 });
  fc.assert(
    fc.property(
      levels,
      fc.nat(27),
      fc.double({ min: 0, max: 20, noNaN: true }),
      fc.double({ min: 0, max: 60, noNaN: true }),
      (l, i, up, loss) => {
        const before = zwickerLoudness(l);
        expect(before).toBeGreaterThanOrEqual(0);
        // the tables of the standard are stepped: a band that moves between two slopes may lose a few parts in a hundred
        expect(zwickerLoudness(l.map((x, k) => (k === i ? x + up : x)))).toBeGreaterThanOrEqual(0.93 * before);
        expect(zwickerLoudness(l, new Float64Array(20).fill(loss))).toBeLessThanOrEqual(1.07 * before);
      },
    ),
    { numRuns: 300 },
  );
});
test('identity: sone and phon are each other’s way back', () => {
  fc.assert(
    fc.property(fc.double({ min: 4, max: 120, noNaN: true }), (phon) => {
      expect(phonsFromSones(sonesFromPhons(phon))).toBeCloseTo(phon, 9);
    }),
  );
});
test('identity: contour and loudness level of a tone are each other’s way back, both editions', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 20, max: 12_500, noNaN: true }),
      fc.double({ min: 5, max: 100, noNaN: true }),
      fc.constantFrom<2003 | 2023>(2003, 2023),
      (f, phon, edition) => {
        const back = toneLoudnessLevel(f, equalLoudnessContour(f, phon, edition), edition)!;
        // 2003 prints a rounded 94 dB one way and not the other
        expect(Math.abs(back - phon)).toBeLessThan(edition === 2023 ? 1e-7 : 0.05);
      },
    ),
  );
});
test('limit: a 1 kHz tone has as many phon as decibels (definition), to 0.05 phon', () => {
  for (let level = 20; level <= 90; level += 10) {
    expect(Math.abs(toneLoudnessLevel(1000, level)! - level)).toBeLessThan(0.05);
    expect(Math.abs(toneLoudnessLevel(1000, level, 2003)! - level)).toBeLessThan(0.05);
  }
});
test('limit: below the threshold a tone has no loudness level', () => {
  expect(toneLoudnessLevel(1000, 2.39)).toBeNull();
  expect(toneLoudnessLevel(1000, 2.41)).not.toBeNull();
  expect(toneLoudnessLevel(100, 26)).toBeNull();
});
test('published: the two editions differ by at most 0.20 dB at 40 phon (stated with the tables)', () => {
  const differences = [
    20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000,
  ].map((f) => Math.abs(equalLoudnessContour(f, 40, 2023) - equalLoudnessContour(f, 40, 2003)));
  expect(Math.max(...differences)).toBeLessThan(0.205);
});
