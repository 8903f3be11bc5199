import * as z from 'zod/mini';
import { about, quantity, withDefault } from './quantity.ts';

const temperature = withDefault(quantity('temperature', { min: 1, max: 1000 }, 'of the detector'), '20 °C');
const seriesResistance = (what: string) => quantity('resistance', { min: 0, max: 1e9 }, what);
const capacitance = (what: string) => quantity('capacitance', { min: 0, max: 1e-6 }, what);

const junction = z.strictObject({
  kind: z.literal('junction'),
  saturationCurrent: quantity('current', { min: 1e-20, max: 1 }, 'current the exponential law starts from, at nominalTemperature'),
  ideality: withDefault(quantity('ratio', { min: 0.5, max: 20 }, 'ideality factor, 1 to 2 for most junctions'), 1.05),
  seriesResistance: withDefault(seriesResistance('in series with the junction'), '10 ohm'),
  junctionCapacitance: quantity('capacitance', { min: 0, max: 1e-6 }, 'at zero bias'),
  energyGap: z.optional(
    quantity(
      'energy',
      { min: 0, max: 10 },
      'barrier that sets how the saturation current changes with temperature: 0.69 Schottky, 1.11 silicon; if not given it does not change',
    ),
  ),
  temperatureExponent: z.optional(quantity('ratio', { min: -20, max: 20 }, 'exponent of that change: 2 Schottky, 3 p-n junction')),
  nominalTemperature: withDefault(quantity('temperature', { min: 1, max: 1000 }, 'where the saturation current holds'), '25 °C'),
  temperature,
});

const channel = z.strictObject({
  kind: z.literal('channel'),
  threshold: quantity('voltage', { min: -100, max: 100 }, 'gate voltage at which the channel opens; negative for a depletion type'),
  transconductanceFactor: quantity(
    'transconductanceFactor',
    { min: 1e-12, max: 1e3 },
    'beta of i = beta ((vgs - threshold) vds - vds^2/2)',
  ),
  slopeFactor: withDefault(quantity('ratio', { min: 1, max: 20 }, 'weak-inversion slope factor'), 1.5),
  gateDrive: withDefault(quantity('ratio', { min: -1, max: 1 }, 'RF on the gate over RF on the drain; 1: the gate is tied to the tank'), 1),
  gateBias: withDefault(quantity('voltage', { min: -100, max: 100 }, 'steady gate voltage against the output'), 0),
  gateCapacitance: capacitance('gate to the rest'),
  drainCapacitance: capacitance('drain to the rest'),
  seriesResistance: withDefault(seriesResistance('in series with the channel'), 0),
  temperature,
});

const voltage = quantity('voltage', { min: -1000, max: 1000 }, 'voltage from the tank to the output, ascending, to both sides of 0 V');
const current = quantity('current', { min: -1000, max: 1000 }, 'current at that voltage, never falling');
const table = z.strictObject({
  kind: z.literal('table'),
  voltage: z.optional(z.array(voltage)),
  current: z.optional(z.array(current)),
  points: z.optional(
    about(z.array(z.tuple([voltage, current])), 'pairs of voltage and current, in place of the two lists', [['-0.1 V', '-1 uA']]),
  ),
  csv: z.optional(about(z.string(), 'CSV file with a column of voltages and one of currents, in place of the lists', 'diode.csv')),
  capacitance: withDefault(capacitance('of the detector at zero bias'), '0.5 pF'),
  seriesResistance: withDefault(seriesResistance('in series with the capacitance only; the table holds it in the current'), 0),
  temperature,
});

export const detectorForm = about(
  z.discriminatedUnion('kind', [junction, channel, table]),
  'the detector: an exponential junction, a field-effect channel, or a measured table of current against voltage',
);

export type DetectorForm = z.core.output<typeof detectorForm>;
export type DetectorTableForm = Extract<DetectorForm, { kind: 'table' }>;
