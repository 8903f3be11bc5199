import { C, type Complex } from '../numeric/index.ts';
import type { RadioCircuit } from './circuit.ts';
import { solveAll } from './modal-circuit.ts';
import { constantOnePort } from './one-port-fit.ts';
import { radioEquations } from './radio-tuning.ts';

/** What the first detector meets, with nothing drawn. */
export interface OpenResponse {
  /** open voltage for one volt of e.m.f. */
  readonly voltage: Complex;
  /** [ohm] */
  readonly impedance: Complex;
}

/** The radio half at one frequency [Hz], with the aerial's impedance as it is there: no fit, no modes. */
export function openResponse(radio: RadioCircuit, frequency: number): OpenResponse {
  const { impedance } = radio.source;
  const equations = radioEquations(radio, impedance === null ? null : constantOnePort(impedance(frequency)));
  const factored = equations.pencil.factorAt({ re: 0, im: 2 * Math.PI * frequency });
  if (!factored) throw new Error(`the radio circuit has no solution at ${frequency} Hz`);
  const [row] = solveAll(factored, equations);
  return { voltage: row![0]!, impedance: C.neg(row![1]!) };
}
