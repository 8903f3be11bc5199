import { expect, test } from 'vitest';
import { type DetectorDescription, detectorModel, GivenError } from '#engine';
import { CHANNEL, measured, SCHOTTKY } from './cycle.ts';

test.each([
  ['temperature', { ...SCHOTTKY, temperature: 0 }],
  ['temperature', { ...CHANNEL, temperature: Number.NaN }],
  ['saturationCurrent', { ...SCHOTTKY, saturationCurrent: 0 }],
  ['saturationCurrent', { ...SCHOTTKY, saturationCurrent: -1e-6 }],
  ['saturationCurrent', { ...SCHOTTKY, saturationCurrent: Number.POSITIVE_INFINITY }],
  ['ideality', { ...SCHOTTKY, ideality: 0.1 }],
  ['seriesResistance', { ...SCHOTTKY, seriesResistance: -1 }],
  ['junctionCapacitance', { ...SCHOTTKY, junctionCapacitance: -1e-12 }],
  ['nominalTemperature', { ...SCHOTTKY, nominalTemperature: 0 }],
  ['energyGap', { ...SCHOTTKY, energyGap: -0.1 }],
  ['temperatureExponent', { ...SCHOTTKY, temperatureExponent: Number.NaN }],
  ['temperature', { ...SCHOTTKY, energyGap: 1.1, temperature: 5 }],
  ['threshold', { ...CHANNEL, threshold: Number.NaN }],
  ['transconductanceFactor', { ...CHANNEL, transconductanceFactor: 0 }],
  ['slopeFactor', { ...CHANNEL, slopeFactor: 0.5 }],
  ['gateDrive', { ...CHANNEL, gateDrive: 1.5 }],
  ['gateBias', { ...CHANNEL, gateBias: 1e6 }],
  ['gateCapacitance', { ...CHANNEL, gateCapacitance: -1 }],
  ['drainCapacitance', { ...CHANNEL, drainCapacitance: 1 }],
  ['seriesResistance', { ...CHANNEL, seriesResistance: Number.NaN }],
  ['capacitance', { ...measured(0.01), capacitance: -1e-13 }],
  ['seriesResistance', { ...measured(0.01), seriesResistance: -2 }],
] as const satisfies readonly (readonly [string, DetectorDescription])[])(
  '%s that cannot be is refused with its path',
  (key, description) => {
    let thrown: unknown;
    try {
      detectorModel(description);
    } catch (e) {
      thrown = e;
    }
    expect(thrown).toBeInstanceOf(GivenError);
    expect((thrown as GivenError).path).toBe(`detector.${key}`);
    expect((thrown as GivenError).message).not.toMatch(/undefined/);
  },
);
test('the same description gives the same model, so that its table is built once', () => {
  expect(detectorModel(SCHOTTKY)).toBe(detectorModel(SCHOTTKY));
  expect(detectorModel({ ...SCHOTTKY })).not.toBe(detectorModel(SCHOTTKY));
});
