import { C, type Complex } from '../../numeric/index.ts';
import type { Load } from './structure.ts';

/** What a lossless trap at its own frequency counts as [ohm]: a break, yet a number. */
const OPEN = 1e12;

/** Impedance of a load at a frequency [ohm]: its parts in series or in parallel. */
export function loadImpedance(load: Load, frequency: number): Complex {
  if (load.kind === 'impedance') return { re: load.resistance, im: load.reactance };
  const w = 2 * Math.PI * frequency;
  const { resistance, inductance, capacitance } = load;
  if (load.kind === 'series')
    return { re: resistance ?? 0, im: w * (inductance ?? 0) - (capacitance === undefined ? 0 : 1 / (w * capacitance)) };
  const conductance = resistance === undefined ? 0 : 1 / resistance;
  const susceptance = w * (capacitance ?? 0) - (inductance === undefined ? 0 : 1 / (w * inductance));
  const admittance = { re: conductance, im: susceptance };
  return C.abs(admittance) < 1 / OPEN ? C.complex(OPEN) : C.inv(admittance);
}
