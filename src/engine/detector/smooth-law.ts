/** Order of the values written by `SmoothLaw.point`. */
export const ABOVE_FLOOR = 0;
export const BY_DRIVE = 1;
export const BY_OUTPUT = 2;
export const BY_DRIVE_TWICE = 3;
export const BY_DRIVE_AND_OUTPUT = 4;
export const BY_OUTPUT_TWICE = 5;
export const BY_DRIVE_TWICE_AND_OUTPUT = 6;

/** Most places that `SmoothLaw.bends` may name. */
export const MOST_BENDS = 4;

/** A memoryless law without corners, as a function of the RF instant x = A cos(wt) and of the output voltage V, both [V]. */
export interface SmoothLaw {
  /** distance in x and in V over which the law bends by a factor e at the steepest [V] */
  readonly driveScale: number;
  readonly outputScale: number;
  /** steady current of the blocking law [A], kept apart so that what little flows above it keeps its figures; 0 where there is none */
  readonly floor: number;
  /** the current [A] at instantaneous tank-to-output voltage [V], with all its figures down to nothing */
  current(voltage: number, outputVoltage: number): number;
  /** writes the current above the floor [A] and its derivatives by x, V, x twice, x and V, V twice, x twice and V */
  point(drive: number, output: number, out: Float64Array): void;
  /** writes where in x the law passes from one regime to another, such as from blocking to conducting; returns how many, at least one */
  bends(output: number, out: Float64Array): number;
}
