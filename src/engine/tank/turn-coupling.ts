import { type RingKernel, ringKernel } from './ring-kernel.ts';

/** closest spacing treated: at 0.98 the wires are a fiftieth of their pitch apart, and the loss is within 2 % of that of touching wires */
export const CLOSEST = 0.98;

/** What a wire does to its n-th neighbour in a row, for sources and fields scaled to the wire's surface. */
export interface NeighbourCoupling {
  /** a / (n p) */
  readonly reach: number;
  /** sum of source and field orders beyond which the coupling is negligible */
  readonly span: number;
  /** binomial(m + q - 1, q) (a / n p)^(m + q) at [q * (orders + 1) + m]: source order m, field order q */
  readonly straight: Float64Array;
  /** the same times (-1)^m: a neighbour on the other side */
  readonly alternate: Float64Array;
  /** highest field order that the neighbour's whole current still excites, and the fields: (a / n p)^q / q */
  readonly currentOrders: number;
  readonly current: Float64Array;
  /** curvature and far sides; absent for straight wires */
  readonly ring: RingKernel | null;
}

/**
 * Cylindrical orders needed in a row of round wires.
 *
 * The images of one wire in its neighbour crowd to a point at r = (1 - sqrt(1 - s^2)) / s radii from the centre, s = d/p, so that the
 * amplitudes fall as r^m and the loss converges as r^(2m).
 */
export function ordersNeeded(wireOverPitch: number, accuracy: number): number {
  const r = (1 - Math.sqrt(1 - wireOverPitch * wireOverPitch)) / wireOverPitch;
  return Math.max(2, Math.ceil(Math.log(accuracy) / (2 * Math.log(r))) + 1);
}

/**
 * Couplings to the 1st ... (count - 1)-th neighbour.
 *
 * @param orders - cylindrical orders kept
 * @param curvature - wire radius over ring radius; 0 for straight wires
 * @param accuracy - of the loss, relative: sets what is negligible
 * Source: addition theorem of the plane multipoles, Re (w + D)^-m expanded about w = 0 (Rayleigh, Phil. Mag. 34 (1892) 481).
 */
export function neighbourCouplings(
  count: number,
  wireOverPitch: number,
  curvature: number,
  orders: number,
  accuracy: number,
): readonly NeighbourCoupling[] {
  const binomial = binomials(orders);
  const width = orders + 1;
  const couplings: NeighbourCoupling[] = [];
  for (let n = 1; n < count; n++) {
    const reach = wireOverPitch / (2 * n);
    // the largest entry of one sum L of orders is about (2 reach)^L / 2
    const span = Math.min(2 * orders, Math.max(2, Math.ceil(Math.log(accuracy / 5) / Math.log(2 * reach))));
    const powers = new Float64Array(span + 1);
    powers[0] = 1;
    for (let L = 1; L <= span; L++) powers[L] = powers[L - 1]! * reach;
    const straight = new Float64Array(width * width);
    const alternate = new Float64Array(width * width);
    for (let q = 1; q <= orders; q++)
      for (let m = 1; m <= orders && m + q <= span; m++) {
        const value = binomial[q * width + m]! * powers[m + q]!;
        straight[q * width + m] = value;
        alternate[q * width + m] = m & 1 ? -value : value;
      }
    const currentOrders = Math.min(orders, span - 1, Math.max(2, Math.ceil(Math.log(accuracy / 10) / Math.log(reach))));
    const current = new Float64Array(currentOrders + 1);
    for (let q = 1; q <= currentOrders; q++) current[q] = powers[q]! / q;
    const ring = curvature > 0 ? ringKernel(curvature / reach) : null;
    couplings.push({ reach, span, straight, alternate, currentOrders, current, ring });
  }
  return couplings;
}

/** binomial(m + q - 1, q) at [q * (orders + 1) + m] */
function binomials(orders: number): Float64Array {
  const width = orders + 1;
  const table = new Float64Array(width * width);
  for (let m = 1; m <= orders; m++) {
    let value = 1;
    for (let q = 1; q <= orders; q++) {
      value = (value * (m + q - 1)) / q;
      table[q * width + m] = value;
    }
  }
  return table;
}
