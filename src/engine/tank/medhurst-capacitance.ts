import { linear } from '../numeric/interpolate.ts';

/** l / D and H = C / D [pF/cm] of coils with one end earthed. Medhurst, Wireless Engineer 24 (1947) 35 and 80, table of self-capacitance. */
const TABLE: readonly (readonly [number, number])[] = [
  [0.1, 0.96],
  [0.15, 0.79],
  [0.2, 0.7],
  [0.25, 0.64],
  [0.3, 0.6],
  [0.35, 0.57],
  [0.4, 0.54],
  [0.45, 0.52],
  [0.5, 0.5],
  [0.6, 0.48],
  [0.7, 0.47],
  [0.8, 0.46],
  [0.9, 0.46],
  [1, 0.46],
  [1.5, 0.47],
  [2, 0.5],
  [2.5, 0.56],
  [3, 0.61],
  [3.5, 0.67],
  [4, 0.72],
  [4.5, 0.77],
  [5, 0.81],
  [6, 0.92],
  [7, 1.01],
  [8, 1.12],
  [9, 1.22],
  [10, 1.32],
  [15, 1.86],
  [20, 2.36],
  [25, 2.9],
  [30, 3.4],
  [40, 4.6],
  [50, 5.8],
];
const shapes = TABLE.map(([shape]) => shape);
const values = TABLE.map(([, h]) => h);

/** The span of l / D that was measured. */
export const MEDHURST_RANGE = { shortest: 0.1, longest: 50 } as const;

/**
 * Self-capacitance of a single-layer coil, one end earthed, from measurement.
 *
 * C = H(l / D) D, H read between the points of the table
 *
 * @param diameter - D, to the middle of the wire [m]
 * @param length - l = N p [m]
 * @returns [F], without leads; null outside the measured span of shapes
 * Holds for: many turns, about 5 %; for a few turns it overshoots the more, the shorter the coil: see self-capacitance.ts.
 * Source: Medhurst, Wireless Engineer 24 (1947) 35 and 80.
 */
export function medhurstCapacitance(diameter: number, length: number): number | null {
  const shape = length / diameter;
  if (shape < MEDHURST_RANGE.shortest || shape > MEDHURST_RANGE.longest) return null;
  // pF/cm is 1e-10 F/m
  return linear(shapes, values, shape) * 1e-10 * diameter;
}
