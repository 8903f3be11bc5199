import { GivenError } from '../../given-error.ts';
import { brent, C } from '../../numeric/index.ts';
import type { WiresDescription } from './description.ts';
import { layOut } from './joints.ts';
import { BASE_DENSITY, countsByDensity } from './segment-counts.ts';
import { discretise, solveWires } from './solve-wires.ts';
import { wireStructure } from './wire-structure.ts';

/** Range of the search and its steps, as ratios: two resonances of one kind are never so near each other. */
const FROM = 0.5;
const TO = 2;
const STEP = 1.15;
/** A millimetre in a metre: nobody cuts better. */
const ENOUGH = 1e-3;

/**
 * How much longer or shorter to cut an aerial so that it resonates, in the series kind, at a frequency.
 *
 * X(scale) = 0, rising; of several the one nearest to as it is. The number of segments is held, so that a change of length is never a change of mesh.
 *
 * @param scaled - the aerial with what is to be cut made so many times as long; the same wires at every scale
 * @param frequency - [Hz]
 * @returns the scale, or null where it does not resonate between half and twice
 * @throws GivenError where the description as it is cannot be
 */
export function resonantScale(scaled: (scale: number) => WiresDescription, frequency: number): number | null {
  const counts = countsByDensity(layOut(wireStructure(scaled(1))), frequency, BASE_DENSITY);
  /** null where the wires cannot be so long or short */
  const reactance = (logScale: number): number | null => {
    try {
      const structure = wireStructure(scaled(Math.exp(logScale)));
      const solution = solveWires(discretise(structure, layOut(structure), counts), frequency);
      return solution && C.inv(solution.admittance).im;
    } catch (e) {
      if (e instanceof GivenError) return null;
      throw e;
    }
  };
  const steps = Math.ceil(Math.log(TO / FROM) / Math.log(STEP));
  const at = (i: number) => Math.log(FROM) + (Math.log(TO / FROM) * i) / steps;
  let best: number | null = null;
  let last = reactance(at(0));
  for (let i = 1; i <= steps; i++) {
    const next = reactance(at(i));
    if (last !== null && next !== null && last < 0 && next >= 0) {
      // what can be at both ends of a step can be between them
      const found = brent((x) => reactance(x)!, at(i - 1), at(i), ENOUGH)!;
      if (best === null || Math.abs(found) < Math.abs(best)) best = found;
    }
    last = next;
  }
  return best === null ? null : Math.exp(best);
}
