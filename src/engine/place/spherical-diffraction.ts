import { SPEED_OF_LIGHT } from '../constants.ts';
import { horizonDistance } from './earth.ts';
import type { GroundPath } from './two-ray.ts';

/** First term of the residue series, as the Recommendation writes it. */
export interface FirstTerm {
  /** normalised surface admittance */
  readonly admittance: number;
  readonly beta: number;
  readonly x: number;
  readonly y1: number;
  readonly y2: number;
  /** distance term [dB] */
  readonly distanceTerm: number;
  /** height gains [dB] */
  readonly heightGain1: number;
  readonly heightGain2: number;
  /** [dB], negative where the formula promises more than free space */
  readonly loss: number;
}

/**
 * Diffraction loss of a smooth earth beyond the horizon, first term.
 *
 * K_h = 0.36 (a f)^(-1/3) [(eps - 1)^2 + (18000 sigma/f)^2]^(-1/4), K_v = K_h [eps^2 + (18000 sigma/f)^2]^(1/2);
 * -20 log10(E/E0) = -(F(X) + G(Y1) + G(Y2)), in km, MHz.
 *
 * Holds for: beyond the horizon; 10 MHz up for horizontal, over land, modest heights: within 0.6 dB of the residue series
 * (vertical over sea with a low end: 2.4 dB).
 * Source: ITU-R P.526-15 section 3.1.1.2, eqs 12-18.
 */
export function firstTermDiffraction(path: GroundPath): FirstTerm {
  const f = path.frequency / 1e6;
  const a = path.earthRadius / 1e3;
  const loss = (18_000 * path.ground.conductivity) / f;
  const horizontal = 0.36 / Math.cbrt(a * f) / ((path.ground.permittivity - 1) ** 2 + loss * loss) ** 0.25;
  const admittance = path.polarisation === 'horizontal' ? horizontal : horizontal * Math.hypot(path.ground.permittivity, loss);
  const k2 = admittance * admittance;
  const beta = (1 + 1.6 * k2 + 0.67 * k2 * k2) / (1 + 4.5 * k2 + 1.53 * k2 * k2);
  const x = (2.188 * beta * Math.cbrt(f) * (path.distance / 1e3)) / Math.cbrt(a * a);
  const y = (9.575e-3 * beta * Math.cbrt(f * f)) / Math.cbrt(a);
  const y1 = y * path.height1;
  const y2 = y * path.height2;
  const distanceTerm = x >= 1.6 ? 11 + 10 * Math.log10(x) - 17.6 * x : -20 * Math.log10(x) - 5.6488 * x ** 1.425;
  const heightGain1 = heightGain(beta * y1, admittance);
  const heightGain2 = heightGain(beta * y2, admittance);
  return { admittance, beta, x, y1, y2, distanceTerm, heightGain1, heightGain2, loss: -(distanceTerm + heightGain1 + heightGain2) };
}

function heightGain(b: number, admittance: number): number {
  const gain = b > 2 ? 17.6 * Math.sqrt(b - 1.1) - 5 * Math.log10(b - 1.1) - 8 : 20 * Math.log10(b + 0.1 * b ** 3);
  return Math.max(gain, 2 + 20 * Math.log10(admittance));
}

/**
 * Diffraction loss of a smooth earth at any distance.
 *
 * Beyond the horizon the first term; within it none where the path clears the bulge by h_req = 0.552 of the first Fresnel zone,
 * else (1 - h/h_req) of the first term over an earth whose radius puts the place just on the horizon.
 *
 * @returns [dB], not below zero
 * Holds for: terminals above the ground; reflection from the ground is not in it.
 * Source: ITU-R P.526-15 section 3.2, eqs 21-25.
 */
export function smoothEarthDiffraction(path: GroundPath): number {
  const { distance: d, height1: h1, height2: h2, earthRadius: a } = path;
  if (d >= horizonDistance(h1, h2, a)) return Math.max(0, firstTermDiffraction(path).loss);
  const clearance = smallestClearance(d, h1, h2, a);
  const required = 0.552 * Math.sqrt((clearance.distance1 * (d - clearance.distance1) * SPEED_OF_LIGHT) / path.frequency / d);
  if (clearance.height > required) return 0;
  const grazingRadius = 0.5 * (d / (Math.sqrt(h1) + Math.sqrt(h2))) ** 2;
  const grazing = firstTermDiffraction({ ...path, earthRadius: grazingRadius }).loss;
  // an aerial on the ground itself has no zone to clear
  const share = required > 0 ? Math.max(0, 1 - clearance.height / required) : 1;
  return grazing < 0 ? 0 : share * grazing;
}

/** Where the line of sight comes nearest to the curved ground, within the horizon. Source: ITU-R P.526-15 eqs 22. */
function smallestClearance(d: number, h1: number, h2: number, a: number): { readonly distance1: number; readonly height: number } {
  const c = (h1 - h2) / (h1 + h2);
  const m = (d * d) / (4 * a * (h1 + h2));
  const cosine = Math.max(-1, Math.min(1, ((3 * c) / 2) * Math.sqrt((3 * m) / (m + 1) ** 3)));
  const b = 2 * Math.sqrt((m + 1) / (3 * m)) * Math.cos(Math.PI / 3 + Math.acos(cosine) / 3);
  const distance1 = (d / 2) * (1 + b);
  const distance2 = d - distance1;
  const height = ((h1 - distance1 ** 2 / (2 * a)) * distance2 + (h2 - distance2 ** 2 / (2 * a)) * distance1) / d;
  return { distance1, height };
}
