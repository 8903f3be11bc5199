import { EPSILON0 } from '../constants.ts';

/**
 * Capacitance of a level wire above ground.
 *
 * C = 2 pi eps0 l / ln(2h/a)
 *
 * @param length - [m]
 * @param height - [m] above ground, well above the radius
 * @returns [F]; end correction, some 10 % where the wire is no longer than its height, left out
 * Source: Terman, Radio Engineers' Handbook (1943) sec. 2.
 */
export const levelWireCapacitance = (length: number, height: number, radius: number): number =>
  (2 * Math.PI * EPSILON0 * length) / Math.log((2 * height) / radius);

/**
 * Capacitance of an upright wire whose foot is near the ground.
 *
 * C = 2 pi eps0 h / (ln(h/a) - 1)
 *
 * @param height - its length [m], above 3 radii
 * @returns [F]
 * Source: mean potential of a uniform charge and its image, G. W. O. Howe 1914; short-monopole limit, Hansen 2006.
 */
export const uprightWireCapacitance = (height: number, radius: number): number =>
  (2 * Math.PI * EPSILON0 * height) / (Math.log(height / radius) - 1);
