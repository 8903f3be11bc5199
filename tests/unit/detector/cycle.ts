import { brent, type DescribingFunction, type DetectorDescription, MEAN } from '#engine';

/** Mean and in-phase fundamental by nothing but the law itself at 4096 points of the cycle. */
export function bruteAverage(
  law: DescribingFunction,
  amplitude: number,
  output: number,
  points = 4096,
): { mean: number; fundamental: number } {
  let mean = 0;
  let fundamental = 0;
  for (let k = 0; k < points; k++) {
    const c = Math.cos(((k + 0.5) * Math.PI) / points);
    const i = law.current(amplitude * c - output, output);
    mean += i / points;
    fundamental += (2 * i * c) / points;
  }
  return { mean, fundamental };
}

/** Output voltage into a load [ohm], or with nothing connected. */
export function outputInto(law: DescribingFunction, amplitude: number, load = Number.POSITIVE_INFINITY): number {
  const out = new Float64Array(6);
  return brent(
    (v) => {
      law.at(amplitude, v, out);
      return out[MEAN]! - v / load;
    },
    -2 * amplitude,
    2 * amplitude,
  )!;
}

/** A low-barrier Schottky junction, rounded numbers. */
export const SCHOTTKY = {
  kind: 'junction',
  saturationCurrent: 5e-6,
  ideality: 1.05,
  seriesResistance: 0,
  junctionCapacitance: 1.4e-13,
  nominalTemperature: 300,
  temperature: 300,
} as const satisfies DetectorDescription;

export const CHANNEL = {
  kind: 'channel',
  threshold: 0,
  transconductanceFactor: 4e-5,
  slopeFactor: 1.4,
  gateDrive: 1,
  gateBias: 0,
  gateCapacitance: 2e-12,
  drainCapacitance: 3e-12,
  seriesResistance: 0,
  temperature: 300,
} as const satisfies DetectorDescription;

/** A table as a bench would give it: an exponential junction read every `step` volts from -0.3 V to 0.2 V. */
export function measured(step: number): Extract<DetectorDescription, { kind: 'table' }> {
  const voltage: number[] = [];
  for (let k = Math.round(-0.3 / step); k <= Math.round(0.2 / step); k++) voltage.push(k * step);
  return {
    kind: 'table',
    voltage,
    current: voltage.map((v) => 5e-6 * Math.expm1(v / 0.0271)),
    capacitance: 1.4e-13,
    seriesResistance: 20,
    temperature: 300,
  };
}

/** One of each kind of law, mild and extreme. */
export const EVERY_LAW: Readonly<Record<string, DetectorDescription>> = {
  junction: SCHOTTKY,
  'junction with 20 ohm': { ...SCHOTTKY, seriesResistance: 20 },
  'junction with 2 kohm': { ...SCHOTTKY, seriesResistance: 2000 },
  'faint junction with 1 ohm': { ...SCHOTTKY, saturationCurrent: 1e-14, ideality: 1.8, seriesResistance: 1 },
  'channel, gate on the tank': CHANNEL,
  'channel, gate still': { ...CHANNEL, gateDrive: 0, gateBias: 0.2 },
  'channel, weak inversion': { ...CHANNEL, gateBias: -0.4 },
  'channel, gate opposed, with 200 ohm': { ...CHANNEL, gateDrive: -1, gateBias: 0.1, seriesResistance: 200 },
  'depletion channel': { ...CHANNEL, threshold: -2, gateBias: -1.8, transconductanceFactor: 3e-3, slopeFactor: 1.2, seriesResistance: 30 },
  'table, 10 mV': measured(0.01),
  'table, 50 mV': measured(0.05),
};
