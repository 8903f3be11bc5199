import { MU0 } from '../constants.ts';
import { METALS, type Metal } from '../metals.ts';
import { besselJRatios } from '../numeric/bessel-complex.ts';

/**
 * Depth at which a plane wave in a metal has fallen to 1/e.
 *
 * delta = sqrt(rho / (pi f mu))
 *
 * @param resistivity - [ohm m]
 * @param frequency - [Hz]; at 0 the depth is infinite
 * @param permeability - relative
 * @returns [m]
 * Source: Wheeler, Proc. IRE 30 (1942) 412, eq. 1.
 */
export function skinDepth(resistivity: number, frequency: number, permeability = 1): number {
  return Math.sqrt(resistivity / (Math.PI * frequency * permeability * MU0));
}

/**
 * Resistance of a square of metal much thicker than the skin depth.
 *
 * R_s = rho / delta
 *
 * @returns [ohm]
 * Source: Wheeler, Proc. IRE 30 (1942) 412, eq. 5.
 */
export function surfaceResistance(resistivity: number, frequency: number, permeability = 1): number {
  return resistivity / skinDepth(resistivity, frequency, permeability);
}

/**
 * Internal impedance of a straight, lone round wire over its resistance to direct current.
 *
 * Z_i / R_dc = (ka / 2) J_0(ka) / J_1(ka),  k = (1 - j) / delta
 *
 * @param radiusInSkinDepths - wire radius over skin depth, >= 0
 * @returns dimensionless complex ratio
 * Source: Ramo, Whinnery & Van Duzer, Fields and Waves, sec. 4.5; Bessel's equation for the field in a round wire.
 */
export function roundWireImpedanceRatio(radiusInSkinDepths: number): { readonly re: number; readonly im: number } {
  if (radiusInSkinDepths === 0) return { re: 1, im: 0 };
  const x = radiusInSkinDepths;
  const { re, im } = besselJRatios(1, { re: x, im: -x });
  const r = re[1]!;
  const m = im[1]!;
  const d = 2 * (r * r + m * m);
  return { re: (x * (r - m)) / d, im: (-x * (r + m)) / d };
}

/** Resistance of a round wire to direct current at 20 C: 4 rho l / (pi d^2) [ohm]; diameter and length [m]. Resistivities: metals.ts. */
export function roundWireDirectResistance(diameter: number, length: number, metal: Metal): number {
  return (4 * METALS[metal].resistivity * length) / (Math.PI * diameter * diameter);
}

/**
 * Resistance of a straight, lone round wire at any frequency, exact in skin effect.
 *
 * R = R_dc (1 + s (F - 1)),  F = Re[(ka / 2) J_0(ka) / J_1(ka)]
 *
 * The surface factor s (rough or tarnished skin) multiplies what the crowding of current into the surface adds; the inside of the wire, which
 * carries direct current, does not feel its surface. With developed skin effect R is s times that of the bright wire.
 *
 * @param diameter - of the metal [m]
 * @param length - [m]
 * @param frequency - [Hz], >= 0
 * @param surfaceFactor - 1 for bright
 * @returns [ohm]
 * Holds for: length much above diameter; displacement current in the metal neglected (valid far beyond UHF)
 * Source: as `roundWireImpedanceRatio`; table in NBS Circular 74 and Terman, Radio Engineers' Handbook (1943) sec. 2.
 */
export function roundWireResistance(diameter: number, length: number, metal: Metal, frequency: number, surfaceFactor = 1): number {
  const direct = roundWireDirectResistance(diameter, length, metal);
  const ratio = roundWireImpedanceRatio(radiusInSkinDepths(diameter, metal, frequency)).re;
  return direct * (1 + surfaceFactor * (ratio - 1));
}

/**
 * Inductance due to the flux inside the metal of a straight, lone round wire.
 *
 * L_i = Im(Z_i) / (2 pi f); mu l / (8 pi) at low frequency
 *
 * @param diameter - [m]
 * @param length - [m]
 * @param frequency - [Hz], >= 0
 * @returns [H]
 * Source: as `roundWireImpedanceRatio`.
 */
export function roundWireInternalInductance(diameter: number, length: number, metal: Metal, frequency: number): number {
  const x = radiusInSkinDepths(diameter, metal, frequency);
  const uniform = (METALS[metal].permeability * MU0 * length) / (8 * Math.PI);
  // below this the ratio differs from 1 by x^4 / 96 < 1e-14, and the digits of the imaginary part cancel
  if (x < 1e-3) return uniform;
  return (uniform * 4 * roundWireImpedanceRatio(x).im) / (x * x);
}

/** Wire radius over skin depth; 0 at direct current. */
export function radiusInSkinDepths(diameter: number, metal: Metal, frequency: number): number {
  const { resistivity, permeability } = METALS[metal];
  return diameter / 2 / skinDepth(resistivity, frequency, permeability);
}
