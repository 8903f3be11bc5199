import { C, type Complex } from '../numeric/index.ts';
import { earthModes, MODES, outgoingAiry } from './earth-modes.ts';

/** A term this far below the sum, and falling, ends the series. */
const SMALL = 1e-6;

/**
 * Field over a smooth earth by the full residue series.
 *
 * W = exp(j pi/4) sqrt(pi x) sum_s exp(j x t_s)/(t_s - q^2) * w1(t_s - y1)/w1(t_s) * w1(t_s - y2)/w1(t_s), x = (k a/2)^(1/3) d/a,
 * y = k h/(k a/2)^(1/3).
 *
 * @param x - normalised distance, above zero
 * @param q - ground's impedance in Fock's units, exp(-j w t)
 * @param y1 - normalised height of one end, and `y2` of the other
 * @returns magnitude over that of two rays in phase, twice the free-space field
 * Holds for: any place where the series settles: x of 0.2 and more, from the horizon's far side to grazing angles of about 2 (2/(k a))^(1/3).
 * Source: V. A. Fock (1965) ch. 10; ITU-R P.526-15 section 3 names it as the reference method for smooth earth.
 */
export function residueSeries(x: number, q: Complex, y1: number, y2: number): number {
  const q2 = C.mul(q, q);
  let sum: Complex = C.ZERO;
  let last = Number.POSITIVE_INFINITY;
  for (let s = 0; s < MODES; s++) {
    const t = earthModes(q, s + 1)[s]!;
    const root = outgoingAiry(t);
    // at a root w1 = w1'/q, which keeps its figures where w1 almost vanishes
    const atGround = C.abs2(q) > C.abs(t) ? C.div(root.derivative, q) : root.value;
    let term = C.div(C.cis(x * t.re), C.sub(t, q2));
    let exponent = -x * t.im;
    for (const y of [y1, y2]) {
      if (y === 0) continue;
      const raised = outgoingAiry({ re: t.re - y, im: t.im });
      term = C.mul(term, C.div(raised.value, atGround));
      exponent += raised.exponent - root.exponent;
    }
    term = C.scale(term, Math.exp(exponent));
    sum = C.add(sum, term);
    const size = C.abs(term);
    if (size < last && size < SMALL * C.abs(sum)) break;
    last = size;
  }
  return Math.sqrt(Math.PI * x) * C.abs(sum);
}
