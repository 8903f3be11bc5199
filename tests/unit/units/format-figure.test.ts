import { expect, test } from 'vitest';
import { formatFigure } from '#units';

const rows: readonly (readonly [number | null, string, string])[] = [
  [null, 'H', 'none'],
  [1.2e-11, 'F', '12 pF'],
  [1.2345678e-7, 'H', '123.5 nH'],
  [999.99e3, 'Hz', '1 MHz'],
  [98.4e6, 'Hz', '98.4 MHz'],
  [40e3, 'ohm', '40 kΩ'],
  [0, 'V rms', '0 V rms'],
  [0.000123456, 'V/m rms', '123.5 µV/m rms'],
  [3.1e-9, 'W', '3.1 nW'],
  [1500, 'm', '1.5 km'],
  [65.4321e6, 'm', '65430 km'],
  [55.25, 'dB re 1 uV/m', '55.3 dB re 1 µV/m'],
  [-0.04, 'dB', '0.0 dB'],
  [81.26, 'dB SPL', '81.3 dB SPL'],
  [41.2, 'phon', '41.2 phon'],
  [0.5, 'rad', '28.6°'],
  [12345, 'Hz/rad', '0.2155 kHz/°'],
  [293.15, 'K', '293.1 K'],
  [7.854e-5, 'm^2', '7.854e-5 m²'],
  [0.12345678, '1', '0.1235'],
  [1.5e9, '1', '1.5e9'],
  [2.5e-9, 'Pa/V', '2.5 nPa/V'],
  [2e-13, 'F', '0.2 pF'],
  [1e-20, 'F', '1e-8 pF'],
];
for (const [value, unit, text] of rows) test(`${value} ${unit} is shown as ${text}`, () => expect(formatFigure(value, unit)).toBe(text));

test('a figure that is no number is refused, and never shown as NaN', () => {
  expect(() => formatFigure(Number.NaN, 'H')).toThrow(RangeError);
  expect(() => formatFigure(Number.NEGATIVE_INFINITY, 'dB')).toThrow(RangeError);
});
