import { GivenError } from '../given-error.ts';
import type { DetectorDescription } from './description.ts';

type Junction = Extract<DetectorDescription, { kind: 'junction' }>;
type ChannelDescription = Extract<DetectorDescription, { kind: 'channel' }>;
type Table = Extract<DetectorDescription, { kind: 'table' }>;

/** @throws GivenError with the path of the first thing that cannot be */
export function checkDetector(description: DetectorDescription): void {
  within('temperature', description.temperature, 'K', 1, 1000, 'Give the temperature of the detector in kelvin, near 295 K indoors.');
  if (description.kind === 'junction') checkJunction(description);
  else if (description.kind === 'channel') checkChannel(description);
  else checkTable(description);
}

function within(key: string, value: number, unit: string, least: number, most: number, mend: string): void {
  if (value >= least && value <= most) return;
  const why = Number.isNaN(value) ? 'it is not a number' : `it lies outside ${least} to ${most} ${unit}`;
  throw new GivenError(`detector.${key}`, `${value} ${unit}`, why, mend);
}

function resistance(value: number): void {
  within('seriesResistance', value, 'ohm', 0, 1e9, 'Give the resistance in series with the detector, zero if it is not known.');
}

function capacitance(key: string, value: number): void {
  within(key, value, 'F', 0, 1e-6, 'Give the capacitance in farads; a VHF detector has 0.1 to 5 pF.');
}

function checkJunction(j: Junction): void {
  within(
    'saturationCurrent',
    j.saturationCurrent,
    'A',
    1e-20,
    1,
    'Give the current the exponential law starts from: 1e-14 A (silicon) to 1e-5 A.',
  );
  within('ideality', j.ideality, '', 0.5, 20, 'Give the ideality factor, 1 to 2 for most junctions.');
  within(
    'nominalTemperature',
    j.nominalTemperature,
    'K',
    1,
    1000,
    'Give the temperature at which the saturation current holds, mostly 298 or 300 K.',
  );
  if (j.energyGap !== undefined)
    within('energyGap', j.energyGap, 'eV', 0, 10, 'Give the barrier in electronvolts: 0.69 Schottky, 1.11 silicon.');
  if (j.temperatureExponent !== undefined)
    within('temperatureExponent', j.temperatureExponent, '', -20, 20, 'Give 2 for a Schottky, 3 for a p-n junction.');
  resistance(j.seriesResistance);
  capacitance('junctionCapacitance', j.junctionCapacitance);
}

function checkChannel(c: ChannelDescription): void {
  within('threshold', c.threshold, 'V', -100, 100, 'Give the gate voltage at which the channel opens; negative for a depletion type.');
  within(
    'transconductanceFactor',
    c.transconductanceFactor,
    'A/V^2',
    1e-12,
    1e3,
    'Give beta = 2 Idss/Vth^2 of a depletion type, or from the conductance above threshold.',
  );
  within('slopeFactor', c.slopeFactor, '', 1, 20, 'Give the weak-inversion slope factor, 1 to 2.');
  within('gateDrive', c.gateDrive, '', -1, 1, 'Give the share of the drain RF on the gate: 0 none, 1 the gate tied to the tank.');
  within('gateBias', c.gateBias, 'V', -100, 100, 'Give the steady gate voltage against the output.');
  resistance(c.seriesResistance);
  capacitance('gateCapacitance', c.gateCapacitance);
  capacitance('drainCapacitance', c.drainCapacitance);
}

const FEWEST_ROWS = 5;
const MOST_ROWS = 100_000;

function checkTable(t: Table): void {
  const { voltage, current } = t;
  const rows = voltage.length;
  if (rows !== current.length)
    throw new GivenError('detector.current', `${current.length} values`, `there are ${rows} voltages`, 'Give one current to each voltage.');
  if (rows < FEWEST_ROWS || rows > MOST_ROWS)
    throw new GivenError(
      'detector.voltage',
      `${rows} rows`,
      `a law needs ${FEWEST_ROWS} to ${MOST_ROWS} of them`,
      'Measure from some -0.3 V to 0.3 V in steps of 10 mV, finer about zero.',
    );
  for (let k = 0; k < rows; k++) checkRow(t, k);
  if (voltage[0]! >= 0 || voltage[rows - 1]! <= 0)
    throw new GivenError(
      'detector.voltage',
      `${voltage[0]} V to ${voltage[rows - 1]} V`,
      'the table must reach to both sides of 0 V, where weak signals work',
      'Measure some rows in the other direction too.',
    );
  const after = voltage.findIndex((v) => v > 0);
  const before = voltage[after - 1] === 0 ? after - 2 : after - 1;
  if (!(current[after]! > 0 && current[before]! < 0))
    throw new GivenError(
      `detector.current[${current[after]! > 0 ? before : after}]`,
      '0 A',
      `the table is flat about 0 V (rows ${before + 1} to ${after + 1}), so it says nothing about weak signals`,
      'Measure with a finer ammeter, or leave out the rows in which it did not move.',
    );
  capacitance('capacitance', t.capacitance);
  resistance(t.seriesResistance);
}

function checkRow({ voltage, current }: Table, k: number): void {
  const v = voltage[k]!;
  const i = current[k]!;
  const row = `row ${k + 1}`;
  for (const [key, value, unit] of [
    ['voltage', v, 'V'],
    ['current', i, 'A'],
  ] as const)
    if (!Number.isFinite(value))
      throw new GivenError(`detector.${key}[${k}]`, `${value} ${unit}`, `${row} is not a number`, 'Correct or drop the row.');
  if (k > 0 && !(v > voltage[k - 1]!))
    throw new GivenError(
      `detector.voltage[${k}]`,
      `${v} V`,
      `${row} does not lie above the row before it (${voltage[k - 1]} V)`,
      'Sort the rows by voltage and give each voltage once.',
    );
  if (k > 0 && !(i >= current[k - 1]!))
    throw new GivenError(
      `detector.current[${k}]`,
      `${i} A`,
      `${row} falls below the row before it (${current[k - 1]} A), and a law that falls has no single answer`,
      'Measure it again, or smooth the readings; a region of negative resistance cannot be used here.',
    );
  if (i * v < 0 || (v === 0 && i !== 0))
    throw new GivenError(
      `detector.current[${k}]`,
      `${i} A`,
      `${row} would deliver power (${v} V), which a body without a battery cannot`,
      "Subtract the meters' offset so that the current is zero at 0 V.",
    );
}
