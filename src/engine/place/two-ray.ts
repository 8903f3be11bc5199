import { SPEED_OF_LIGHT } from '../constants.ts';
import { C, type Complex } from '../numeric/index.ts';
import type { Ground } from './description.ts';
import { complexPermittivity, type LinearPolarisation, reflectionCoefficient, surfaceImpedance } from './ground-reflection.ts';
import { surfaceWave } from './surface-wave.ts';

/** Two aerials over ground: what the smooth-earth methods need to know. */
export interface GroundPath {
  /** along the ground [m], above zero */
  readonly distance: number;
  /** above the ground [m] */
  readonly height1: number;
  readonly height2: number;
  /** [Hz] */
  readonly frequency: number;
  readonly ground: Ground;
  readonly polarisation: LinearPolarisation;
  /** [m]; infinite for plane earth */
  readonly earthRadius: number;
}

export interface TwoRay {
  /** field over the free-space field of the direct ray */
  readonly factor: Complex;
  /** angle of the reflected ray with the ground [rad] */
  readonly grazing: number;
  /** reflected less direct path [m] */
  readonly pathDifference: number;
  /** weakening of the reflected ray by the earth's bulge, 0 to 1 */
  readonly divergence: number;
  readonly reflection: Complex;
}

/**
 * Direct and ground-reflected ray, with the surface wave that low vertical aerials see.
 *
 * E/E0 = 1 + [R D + (1 - R) F(p)] (r1/r2) exp(-j k delta), p = -j (k r2/2)(sin psi + Delta)^2,
 * D = 1/sqrt(1 + 2 d1 d2/(a d sin psi)); the point of reflection by the cubic 2 d1^3 - 3 d d1^2 + (d^2 - 2a(h1+h2)) d1 + 2a h1 d = 0,
 * and heights above the tangent plane there.
 *
 * @returns null beyond the horizon
 * Holds for: grazing angles above about 2 (2/(k a))^(1/3) (0.6 degree at 100 MHz), or plane earth; there within 0.2 dB of the residue series.
 * Source: D. E. Kerr (ed.), Propagation of Short Radio Waves (1951), sec. 2.13 eqs 358-386; K. A. Norton, Proc. IRE 29 (1941) 623 (surface wave).
 */
export function twoRay(path: GroundPath): TwoRay | null {
  const { distance: d, height1: h1, height2: h2, earthRadius: a } = path;
  const d1 = reflectionPoint(d, h1, h2, a);
  const d2 = d - d1;
  const above1 = h1 - (d1 * d1) / (2 * a);
  const above2 = h2 - (d2 * d2) / (2 * a);
  if (above1 < 0 || above2 < 0) return null;
  const grazing = Math.atan2(above1 + above2, d);
  const direct = Math.hypot(d, above1 - above2);
  const reflected = Math.hypot(d, above1 + above2);
  const pathDifference = (4 * above1 * above2) / (direct + reflected);
  const divergence = d > 0 ? 1 / Math.sqrt(1 + (2 * d1 * d2) / (a * d * Math.max(Math.sin(grazing), 1e-12))) : 1;
  const k = (2 * Math.PI * path.frequency) / SPEED_OF_LIGHT;
  const permittivity = complexPermittivity(path.ground, path.frequency);
  const reflection = reflectionCoefficient(permittivity, grazing, path.polarisation);
  const impedance = C.add(C.complex(Math.sin(grazing)), surfaceImpedance(permittivity, grazing, path.polarisation));
  const p = C.mul({ re: 0, im: (-k * reflected) / 2 }, C.mul(impedance, impedance));
  const groundWave = C.mul(C.sub(C.ONE, reflection), surfaceWave(p));
  const second = C.scale(C.add(C.scale(reflection, divergence), groundWave), direct / reflected);
  return { factor: C.add(C.ONE, C.mul(second, C.cis(-k * pathDifference))), grazing, pathDifference, divergence, reflection };
}

/** Distance of the point of reflection from the first aerial [m]. */
function reflectionPoint(d: number, h1: number, h2: number, a: number): number {
  const sum = h1 + h2;
  if (sum === 0) return d / 2;
  if (a === Number.POSITIVE_INFINITY) return (d * h1) / sum;
  const p = (2 / Math.sqrt(3)) * Math.sqrt(a * sum + (d * d) / 4);
  const sine = (2 * a * d * (h1 - h2)) / p ** 3;
  return d / 2 + p * Math.sin(Math.asin(Math.max(-1, Math.min(1, sine))) / 3);
}
