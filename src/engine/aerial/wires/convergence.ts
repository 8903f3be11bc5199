import { C, type Complex } from '../../numeric/index.ts';
import type { Layout } from './joints.ts';
import { BASE_DENSITY, countsByDensity, countsByTotal, LEAST_RADII, spanLengths } from './segment-counts.ts';
import { type Discretised, discretise, solveWires } from './solve-wires.ts';
import type { WireStructure } from './structure.ts';

/** A structure cut finely enough, and how well. */
export interface Converged {
  readonly discretised: Discretised;
  readonly segments: number;
  /** terminal impedance [ohm] */
  readonly impedance: Complex;
  /** segments of the mesh it was compared with, and the impedance there; null where the wires allow no other */
  readonly comparedWith: number | null;
  readonly comparedImpedance: Complex | null;
  /** likely error of the impedance by the cutting alone, over its magnitude */
  readonly estimatedError: number | null;
}

/** Densities tried in turn, segments to the wavelength: half as many again each time. */
const DENSITIES = [BASE_DENSITY, 1.5 * BASE_DENSITY, 2.25 * BASE_DENSITY, 3.375 * BASE_DENSITY];
/** The first mesh that is estimated better than this is taken. */
const ENOUGH = 0.25;
/** Finer meshes than this are not tried for the sake of the estimate. */
const MOST_FOR_ESTIMATE = 500;

/**
 * Chooses the number of segments: the least for which half as many again change the terminal impedance little.
 *
 * The impedance approaches its limit about as 1/N, so that three times the change from N to 1.5 N segments is left. The limit itself is that of an infinitely narrow gap, whose
 * capacitance grows without end, slower than any power: on thick wires finer is not truer, and the search stops early by intent. For
 * tuned aerials the estimate amounts to some 0.6 % of length or frequency.
 *
 * @param frequency - [Hz], the highest at which this mesh will be used
 * @param forced - number of segments, or null to choose
 * @throws GivenError where the forced number does not do, or too many would be needed
 * Source: reference/antennas.md section 5 (measured behaviour); Fikioris & Wu, IEEE Trans. AP-49 (2001) 383 (delta gap).
 */
export function converge(structure: WireStructure, layout: Layout, frequency: number, forced: number | null): Converged {
  if (forced !== null) return estimate(structure, layout, frequency, countsByTotal(layout, frequency, forced), null);
  let last: Converged | null = null;
  for (const density of DENSITIES) {
    const counts = countsByDensity(layout, frequency, density);
    const next = estimate(structure, layout, frequency, counts, countsByDensity(layout, frequency, 1.5 * density));
    if (next.estimatedError === null || next.estimatedError < ENOUGH) return next;
    if (last && last.estimatedError! <= next.estimatedError) return last;
    last = next;
  }
  return last!;
}

function estimate(
  structure: WireStructure,
  layout: Layout,
  frequency: number,
  counts: readonly number[],
  allowedFiner: readonly number[] | null,
): Converged {
  const solve = (n: readonly number[]) => {
    const discretised = discretise(structure, layout, n);
    const solution = solveWires(discretised, frequency);
    return { discretised, impedance: solution ? C.inv(solution.admittance) : C.ZERO };
  };
  const total = (n: readonly number[]) => n.reduce((a, b) => a + b, 0);
  const first = total(counts);
  const others = [allowedFiner ?? counts.map((n) => Math.ceil(1.5 * n)), doubled(layout, counts), counts.map((n) => Math.ceil(n / 1.5))];
  const differs = (n: readonly number[]) => Math.abs(Math.log(total(n) / first)) > 0.2 && total(n) <= MOST_FOR_ESTIMATE;
  const chosen = solve(counts);
  const pick = others.find(differs);
  const other = pick ? solve(pick) : null;
  const size = C.abs(chosen.impedance);
  // c/N: of a change between N and M segments, M/|M - N| is left from N on
  const share = other ? other.discretised.mesh.segments / Math.abs(other.discretised.mesh.segments - first) : 0;
  return {
    discretised: chosen.discretised,
    segments: first,
    comparedWith: other?.discretised.mesh.segments ?? null,
    comparedImpedance: other?.impedance ?? null,
    impedance: chosen.impedance,
    estimatedError: other && size > 0 ? (share * C.abs(C.sub(other.impedance, chosen.impedance))) / size : null,
  };
}

/** Twice as many segments where the wire's thickness allows. */
function doubled(layout: Layout, counts: readonly number[]): readonly number[] {
  const lengths = spanLengths(layout);
  return counts.map((n, i) => (lengths[i]! / (2 * n) >= LEAST_RADII * layout.spans[i]!.radius ? 2 * n : n));
}
