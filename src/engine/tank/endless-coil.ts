import * as LU from '../numeric/lu.ts';
import { riemannZeta } from '../numeric/riemann-zeta.ts';
import { CLOSEST, ordersNeeded } from './turn-coupling.ts';
import { type WireResponse, wireResponse } from './wire-response.ts';

/** Loss of a turn far from the ends of a long coil of many turns, over that of straight wire, with its two causes. */
export interface EndlessCoil {
  readonly proximityFactor: number;
  /** as if the turns were an endless row of straight wires: own current and neighbours' */
  readonly own: number;
  /** added by the field along the axis, I / (2 p) on either face of the row */
  readonly axialField: number;
}

/**
 * Proximity factor in the middle of an endless coil whose turns are wide against the wire.
 *
 * An endless row of straight wires under its own currents (even orders) and in the uniform axial field of the far sides (odd orders); by
 * symmetry the two are independent, each one linear system whose lattice sums are zeta functions.
 *
 * @param wireOverPitch - 0 to 1; taken as at most 0.98
 * @param radiusInSkinDepths - > 0; Infinity for perfect skin effect
 * @param accuracy - relative
 * Source: Rayleigh, Phil. Mag. 34 (1892) 481 (lattice sums); in the limit of perfect skin effect the values are those of Medhurst's column for l/D
 * without end (Wireless Engineer 24 (1947) 35, 80).
 */
export function endlessCoil(wireOverPitch: number, radiusInSkinDepths: number, permeability = 1, accuracy = 1e-4): EndlessCoil {
  const spacing = Math.min(wireOverPitch, CLOSEST);
  const orders = ordersNeeded(spacing, accuracy) + 2;
  const wire = wireResponse(orders, radiusInSkinDepths, permeability);
  const reach = spacing / 2;
  const sums = Float64Array.from({ length: 2 * orders + 1 }, (_, s) => (s < 2 ? 0 : 2 * riemannZeta(s) * reach ** s));
  const own = 1 + lossInRow(wire, orders, 2, sums, (q) => -sums[q]! / q);
  const axialField = lossInRow(wire, orders, 1, sums, (q) => (q === 1 ? -Math.PI * reach : 0));
  return { proximityFactor: own + axialField, own, axialField };
}

/** Loss of the orders first, first + 2, ... under a given drive. */
function lossInRow(wire: WireResponse, orders: number, first: 1 | 2, sums: Float64Array, drive: (order: number) => number): number {
  const n = (orders - first + 2) >> 1;
  const re = new Float64Array(n * n);
  const im = new Float64Array(n * n);
  const fieldRe = new Float64Array(n);
  const fieldIm = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const q = first + 2 * i;
    fieldRe[i] = drive(q);
    // binomial(m + q - 1, q) at the first m
    let binomial = first === 1 ? 1 : q + 1;
    for (let j = 0; j < n; j++) {
      const m = first + 2 * j;
      const coupling = -binomial * sums[m + q]!;
      re[i * n + j] = coupling * wire.re[m]! + (i === j ? 1 : 0);
      im[i * n + j] = coupling * wire.im[m]!;
      binomial *= ((m + q) * (m + q + 1)) / (m * (m + 1));
    }
  }
  const pivots = new Int32Array(n);
  LU.factor(n, re, im, pivots);
  LU.solve(n, re, im, pivots, fieldRe, fieldIm);
  let loss = 0;
  for (let i = 0; i < n; i++) loss += wire.loss[first + 2 * i]! * (fieldRe[i]! ** 2 + fieldIm[i]! ** 2);
  return loss;
}
