import { besselJRatios } from '../numeric/bessel-complex.ts';
import { roundWireImpedanceRatio } from './skin-effect.ts';

/** How a straight round wire answers fields of each cylindrical order. Arrays are indexed by order m from 1; index 0 is unused. */
export interface WireResponse {
  /** scattered over incident field at the surface: incident (r/a)^m gives t_m (a/r)^m */
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** loss caused by |incident|^2 of order m, over the loss caused by |S|^2 of the wire's own current, both at the surface */
  readonly loss: Float64Array;
  /** internal impedance of the lone wire over j omega mu0 / (2 pi) */
  readonly internalRe: number;
  readonly internalIm: number;
  /** for magnetic wire bent into a ring, over the curvature a/R: what continuity of H adds to either side of order 1 per S; 0 otherwise */
  readonly magneticRe: number;
  readonly magneticIm: number;
}

/**
 * Response of a round wire to the harmonics of a transverse field.
 *
 * t_m = (m - y_m) / (m + y_m),  y_m = (ka / mu) J_m'(ka) / J_m(ka),  k = (1 - j) / delta;
 * for mu = 1 it is t_m = J_(m+1)(ka) / J_(m-1)(ka), and for a vanishing skin depth -1.
 * Loss of order m over that of the current S: m (-Im t_m) / Re(j / y_0); 2 m^2 for a vanishing skin depth.
 *
 * @param orders - highest order
 * @param radiusInSkinDepths - wire radius over skin depth, > 0; Infinity for the limit of perfect skin effect
 * @param permeability - relative
 * Source: continuity of E_z and H_theta at the surface; the field of each order inside is J_m(kr) (Ramo, Whinnery & Van Duzer sec. 4.5 for m = 0;
 * Butterworth, Phil. Trans. A 222 (1922) 57 for m > 0).
 */
export function wireResponse(orders: number, radiusInSkinDepths: number, permeability = 1): WireResponse {
  const re = new Float64Array(orders + 1);
  const im = new Float64Array(orders + 1);
  const loss = new Float64Array(orders + 1);
  if (radiusInSkinDepths === Number.POSITIVE_INFINITY) {
    for (let m = 1; m <= orders; m++) {
      re[m] = -1;
      loss[m] = 2 * m * m;
    }
    return { re, im, loss, internalRe: 0, internalIm: 0, magneticRe: 0, magneticIm: 0 };
  }
  const x = radiusInSkinDepths;
  const ratios = besselJRatios(orders + 1, { re: x, im: -x });
  // R_dc over j omega mu0 / (2 pi) is -j / x^2
  const lone = roundWireImpedanceRatio(x);
  const internalRe = (permeability * lone.im) / (x * x);
  const internalIm = (-permeability * lone.re) / (x * x);
  for (let m = 1; m <= orders; m++) {
    const rRe = ratios.re[m]!;
    const rIm = ratios.im[m]!;
    if (permeability === 1) {
      const sRe = ratios.re[m + 1]!;
      const sIm = ratios.im[m + 1]!;
      re[m] = rRe * sRe - rIm * sIm;
      im[m] = rRe * sIm + rIm * sRe;
    } else {
      const d = permeability * (rRe * rRe + rIm * rIm);
      const yRe = (x * (rRe - rIm)) / d - m / permeability;
      const yIm = (-x * (rRe + rIm)) / d;
      const e = (m + yRe) ** 2 + yIm * yIm;
      re[m] = ((m - yRe) * (m + yRe) - yIm * yIm) / e;
      im[m] = (-2 * m * yIm) / e;
    }
    loss[m] = (m * im[m]!) / internalIm;
  }
  // rho E, not sqrt(rho) E, has the slope that H asks for; the difference is sqrt(rho) E (1 - 1/mu) / (2 rho), half to either side
  const share = (1 - 1 / permeability) / 4;
  return { re, im, loss, internalRe, internalIm, magneticRe: share * internalRe, magneticIm: share * internalIm };
}
