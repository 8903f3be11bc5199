import { describe, expect, test } from 'vitest';
import { type DimensionName, readQuantity } from '#units';

type Row = readonly [given: string | number, dimension: DimensionName, value: number];

function reads(rows: readonly Row[]): void {
  for (const [given, dimension, value] of rows)
    test(`${JSON.stringify(given)} as ${dimension}`, () => {
      const reading = readQuantity(given, dimension);
      expect(reading).toEqual({ ok: true, value: expect.closeTo(value, 12) });
      // closeTo has an absolute tolerance; small quantities need a relative one
      if (reading.ok) expect(Math.abs(reading.value - value)).toBeLessThanOrEqual(1e-12 * Math.abs(value));
    });
}

describe('published: SI brochure, 9th edition, table 7, prefixes', () => {
  reads([
    ['12 pF', 'capacitance', 12e-12],
    ['12pF', 'capacitance', 12e-12],
    ['4.7n', 'capacitance', 4.7e-9],
    ['0.1 uF', 'capacitance', 1e-7],
    ['0.1 µF', 'capacitance', 1e-7],
    ['0.1 \u03bcF', 'capacitance', 1e-7],
    ['120 nH', 'inductance', 120e-9],
    ['2.5 henries', 'inductance', 2.5],
    ['98.4 MHz', 'frequency', 98.4e6],
    ['98.4M', 'frequency', 98.4e6],
    ['909 kHz', 'frequency', 909e3],
    ['909 KHz', 'frequency', 909e3],
    ['10 kW', 'power', 1e4],
    ['1 MW', 'power', 1e6],
    ['1 mW', 'power', 1e-3],
    ['50 us', 'time', 50e-6],
    ['5 mS/m', 'conductivity', 5e-3],
    ['2 mV/m', 'field', 2e-3],
    ['1.5 mA/V²', 'transconductanceFactor', 1.5e-3],
    ['0.5 mohm', 'resistance', 5e-4],
    ['470 k', 'resistance', 470e3],
    ['470K', 'resistance', 470e3],
    ['2.2 M', 'resistance', 2.2e6],
    ['32 Ω', 'resistance', 32],
    ['32 \u2126', 'resistance', 32],
    ['1e-3 m', 'length', 1e-3],
  ]);
});

describe('published: NIST SP 811 (2008), appendix B.8: inch, foot, mile, yard exact', () => {
  reads([
    ['1 in', 'length', 0.0254],
    ['1 1/4 in', 'length', 0.03175],
    ['1-1/4 in', 'length', 0.03175],
    ['1¼″', 'length', 0.03175],
    ['3/4"', 'length', 0.01905],
    ['1 ft', 'length', 0.3048],
    ['5 ft 3 in', 'length', 1.6002],
    ['5\' 3 1/2"', 'length', 1.6129],
    ['20 thou', 'diameter', 0.508e-3],
    ['2 miles', 'length', 3218.688],
    ['1 yd', 'length', 0.9144],
  ]);
});

describe('published: NIST SP 811 (2008), 8.5 and B.8, temperatures', () => {
  reads([
    ['20 °C', 'temperature', 293.15],
    ['20 C', 'temperature', 293.15],
    ['-40 °C', 'temperature', 233.15],
    ['-40 °F', 'temperature', 233.15],
    ['68 F', 'temperature', 293.15],
    ['32 °F', 'temperature', 273.15],
    ['293.15 K', 'temperature', 293.15],
    [293.15, 'temperature', 293.15],
  ]);
});

