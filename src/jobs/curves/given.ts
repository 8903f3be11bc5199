import type { Heard, Signal } from '#engine';
import type { Bench } from '../bench.ts';
import type { Document } from '../document.ts';

/** Curves are of one station, with the dial where it is best for it or where it was left [rad]. */
export interface CurvesGiven {
  readonly document: Document;
  readonly station: number;
  readonly angle?: number | undefined;
}

/** The station, and what is heard of it there; null where the dial does not reach. */
export function standing(bench: Bench, { station, angle }: CurvesGiven): { readonly signal: Signal; readonly heard: Heard | null } {
  bench.stations(station);
  const { signal, heard } = bench.report(station, angle);
  return { signal, heard };
}

/** Numbers evenly from one to another, both included. */
export const evenly = (from: number, to: number, points: number): Float64Array =>
  Float64Array.from({ length: points }, (_, i) => from + ((to - from) * i) / (points - 1));

/** The same in equal ratios; both above zero. */
export const inRatios = (from: number, to: number, points: number): Float64Array =>
  evenly(Math.log(from), Math.log(to), points).map(Math.exp);
