/** Order of the values written by `SmoothLaw.point`. */
export const CURRENT = 0;
export const BY_DRIVE = 1;
export const BY_OUTPUT = 2;
export const BY_DRIVE_TWICE = 3;
export const BY_DRIVE_AND_OUTPUT = 4;
export const BY_DRIVE_TWICE_AND_OUTPUT = 5;

/** A memoryless law without corners, as a function of the RF instant x = A cos(wt) and of the output voltage V, both [V]. */
export interface SmoothLaw {
  /** distance in x and in V over which the law bends by a factor e at the steepest [V] */
  readonly driveScale: number;
  readonly outputScale: number;
  /** writes the current [A] and its derivatives by x, V, x twice, x and V, x twice and V */
  point(drive: number, output: number, out: Float64Array): void;
}
