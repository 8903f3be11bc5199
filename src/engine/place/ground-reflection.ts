import { EPSILON0 } from '../constants.ts';
import { C, type Complex } from '../numeric/index.ts';
import type { Ground } from './description.ts';

/** Polarisation of a plane wave over ground: the plane of its electric field against the ground. */
export type LinearPolarisation = 'horizontal' | 'vertical';

/**
 * Complex relative permittivity of ground.
 *
 * eps_c = eps_r - j sigma / (w eps0) (the handbooks' eps_r - j 60 lambda sigma).
 *
 * Source: ITU-R P.527-3 section 1.
 */
export function complexPermittivity(ground: Ground, frequency: number): Complex {
  return { re: ground.permittivity, im: -ground.conductivity / (2 * Math.PI * frequency * EPSILON0) };
}

/**
 * Fresnel reflection coefficient of plane ground.
 *
 * R_h = (sin psi - s)/(sin psi + s), R_v = (eps_c sin psi - s)/(eps_c sin psi + s), s = sqrt(eps_c - cos^2 psi).
 *
 * @param grazing - angle between the ray and the ground [rad], 0 to pi/2
 * @returns ratio of reflected to incident field, exp(+j w t); vertical counts the upright component, so that both go to -1 at grazing
 * Source: ITU-R P.1008 / Jordan & Balmain, Electromagnetic Waves and Radiating Systems, 2nd ed., eqs 16-14, 16-15.
 */
export function reflectionCoefficient(permittivity: Complex, grazing: number, polarisation: LinearPolarisation): Complex {
  const s = C.sqrt(C.sub(permittivity, C.complex(Math.cos(grazing) ** 2)));
  const upright = polarisation === 'vertical' ? C.scale(permittivity, Math.sin(grazing)) : C.complex(Math.sin(grazing));
  return C.div(C.sub(upright, s), C.add(upright, s));
}

/**
 * Surface impedance of the ground over the wave impedance, as a ray at this angle sees it.
 *
 * Delta_v = s / eps_c, Delta_h = s, s = sqrt(eps_c - cos^2 psi).
 */
export function surfaceImpedance(permittivity: Complex, grazing: number, polarisation: LinearPolarisation): Complex {
  const s = C.sqrt(C.sub(permittivity, C.complex(Math.cos(grazing) ** 2)));
  return polarisation === 'vertical' ? C.div(s, permittivity) : s;
}
