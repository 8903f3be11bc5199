import { expect, test } from 'vitest';
import { drawDialPass } from '#draw';

/** A made-up pass, turned from greater angles to smaller: humps of 60 and 58 dB at 1.2 and 0.8 rad, a dip of 40 dB at 1 rad. */
const LEVELS = [30, 60, 40, 58, 20];
const points = LEVELS.map((level, k) => ({ angle: 1.4 - 0.2 * k, rms: 10 ** (level / 20), level }));
const picture = {
  title: 'A made-up pass',
  points,
  humps: { loudest: [points[1]!, points[3]!], dip: points[2]! },
  reference: 10,
  unit: 'dB SPL',
  carriers: [
    { label: 'Lantern Hill', angle: 1 },
    { label: 'far away', angle: 3 },
  ],
};

test('humps, dip and the carrier between them are marked, levels on the scale that is named; what lies beyond the turn is left out', () => {
  const svg = drawDialPass(picture);
  for (const text of ['70.0 dB SPL', '68.0 dB SPL', '50.0 dB SPL', 'Lantern Hill', 'A made-up pass']) expect(svg).toContain(text);
  expect(svg).not.toContain('far away');
  // the curve runs from left to right, and is described so
  expect(svg).toMatch(/from 30 dB SPL at 34\.4° to 40 dB SPL at 80\.2°|from 30 dB SPL at 34\.\d+ ?° to 40 dB SPL at 80\.\d+ ?°/);
});
test('nothing heard: an empty frame, no marks', () => {
  const svg = drawDialPass({ ...picture, points: [], humps: { loudest: [], dip: null } });
  expect(svg).toContain('A made-up pass');
  expect(svg).not.toContain('NaN');
});
