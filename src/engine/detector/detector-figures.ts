import { type Figure, term } from '../figure.ts';
import type { DetectorDescription } from './description.ts';
import type { DetectorModel, DetectorNumbers } from './model.ts';
import { capacitanceLoss, crossoverPower, voltageSensitivity } from './small-signal.ts';
import { smallSignalWorkings } from './small-signal-workings.ts';
import { noiseEquivalentPower } from './thermal-noise.ts';
import { thermalVoltage } from './thermal-voltage.ts';

/** Frequency at which the loss in the capacitance is shown [Hz]. */
const SHOWN_FREQUENCY = 100e6;
const COWLEY = 'A. M. Cowley, H. O. Sorensen, IEEE Trans. MTT-14 (1966) 588';

/** Every number of the detector a person may doubt. */
export function detectorFigures({ description, numbers }: DetectorModel): readonly Figure[] {
  return [...ownFigures(description, numbers), ...weakFigures(description, numbers)];
}

function ownFigures(description: DetectorDescription, { saturationCurrent }: DetectorNumbers): Figure[] {
  const vt = thermalVoltage(description.temperature);
  const temperature = term('T', 'temperature', description.temperature, 'K');
  if (description.kind === 'table') return [];
  const n = description.kind === 'junction' ? description.ideality : description.slopeFactor;
  const slope: Figure = {
    name: 'detector.slopeVoltage',
    label: 'voltage by which the current grows e-fold',
    value: n * vt,
    unit: 'V',
    method: description.kind === 'junction' ? 'exponential law' : 'weak inversion',
    working: {
      formula: 'n k T / q',
      terms: [term('n', description.kind === 'junction' ? 'ideality' : 'slope factor', n, '1'), temperature],
      source: 'S. M. Sze, Physics of Semiconductor Devices (2nd ed. 1981), ch. 2; k and q CODATA 2018',
    },
  };
  if (description.kind === 'channel') return [slope];
  const scaled = description.energyGap !== undefined;
  return [
    {
      name: 'detector.saturationCurrent',
      label: 'saturation current at this temperature',
      value: saturationCurrent,
      unit: 'A',
      method: scaled ? 'scaled with temperature' : 'as given',
      working: {
        formula: scaled
          ? 'Is(T) = Is(T0) (T/T0)^(X/n) exp((Eg/n) (q/(k T0) - q/(k T)))'
          : 'Is as given: no barrier was given to scale it by',
        terms: [
          term('Is(T0)', 'saturation current as given', description.saturationCurrent, 'A'),
          term('T0', 'temperature at which it holds', description.nominalTemperature, 'K'),
          temperature,
          ...(scaled
            ? [term('Eg', 'barrier', description.energyGap ?? null, 'eV'), term('X', 'exponent', description.temperatureExponent ?? 0, '1')]
            : []),
        ],
        source: 'S. M. Sze, Physics of Semiconductor Devices (2nd ed. 1981), ch. 2 and 5',
        holds: 'about 200 to 400 K',
      },
    },
    slope,
  ];
}

function weakFigures(description: DetectorDescription, numbers: DetectorNumbers): Figure[] {
  const { weak, method, source, capacitance, capacitanceResistance } = numbers;
  const resistance = term('R', 'resistance at zero bias', weak.resistance, 'ohm');
  const beta = term('beta', 'current sensitivity at zero bias', weak.currentSensitivity, 'A/W');
  const crossover = crossoverPower(weak);
  const workings = smallSignalWorkings(description, weak, numbers.saturationCurrent);
  return [
    {
      name: 'detector.zeroBiasResistance',
      label: 'resistance at zero bias, as the phones see it',
      value: weak.resistance,
      unit: 'ohm',
      method,
      working: { ...workings.resistance, source, holds: 'signals well below the crossover power' },
    },
    {
      name: 'detector.currentSensitivity',
      label: 'current sensitivity at zero bias',
      value: weak.currentSensitivity,
      unit: 'A/W',
      method,
      working: {
        ...workings.sensitivity,
        source: COWLEY,
        holds: 'short circuit, power into the law itself; below zero: the output goes negative',
      },
    },
    {
      name: 'detector.voltageSensitivity',
      label: 'open-circuit voltage sensitivity',
      value: voltageSensitivity(weak),
      unit: 'V/W',
      method: 'square law',
      working: { formula: 'gamma = beta R', terms: [beta, resistance], source: COWLEY, holds: 'signals well below the crossover power' },
    },
    {
      name: 'detector.capacitanceLoss',
      label: 'share of the power that reaches the law past its capacitance, at 100 MHz',
      value: capacitanceLoss(SHOWN_FREQUENCY, capacitance, capacitanceResistance, weak.resistance),
      unit: '1',
      method: 'series resistance and capacitance',
      working: {
        formula: '1/(1 + (2 pi f C)^2 Rs R)',
        terms: [
          term('f', 'frequency', SHOWN_FREQUENCY, 'Hz'),
          term('C', 'capacitance at zero bias', capacitance, 'F'),
          term('Rs', 'resistance in series with it', capacitanceResistance, 'ohm'),
          resistance,
        ],
        source: `A. Uhlir, BSTJ 37 (1958) 951; ${COWLEY}`,
        holds: 'all else tuned out; 2 pi f C Rs well below 1; capacitance as at zero bias, though it falls and rises with the swing',
      },
    },
    {
      name: 'detector.crossoverPower',
      label: 'radio power at which the square law ends',
      value: crossover,
      unit: 'W',
      method: 'square law taken to its end',
      working: {
        formula: 'P = 4/(beta^2 R); 16 Is n Vt for a junction',
        terms: [beta, resistance],
        source: 'where the direct-current power of the square law equals the radio power; definition',
        holds: 'matched detector; the passage is gradual, some 10 dB wide',
      },
    },
    {
      name: 'detector.noiseEquivalentPower',
      label: 'noise-equivalent power, lower bound',
      value: weak.currentSensitivity === 0 ? null : noiseEquivalentPower(weak.currentSensitivity, weak.resistance, description.temperature),
      unit: 'W/sqrt(Hz)',
      method: 'thermal noise at zero bias',
      working: {
        formula: 'NEP = sqrt(4 k T R)/(beta R)',
        terms: [term('T', 'temperature', description.temperature, 'K'), beta, resistance],
        source: `H. Nyquist, Phys. Rev. 32 (1928) 110; ${COWLEY}`,
        holds: 'no bias, no loss before the detector, no noise after it',
      },
    },
  ];
}
