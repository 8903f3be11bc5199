import { ellipticKE } from '../numeric/elliptic.ts';

/**
 * Coupling of two equal coaxial rings, and how it changes when either is moved a little.
 *
 * With rho, rho' the radii and d the distance in the meridian plane, chi = 1 + d^2 / (2 rho rho'), the flux through one ring due to the other is
 * mu0 sqrt(rho rho') Q_(1/2)(chi), Q being the Legendre function of the second kind (Maxwell's mutual inductance is the same formula). Near a
 * ring it is that of straight wire, -ln d; the derivatives below are those of the rest, Q + ln d, which is what curvature and the far
 * sides of the turns add. Lengths are in ring radii.
 */
export interface RingKernel {
  /** Q_(1/2) */
  readonly whole: number;
  /** by the radius of one ring; the same by the other's */
  readonly x: number;
  /** by the distance along the axis, away from the source */
  readonly z: number;
  readonly xx: number;
  /** by the radius of one and of the other */
  readonly xy: number;
  readonly xz: number;
  readonly zz: number;
}

/**
 * @param z - distance of the rings' planes over their radius, > 0
 * Source: NIST DLMF 14.5(v), 14.10, 14.2(i) (Legendre's equation for the second derivative); Maxwell, Treatise (1873) art. 701.
 */
export function ringKernel(z: number): RingKernel {
  const above = (z * z) / 2;
  const chi = 1 + above;
  const sum = 2 + above;
  const m = 2 / sum;
  const root = Math.sqrt(m);
  const { k, e } = ellipticKE(m, above / sum);
  const whole = chi * root * k - (2 / root) * e;
  const product = above * sum;
  const first = (chi * whole - root * k) / (2 * product);
  const second = (0.75 * whole - 2 * chi * first) / product;
  const chiX = -above;
  return {
    whole,
    x: first * chiX,
    z: first * z + 1 / z,
    xx: second * chiX * chiX + first * (1 + z * z) + 1 / (z * z),
    xy: second * chiX * chiX + first * (above - 1) - 1 / (z * z),
    xz: second * chiX * z - first * z,
    zz: second * z * z + first - 1 / (z * z),
  };
}
