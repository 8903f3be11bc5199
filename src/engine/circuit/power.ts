import { C } from '../numeric/index.ts';
import type { Network, Solution } from './network.ts';

/** Power in one element [W]; positive where it turns into heat (or leaves through a given impedance), negative where it is delivered. */
export interface ElementPower {
  readonly name: string;
  readonly watts: number;
}

/**
 * Real power in every element that can take or give any, for a solution whose phasors are rms.
 *
 * In a correct solution they add up to zero (Tellegen's theorem); the tests hold the solver to that.
 */
export function powers(network: Network, solution: Solution, frequency: number): readonly ElementPower[] {
  const out: ElementPower[] = [];
  for (const e of network.elements) {
    if (e.kind === 'resistor') {
      const watts = solution.isBranch(e.name)
        ? C.abs2(solution.current(e.name)) * e.resistance
        : C.abs2(C.sub(solution.voltage(e.a), solution.voltage(e.b))) / e.resistance;
      if (e.resistance > 0) out.push({ name: e.name, watts });
    } else if (e.kind === 'windings') {
      for (const w of e.windings) if (w.resistance) out.push({ name: w.name, watts: C.abs2(solution.current(w.name)) * w.resistance });
    } else if (e.kind === 'impedance') {
      out.push({ name: e.name, watts: C.abs2(solution.current(e.name)) * e.at(frequency).re });
    } else if (e.kind === 'voltage') {
      const v = C.sub(solution.voltage(e.a), solution.voltage(e.b));
      out.push({ name: e.name, watts: C.mul(v, C.conj(solution.current(e.name))).re });
    } else if (e.kind === 'current') {
      const v = C.sub(solution.voltage(e.a), solution.voltage(e.b));
      out.push({ name: e.name, watts: -C.mul(v, C.conj({ re: e.re, im: e.im })).re });
    }
  }
  return out;
}
