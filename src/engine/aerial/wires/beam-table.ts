import { brent } from '../../numeric/index.ts';
import { inducedEmfImpedance } from '../induced-emf.ts';

/** One beam of the published table; lengths and distances in wavelengths. */
interface Row {
  readonly boom: number;
  readonly reflector: number;
  readonly directors: readonly number[];
}

/** Thickness of the elements and distance of the reflector throughout the table [wavelengths]. */
const TABLE_DIAMETER = 0.0085;
const REFLECTOR_BEHIND = 0.2;

/**
 * Measured beams to begin from.
 *
 * Source: P. P. Viezbicke, Yagi Antenna Design, NBS Technical Note 688 (1976), table 1; values and what is not certain of them in
 * reference/antennas.md section 2.2. The director of the shortest is quoted as 0.442 and as 0.424; it is only a start.
 */
const ROWS: readonly Row[] = [
  { boom: 0.4, reflector: 0.482, directors: [0.442] },
  { boom: 0.8, reflector: 0.482, directors: [0.428, 0.424, 0.428] },
  { boom: 2.2, reflector: 0.482, directors: [0.432, 0.415, 0.407, 0.398, 0.39, 0.39, 0.39, 0.39, 0.398, 0.407] },
  { boom: 4.2, reflector: 0.475, directors: [0.424, 0.424, 0.42, 0.407, 0.403, 0.398, 0.394, 0.39, 0.39, 0.39, 0.39, 0.39, 0.39] },
];
/**
 * Number of elements a boom usually carries: 3 on 0.4 wavelength, 5 on 0.8 and 12 on 2.2, as in the table; never more than 12.
 *
 * @param boom - reflector to last director [wavelengths]
 */
export const usualElements = (boom: number): number => Math.min(12, Math.max(2, 1 + Math.round(5 * boom)));

/** Of the driven element: the table leaves it to the matching. */
const DRIVEN = 0.46;

/** Lengths and places of a beam to begin from [wavelengths]: reflector, driven element, directors; places from the driven element. */
export interface BeamStart {
  readonly lengths: readonly number[];
  readonly places: readonly number[];
}

/**
 * A beam of given boom and number of elements, after the nearest in the table.
 *
 * The reflector stands where the table has it, or nearer on a short boom; the directors are spread evenly over the rest, with the lengths of the table's at the
 * same part of the row. Elements of another thickness are given the length at which one alone has the same reactance.
 *
 * @param boom - reflector to last director [wavelengths]
 * @param elements - all of them, at least 2
 * @param diameter - [wavelengths]
 */
export function beamStart(boom: number, elements: number, diameter: number): BeamStart {
  const row = ROWS.reduce((best, r) => (Math.abs(Math.log(r.boom / boom)) < Math.abs(Math.log(best.boom / boom)) ? r : best));
  const directors = elements - 2;
  const behind = directors === 0 ? boom : Math.min(REFLECTOR_BEHIND, (boom * 1.2) / (elements - 1));
  const step = directors === 0 ? 0 : (boom - behind) / directors;
  const last = row.directors.length - 1;
  const pick = (i: number) => row.directors[Math.round(directors < 2 ? 0 : (i * last) / (directors - 1))]!;
  const table = [row.reflector, DRIVEN, ...Array.from({ length: directors }, (_, i) => pick(i))];
  return {
    lengths: table.map((l) => equalReactance(l, diameter)),
    places: [-behind, 0, ...Array.from({ length: directors }, (_, i) => (i + 1) * step)],
  };
}

/** Length of an element of another thickness with the reactance of one of the table's, by induced EMF [wavelengths]. */
function equalReactance(length: number, diameter: number): number {
  const x = (l: number, d: number) => inducedEmfImpedance(l, d / 2, 1).im;
  const wanted = x(length, TABLE_DIAMETER);
  return brent((l) => x(l, diameter) - wanted, 0.35, 0.55, 1e-6) ?? length;
}
