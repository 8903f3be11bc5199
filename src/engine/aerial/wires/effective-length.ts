import { SPEED_OF_LIGHT } from '../../constants.ts';
import { type Complex, gaussLegendre } from '../../numeric/index.ts';
import { arrivalAxes } from '../arrival.ts';
import type { Arrival } from '../model.ts';
import type { Mesh } from './mesh.ts';
import type { Point } from './point.ts';

/** Horizontal and vertical components of a complex effective length [m], or of anything that is a sum over the currents. */
export interface Components {
  readonly horizontal: Complex;
  readonly vertical: Complex;
}

/**
 * Integral of the current along the wires, in the direction of each component, with the phase of a plane wave from `arrival`.
 *
 * N = integral of I(l) t e^{jk r.(l - feed)} dl; with 1 A into the feed N is the complex effective length, by reciprocity: the open-circuit
 * voltage is E_h N_h + E_v N_v, E being the field of the wave at the feed.
 *
 * The sum is over the wires, never over their images: `place` gives the field there with the ground's reflection already in it, and
 * the wires hear that field. With a perfect plane the currents are those the plane makes, so the impedance and, through them, the
 * length follow it, but the reflected wave is counted once, in `place`.
 *
 * @param origin - the feed, or another point the phase is to be counted from
 * @param re, im - currents of the bases, any scale
 * @param only - leave out all wires but this one
 * Source: Balanis, Antenna Theory, 3rd ed., sec. 2.15 and eq. 2-91 to 2-93.
 */
export function currentMoment(
  m: Mesh,
  origin: Point,
  frequency: number,
  re: Float64Array,
  im: Float64Array,
  arrival: Arrival,
  only?: number,
): Components {
  const k = (2 * Math.PI * frequency) / SPEED_OF_LIGHT;
  const { toward: r, horizontal: h, vertical: v } = arrivalAxes(arrival);
  let hr = 0;
  let hi = 0;
  let vr = 0;
  let vi = 0;
  const { rowStart, column, sign } = m;
  for (let s = 0; s < m.segments; s++) {
    if (only !== undefined && m.wire[s] !== only) continue;
    const d = m.length[s]!;
    const { nodes, weights } = gaussLegendre(k * d < 0.5 ? 4 : 8);
    let [ar, ai, br, bi] = [0, 0, 0, 0];
    for (let i = rowStart[2 * s]!; i < rowStart[2 * s + 1]!; i++) {
      ar += sign[i]! * re[column[i]!]!;
      ai += sign[i]! * im[column[i]!]!;
    }
    for (let i = rowStart[2 * s + 1]!; i < rowStart[2 * s + 2]!; i++) {
      br += sign[i]! * re[column[i]!]!;
      bi += sign[i]! * im[column[i]!]!;
    }
    const sine = Math.sin(k * d);
    const start = k * (r[0] * (m.x[s]! - origin.x) + r[1] * (m.y[s]! - origin.y) + r[2] * (m.z[s]! - origin.z));
    const slope = k * (r[0] * m.tx[s]! + r[1] * m.ty[s]! + r[2] * m.tz[s]!);
    let sr = 0;
    let si = 0;
    for (let i = 0; i < nodes.length; i++) {
      const t = (d / 2) * (1 + nodes[i]!);
      const w = ((d / 2) * weights[i]!) / sine;
      const f0 = w * Math.sin(k * (d - t));
      const f1 = w * Math.sin(k * t);
      const c = Math.cos(start + slope * t);
      const q = Math.sin(start + slope * t);
      const cr = ar * f0 + br * f1;
      const ci = ai * f0 + bi * f1;
      sr += cr * c - ci * q;
      si += cr * q + ci * c;
    }
    const th = h[0] * m.tx[s]! + h[1] * m.ty[s]!;
    const tv = v[0] * m.tx[s]! + v[1] * m.ty[s]! + v[2] * m.tz[s]!;
    hr += th * sr;
    hi += th * si;
    vr += tv * sr;
    vi += tv * si;
  }
  return { horizontal: { re: hr, im: hi }, vertical: { re: vr, im: vi } };
}
