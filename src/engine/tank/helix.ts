import { MU0 } from '../constants.ts';
import { gaussLegendre } from '../numeric/gauss-legendre.ts';
import { parallelFilamentMutual, straightWireInductance } from './straight-wires.ts';

/** Parts of Neumann's integral over a helix with its leads [H]. */
export interface HelixInductance {
  /** current round the axis: what the ring sum stands for */
  readonly around: number;
  /** current along the axis */
  readonly along: number;
  /** two leads, straight out from the ends: alone, with each other, with the helix */
  readonly leads: number;
}

/**
 * Inductance of a true helix with its leads as wire, by Neumann's integral: the rival of the ring sum.
 *
 * L = (mu0 / 4 pi) int (Phi - |psi|) (R^2 cos psi + h^2) / sqrt(4 R^2 sin^2(psi/2) + h^2 psi^2 + g^2) d psi,  h = p / 2 pi
 *
 * A helix looks the same from each of its points, so the double integral is a single one over the angle between two of them. Within half
 * a turn the filament is a geometric mean distance g = a (surface current) from itself; other turns are seen at their true distance.
 *
 * @param radius - R, to the middle of the wire [m]
 * @param wireRadius - a [m]
 * @param pitch - p [m]
 * @param turns - whole turns
 * @param leadLength - each of two leads, pointing straight away from the axis [m]
 * Holds for: current the same along the wire, surface current even around it.
 * Source: Neumann 1845; geometric mean distance: Maxwell, Treatise (1873) art. 691; Grover, Inductance Calculations (1946) ch. 3.
 */
export function helixInductance(radius: number, wireRadius: number, pitch: number, turns: number, leadLength = 0): HelixInductance {
  const h = pitch / (2 * Math.PI);
  const whole = 2 * Math.PI * turns;
  let around = 0;
  let along = 0;
  const { nodes, weights } = gaussLegendre(24);
  // one half turn at a time, from the place where the other turn is nearest; sinh spreads the peak there
  for (let half = 0; half < 2 * turns; half++) {
    const centre = 2 * Math.PI * Math.ceil(half / 2);
    const side = half % 2 === 0 ? 1 : -1;
    const own = half === 0 ? wireRadius * wireRadius : 0;
    const nearest = Math.hypot(h * centre, half === 0 ? wireRadius : 0) / radius;
    const top = Math.asinh(Math.PI / nearest);
    for (let i = 0; i < nodes.length; i++) {
      const u = (top / 2) * (1 + nodes[i]!);
      const psi = centre + side * nearest * Math.sinh(u);
      const distance = Math.sqrt(4 * radius * radius * Math.sin(psi / 2) ** 2 + h * h * psi * psi + own);
      const w = ((weights[i]! * top) / 2) * nearest * Math.cosh(u) * ((whole - psi) / distance);
      around += w * radius * radius * Math.cos(psi);
      along += w * h * h;
    }
  }
  const scale = MU0 / (2 * Math.PI);
  return { around: scale * around, along: scale * along, leads: leadLength > 0 ? leads(radius, wireRadius, pitch, turns, leadLength) : 0 };
}

/** Leads along +x at both ends; the current comes in by the first and leaves by the second. */
function leads(radius: number, wireRadius: number, pitch: number, turns: number, length: number): number {
  const h = pitch / (2 * Math.PI);
  const pair = 2 * (straightWireInductance(length, wireRadius) - parallelFilamentMutual(length, length, -length, pitch * turns));
  const { nodes, weights } = gaussLegendre(24);
  // lead at the start against the winding; that at the end gives the same by symmetry (turn the coil over)
  let sum = 0;
  for (let half = 0; half < 2 * turns; half++)
    for (let i = 0; i < nodes.length; i++) {
      const psi = (half + (1 + nodes[i]!) / 2) * Math.PI;
      const x0 = radius * (1 - Math.cos(psi));
      const across = Math.hypot(radius * Math.sin(psi), h * psi);
      // int over the lead of 1 / distance, in closed form
      const potential = Math.asinh((x0 + length) / across) - Math.asinh(x0 / across);
      sum += weights[i]! * (Math.PI / 2) * radius * Math.sin(psi) * potential;
    }
  return pair + (2 * 2 * MU0 * sum) / (4 * Math.PI);
}
