import { MU0 } from '../constants.ts';
import { ellipticHalfDifference, ellipticKE } from '../numeric/elliptic.ts';

/**
 * Mutual inductance of two circular filaments on one axis.
 *
 * M = mu0 sqrt(r1 r2) [(2/k - k) K - (2/k) E],  k^2 = 4 r1 r2 / ((r1 + r2)^2 + z^2)
 *
 * @param r1 - radius [m]
 * @param r2 - radius [m]
 * @param z - distance of their planes [m]; the filaments must not coincide
 * @returns [H]
 * Holds for: any distance; the bracket is summed from positive terms, so far and near rings keep their digits
 * Source: Maxwell, Treatise (1873) art. 701; Grover, Inductance Calculations (1946) ch. 11; NBS Circular 74.
 */
export function coaxialRingMutual(r1: number, r2: number, z: number): number {
  const far = (r1 + r2) ** 2 + z * z;
  const near = (r1 - r2) ** 2 + z * z;
  return MU0 * Math.sqrt(far) * ellipticHalfDifference((4 * r1 * r2) / far, near / far);
}

/** Flux density for one ampere [T/A], along the axis and outward from it. */
export interface RingField {
  readonly axial: number;
  readonly radial: number;
}

/**
 * Flux density of a circular filament on the cylinder of its own radius, at a distance along the axis.
 *
 * B_z = mu0 (K - E) / (2 pi s),  B_r = mu0 z (-K + (2 R^2 + z^2) E / z^2) / (2 pi R s),  s^2 = 4 R^2 + z^2
 *
 * @param radius - R [m]
 * @param z - from the ring's plane [m], not 0; the current runs right-handed about +z
 * Source: Smythe, Static and Dynamic Electricity (1950) sec. 7.10, at r = R.
 */
export function coaxialRingField(radius: number, z: number): RingField {
  const s2 = 4 * radius * radius + z * z;
  const { k, e } = ellipticKE((4 * radius * radius) / s2, (z * z) / s2);
  const s = Math.sqrt(s2);
  const axial = (MU0 * (k - e)) / (2 * Math.PI * s);
  const radial = (MU0 * z * (((2 * radius * radius + z * z) / (z * z)) * e - k)) / (2 * Math.PI * radius * s);
  return { axial, radial };
}