describe('published: IEC 60027-3 and ITU-R V.574, level of a quantity over its reference', () => {
  reads([
    ['30 dBW', 'power', 1000],
    ['0 dBm', 'power', 1e-3],
    ['-30 dBm', 'power', 1e-6],
    ['60 dBuV/m', 'field', 1e-3],
    ['60 dBµV/m', 'field', 1e-3],
    ['0 dBu', 'field', 1e-6],
    ['94 dB SPL', 'soundLevel', 94],
    ['94', 'soundLevel', 94],
    ['30 dB(A)', 'weightedLevel', 30],
    ['30 dBA', 'weightedLevel', 30],
    ['20 dB HL', 'hearingLevel', 20],
    ['-6 dB', 'decibels', -6],
    ['\u22126 dB', 'decibels', -6],
    ['0.1 dB/m', 'lineLoss', 0.1],
    ['12 dB/100 m', 'lineLoss', 0.12],
    ['3.048 dB/100 ft', 'lineLoss', 0.1],
  ]);
});

describe('published: ITU-R BS.561, half-wave dipole 2.15 dB over isotropic', () => {
  reads([
    ['2.15 dBi', 'gain', 2.15],
    ['0 dBd', 'gain', 2.15],
    ['6 dBd', 'gain', 8.15],
  ]);
});

describe('published: IEC 60062, the prefix in place of the decimal point', () => {
  reads([
    ['4k7', 'resistance', 4700],
    ['4R7', 'resistance', 4.7],
    ['2M2', 'resistance', 2.2e6],
    ['3p3', 'capacitance', 3.3e-12],
    ['4n7', 'capacitance', 4.7e-9],
  ]);
});

describe('angles and places on the globe, by definition', () => {
  const degree = Math.PI / 180;
  reads([
    ['180°', 'angle', Math.PI],
    ['180 degrees', 'angle', Math.PI],
    ['1.5 rad', 'angle', 1.5],
    ["45°30'", 'angle', 45.5 * degree],
    ['N', 'bearing', 0],
    ['NNE', 'bearing', 22.5 * degree],
    ['nw', 'bearing', 315 * degree],
    ['south-west', 'bearing', 225 * degree],
    ['045', 'bearing', 45 * degree],
    ['-45°', 'bearing', -45 * degree],
    ['52°30\'15"N', 'latitude', (52 + 30 / 60 + 15 / 3600) * degree],
    ['52° 30′ 15″ N', 'latitude', (52 + 30 / 60 + 15 / 3600) * degree],
    ['52.5 S', 'latitude', -52.5 * degree],
    ['-1.5', 'longitude', -1.5 * degree],
    ["1°30'W", 'longitude', -1.5 * degree],
    ["-1°30'", 'longitude', -1.5 * degree],
    [0, 'longitude', 0],
  ]);
});

describe('turns and pure numbers', () => {
  reads([
    ['5.5', 'turns', 5.5],
    ['5 1/2', 'turns', 5.5],
    ['5½', 'turns', 5.5],
    ['2 1/2 turns', 'turns', 2.5],
    ['1 turn', 'turns', 1],
    [5.5, 'turns', 5.5],
    ['80 %', 'ratio', 0.8],
    ['20:1', 'ratio', 20],
    ['1:4', 'ratio', 0.25],
    ['1/4', 'ratio', 0.25],
    ['10e-4', 'ratio', 1e-3],
  ]);
});

describe('decimal comma where it can mean nothing else', () => {
  reads([
    ['0,5 mm', 'length', 5e-4],
    ['98,4 MHz', 'frequency', 98.4e6],
    ['0,125 mm', 'length', 0.125e-3],
    ['12,5 pF', 'capacitance', 12.5e-12],
    ['1234,567 m', 'length', 1234.567],
    ['1.234,5 m', 'length', 1234.5],
    ['1,234.5 m', 'length', 1234.5],
    ['1,234,567 Hz', 'frequency', 1234567],
    [',5 mm', 'length', 5e-4],
  ]);
});

test('a decimal prefix costs no bit: 12 pF is the number nearest to 1.2e-11', () => {
  for (const [text, value] of [
    ['12 pF', 1.2e-11],
    ['0.3 nF', 3e-10],
    ['1234.5678 pF', 1.2345678e-9],
  ] as const)
    expect(readQuantity(text, 'capacitance')).toEqual({ ok: true, value });
});
