import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DIMENSIONS, type DimensionName, readQuantity, writeExact, writeForPeople } from '#units';

const names = Object.keys(DIMENSIONS) as DimensionName[];
const anyNumber = fc.double({ noNaN: true, noDefaultInfinity: true });
/** Numbers such as people write: a few digits, over many powers of ten. */
const handy = fc.tuple(fc.integer({ min: -99999, max: 99999 }), fc.integer({ min: -18, max: 9 })).map(([m, e]) => Number(`${m}e${e}`));

describe('round trip: reading what was written exactly gives the same bits', () => {
  for (const name of names)
    test(name, () => {
      fc.assert(
        fc.property(fc.oneof(anyNumber, handy), (x) => {
          const reading = readQuantity(writeExact(x, name), name);
          return reading.ok && Object.is(reading.value, x);
        }),
        { numRuns: 2000 },
      );
    });
});

describe('round trip: what is written for people reads back within its rounding', () => {
  // half a unit in the fourth digit, or of the place shown where the unit has its own zero
  const absolute: Partial<Record<DimensionName, number>> = {
    temperature: 0.0501,
    angle: 0.0501 * (Math.PI / 180),
    bearing: 0.0501 * (Math.PI / 180),
    latitude: 5.01e-5 * (Math.PI / 180),
    longitude: 5.01e-5 * (Math.PI / 180),
    gain: 0.0501,
    decibels: 0.0501,
    soundLevel: 0.0501,
    hearingLevel: 0.0501,
    weightedLevel: 0.0501,
  };
  for (const name of names)
    test(name, () => {
      const scale = name in absolute ? fc.double({ min: -100, max: 100, noNaN: true }) : handy;
      fc.assert(
        fc.property(scale, (x) => {
          const reading = readQuantity(writeForPeople(x, name), name);
          return reading.ok && Math.abs(reading.value - x) <= Math.max(absolute[name] ?? 0, 5.01e-4 * Math.abs(x));
        }),
        { numRuns: 500 },
      );
    });
});

describe('no text and no number reads as anything but a finite number', () => {
  const scraps = fc
    .array(
      fc.constantFrom(
        '1',
        '0',
        '.',
        ',',
        '-',
        '+',
        'e',
        '/',
        ' ',
        ':',
        '°',
        "'",
        '"',
        'p',
        'm',
        'M',
        'F',
        'k',
        'dB',
        'AWG',
        'N',
        'W',
        '9e9',
        '½',
        'W/m',
      ),
      { maxLength: 9 },
    )
    .map((parts) => parts.join(''));
  for (const name of names)
    test(name, () => {
      fc.assert(
        fc.property(fc.oneof(scraps, fc.string({ unit: 'binary', maxLength: 20 }), fc.double(), fc.anything()), (given) => {
          const reading = readQuantity(given, name);
          return reading.ok ? Number.isFinite(reading.value) : reading.why !== '' && reading.mend !== '';
        }),
        { numRuns: 1000 },
      );
    });
});

test('numbers that are none are not written', () => {
  for (const x of [Number.NaN, Number.POSITIVE_INFINITY]) {
    expect(() => writeExact(x, 'length')).toThrow(RangeError);
    expect(() => writeForPeople(x, 'length')).toThrow(RangeError);
  }
});

test('exact writing keeps the unit a person would use', () => {
  const rows: readonly (readonly [number, DimensionName, string])[] = [
    [1.2e-11, 'capacitance', '12 pF'],
    [98.4e6, 'frequency', '98.4 MHz'],
    [293.15, 'temperature', '20 °C'],
    [Math.PI, 'angle', '180°'],
    [-1.5 * (Math.PI / 180), 'longitude', '-1.5°'],
    [0.01905, 'length', '19.05 mm'],
    [5.5, 'turns', '5.5'],
    [1e-30, 'capacitance', '1e-18 pF'],
    [0, 'length', '0 m'],
    [Number.MIN_VALUE, 'length', '5e-315 nm'],
  ];
  for (const [value, name, text] of rows) expect(writeExact(value, name)).toBe(text);
});
