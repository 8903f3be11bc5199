import { EPSILON0 } from '../../constants.ts';
import { C, type Complex } from '../../numeric/index.ts';
import type { Ground } from './structure.ts';

/**
 * Height of the lowest wire, in wavelengths, from which the impedance in free space stands for that over real ground within some 5 ohm.
 *
 * A half-wave dipole over a perfect plane at 0.75 wavelength has 75.0 + j54.8 ohm against 73.1 + j42.5 in free space (Carter's mutual impedance), at
 * 1.0 wavelength 72.0 + j33.2; medium earth, which reflects six tenths as strongly straight up, moves it six tenths as far.
 */
export const GROUND_FREE_HEIGHT = 0.75;

/**
 * Reflection coefficients of plane ground, to be laid on the horizontal and on the upward component of the field.
 *
 * H = (sin psi - q)/(sin psi + q), V = (e sin psi - q)/(e sin psi + q), q = sqrt(e - cos^2 psi), e = eps_r - j sigma/(w eps0).
 *
 * @param elevation - of the ray above the ground [rad], 0 to pi/2
 * Source: ITU-R P.526, P.527; reference/antennas.md section 6.4.
 */
export function groundReflection(
  ground: Exclude<Ground, { kind: 'free-space' }>,
  frequency: number,
  elevation: number,
): { readonly horizontal: Complex; readonly vertical: Complex } {
  if (ground.kind === 'perfect') return { horizontal: C.complex(-1), vertical: C.ONE };
  const sine = Math.sin(elevation);
  const e: Complex = { re: ground.permittivity, im: -ground.conductivity / (2 * Math.PI * frequency * EPSILON0) };
  const q = C.sqrt(C.sub(e, C.complex(Math.cos(elevation) ** 2)));
  const s = C.complex(sine);
  const es = C.scale(e, sine);
  return { horizontal: C.div(C.sub(s, q), C.add(s, q)), vertical: C.div(C.sub(es, q), C.add(es, q)) };
}
