import { dialTable, type Figure, type TankModel } from '#engine';
import type { Group } from '../group.ts';

/** Places on the dial shown in the table. */
const DIAL_POINTS = 13;

/** The dial of the tank by itself: what it covers, and how fast the station runs past as the hand turns. */
export function dialGroup(model: TankModel): Group {
  const working = { formula: 'Im Y(top) = 0', terms: [], source: 'admittance of the tank alone, nothing joined to it' };
  const figure = (name: string, label: string, value: number | null, unit: string): Figure => ({
    name: `dial.${name}`,
    label,
    value,
    unit,
    method: 'tank alone',
    working,
  });
  return {
    heading: 'the dial, tank alone',
    figures: [],
    remarks: [],
    rows: dialTable(model, DIAL_POINTS).map((p) => [
      figure('angle', 'angle', p.angle, 'rad'),
      figure('capacitance', 'capacitance', p.capacitance, 'F'),
      figure('frequency', 'resonance', p.frequency, 'Hz'),
      figure('slope', 'per degree', p.slope, 'Hz/rad'),
    ]),
  };
}
