import { EARTH, type Element } from '../circuit/elements.ts';
import { Network } from '../circuit/network.ts';
import { powers } from '../circuit/power.ts';
import { C } from '../numeric/index.ts';
import { COIL_COLD } from './coil-branches.ts';
import type { TankModel } from './model.ts';

/** One loss of the tank, as if it were a resistor in series with the coil [ohm]. */
export interface Loss {
  readonly name: string;
  readonly series: number;
}

/**
 * What each loss of the tank alone amounts to in series with the coil.
 *
 * R_i = P_i / |I_coil|^2, the tank driven at its top, the coil's cold end on earth
 *
 * @param coilName - the winding whose current counts: the uppermost stretch of the coil
 * @returns all resistors of the network with their share [ohm]
 */
export function lossBudget(model: TankModel, coilName: string, frequency: number, angle: number): readonly Loss[] {
  const elements: Element[] = [...model.elements(frequency, angle), { kind: 'current', name: 'drive', a: 'top', b: EARTH, re: 1, im: 0 }];
  if (model.aerialIsCoil) elements.push({ kind: 'voltage', name: 'cold end', a: COIL_COLD, b: EARTH, re: 0, im: 0 });
  const network = new Network(elements);
  const solution = network.solveAt(frequency);
  if (!solution) return [];
  const square = C.abs2(solution.current(coilName));
  const resistors = new Set(elements.filter((e) => e.kind === 'resistor').map((e) => e.name));
  return powers(network, solution, frequency)
    .filter((p) => resistors.has(p.name))
    .map((p) => ({ name: p.name, series: p.watts / square }));
}

/**
 * Unloaded Q of the tank alone at a frequency, as its bandwidth shows it.
 *
 * Q = w (dB/dw) / (2 G), Y = G + j B at the top
 *
 * @returns null where nothing loses
 * Source: Terman, Radio Engineers' Handbook (1943) sec. 3; slope of the susceptance at resonance.
 */
export function unloadedQ(model: TankModel, frequency: number, angle: number): number | null {
  const step = 1e-4 * frequency;
  const { re } = model.admittance(frequency, angle);
  const slope = (model.admittance(frequency + step, angle).im - model.admittance(frequency - step, angle).im) / (2 * step);
  return re > 0 ? (frequency * slope) / (2 * re) : null;
}
