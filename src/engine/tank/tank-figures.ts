import type { Figure } from '../figure.ts';
import { term } from '../figure.ts';
import { capacitorFigures } from './capacitor-figures.ts';
import { coilFigures } from './coil-figures.ts';
import { tankResonance } from './dial.ts';
import { lossBudget, unloadedQ } from './loss-budget.ts';
import type { TankModel } from './model.ts';
import type { TankParts } from './tank-parts.ts';
import { windingResistance } from './winding-resistance.ts';

/**
 * Every number of the tank alone that a builder may doubt, at a frequency [Hz] and an angle [rad]: inductance, self-capacitance, resistance, proximity factor, Q,
 * radiation resistance, budget of losses.
 */
export function tankFigures(model: TankModel, frequency: number, angle: number): readonly Figure[] {
  const { parts } = model;
  return [...coilFigures(parts, frequency), ...capacitorFigures(parts, frequency, angle), ...wholeFigures(model, parts, frequency, angle)];
}

function wholeFigures(model: TankModel, parts: TankParts, frequency: number, angle: number): readonly Figure[] {
  const { coil, branches } = parts;
  const w = 2 * Math.PI * frequency;
  const losses = splitCopper(parts, frequency, lossBudget(model, branches.branches[branches.stretches - 1]!.name, frequency, angle));
  const sum = losses.reduce((s, l) => s + l.series, 0);
  const q = unloadedQ(model, frequency, angle);
  const inductance = coil.inductance(frequency);
  const total = model.capacitance(angle) + coil.selfCapacitance + parts.description.strayCapacitance;
  const resonance = tankResonance(model, angle);
  const { re } = model.admittance(frequency, angle);
  return [
    {
      name: 'tank.resonance',
      label: 'resonance of the tank alone',
      value: resonance,
      unit: 'Hz',
      method: 'network, susceptance zero at the top',
      working: {
        formula: 'Im Y(f) = 0; near 1 / (2 pi sqrt(L C))',
        terms: [term('L', 'coil with leads', inductance, 'H'), term('C', 'capacitor, coil and strays', total, 'F')],
        source: 'the network of the tank, nothing joined to it',
        holds: 'aerial and detector lower it further',
      },
    },
    {
      name: 'tank.characteristicImpedance',
      label: 'reactance of coil and capacitor at resonance',
      value: Math.sqrt(inductance / total),
      unit: 'ohm',
      method: 'lumped',
      working: {
        formula: 'sqrt(L / C)',
        terms: [term('L', 'coil with leads', inductance, 'H'), term('C', 'capacitor, coil and strays', total, 'F')],
        source: 'Terman, Radio Engineers Handbook (1943) sec. 3',
      },
    },
    ...losses.map((l) => lossFigure(l.name, l.series, sum)),
    {
      name: 'tank.loss.total',
      label: 'all losses as a resistance in series with the coil',
      value: sum,
      unit: 'ohm',
      method: 'power in each part of the network',
      working: {
        formula: 'sum of R_i',
        terms: losses.map((l) => term('R_i', l.name, l.series, 'ohm')),
        source: 'R_i = P_i / |I_coil|^2, solved by nodes',
      },
    },
    {
      name: 'tank.unloadedQ',
      label: 'unloaded Q',
      value: q,
      unit: '1',
      method: 'slope of the susceptance',
      working: {
        formula: 'Q_0 = w (dB/dw) / (2 G); about w L / R',
        terms: [
          term('G', 'conductance at the top', re, 'S'),
          term('w L', 'reactance of the coil', w * inductance, 'ohm'),
          term('R', 'all losses in series with the coil', sum, 'ohm'),
        ],
        source: 'Terman, Radio Engineers Handbook (1943) sec. 3',
        holds: 'at resonance; without aerial and detector',
      },
    },
    {
      name: 'tank.unloadedBandwidth',
      label: 'bandwidth without aerial and detector',
      value: q === null ? null : frequency / q,
      unit: 'Hz',
      method: 'between half-power points',
      working: {
        formula: 'f / Q_0',
        terms: [term('f', 'frequency', frequency, 'Hz'), term('Q_0', 'unloaded Q', q, '1')],
        source: 'definition of Q for a single resonance',
      },
    },
  ];
}

/** The copper of the coil as straight wire, and what its turns do to each other. */
function splitCopper(parts: TankParts, frequency: number, losses: ReturnType<typeof lossBudget>): { name: string; series: number }[] {
  const { geometry } = parts.coil;
  if (!geometry) return [...losses];
  const phi = windingResistance(geometry.coil, frequency).proximityFactor;
  const copper = losses.filter((l) => l.name.startsWith('coil copper')).reduce((s, l) => s + l.series, 0);
  return [
    { name: 'coil as straight wire', series: copper / phi },
    { name: 'proximity of the turns', series: copper - copper / phi },
    ...losses.filter((l) => !l.name.startsWith('coil copper')),
  ];
}

function lossFigure(name: string, series: number, sum: number): Figure {
  return {
    name: `tank.loss.${name.replaceAll(/[^a-z0-9]+([a-z0-9])/g, (_, letter: string) => letter.toUpperCase())}`,
    label: `loss: ${name}`,
    value: series,
    unit: 'ohm',
    method: 'in series with the coil',
    working: {
      formula: 'R_i = P_i / |I_coil|^2',
      terms: [term('R_i / R', 'share of all losses', sum > 0 ? series / sum : null, '1')],
      source: 'power in this part of the network, solved by nodes',
    },
  };
}
