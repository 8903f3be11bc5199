import { airyZeros, C, type Complex, scaledAiry } from '../numeric/index.ts';

/** exp(j 2 pi / 3): Fock's w1(t) is proportional to Ai(t T). */
const TURN = C.cis((2 * Math.PI) / 3);
const RAY = C.cis(Math.PI / 3);
/** Modes that are ever asked for. */
export const MODES = 120;
const slopeZeros = airyZeros('slope', MODES);
const valueZeros = airyZeros('value', MODES);
const known = new Map<string, Complex[]>();

/** One solution w1 of Airy's equation, scaled: value, derivative in t, and the exponent both lack. */
export function outgoingAiry(t: Complex): { readonly value: Complex; readonly derivative: Complex; readonly exponent: number } {
  const airy = scaledAiry(C.mul(t, TURN));
  return { value: airy.value, derivative: C.mul(airy.derivative, TURN), exponent: airy.exponent };
}

/**
 * Modes of the smooth earth: the first roots t_s of w1'(t) = q w1(t).
 *
 * Each is led from where it is known (a zero of Ai' at q = 0, a zero of Ai at q = infinity, on the ray exp(j pi/3)) along
 * dt/dq = 1/(t - q^2) in a few steps of the fourth-order Runge-Kutta rule, then polished by Newton's method. The start with
 * |q| < sqrt|t| leads from q = 0, the others from infinity: the two families meet root by root for every ground.
 *
 * @param q - j (k a / 2)^(1/3) Delta, exp(-j w t), Fock's convention; its argument is pi/4 (conductor) to 3 pi/4
 * @returns at least `count` roots in rising order; the list is kept for the next caller with the same ground and frequency
 * Source: V. A. Fock, Electromagnetic Diffraction and Propagation Problems (1965), ch. 10; H. Bremmer, Terrestrial Radio Waves (1949).
 */
export function earthModes(q: Complex, count: number): readonly Complex[] {
  const key = `${q.re} ${q.im}`;
  let modes = known.get(key);
  if (!modes) {
    if (known.size >= 32) known.clear();
    modes = [];
    known.set(key, modes);
  }
  while (modes.length < Math.min(count, MODES)) modes.push(mode(q, modes.length));
  return modes;
}

function mode(q: Complex, s: number): Complex {
  const size = C.abs(q);
  const fromZero = size < Math.sqrt(slopeZeros[s]!);
  const start = C.scale(RAY, fromZero ? slopeZeros[s]! : valueZeros[s]!);
  const reach = fromZero ? size / Math.sqrt(slopeZeros[s]!) : Math.sqrt(valueZeros[s]!) / size;
  const steps = Math.max(1, Math.ceil(4 * reach));
  const end = fromZero ? q : C.inv(q);
  // dt/dq = 1/(t - q^2); in tau = 1/q, dt/dtau = 1/(1 - tau^2 t)
  const slope = fromZero
    ? (at: Complex, t: Complex) => C.inv(C.sub(t, C.mul(at, at)))
    : (at: Complex, t: Complex) => C.inv(C.sub(C.ONE, C.mul(t, C.mul(at, at))));
  let t = start;
  for (let step = 0; step < steps; step++) {
    const h = C.scale(end, 1 / steps);
    const from = C.scale(end, step / steps);
    const middle = C.add(from, C.scale(h, 0.5));
    const k1 = slope(from, t);
    const k2 = slope(middle, C.add(t, C.scale(C.mul(h, k1), 0.5)));
    const k3 = slope(middle, C.add(t, C.scale(C.mul(h, k2), 0.5)));
    const k4 = slope(C.add(from, h), C.add(t, C.mul(h, k3)));
    t = C.add(t, C.mul(C.scale(h, 1 / 6), C.add(C.add(k1, k4), C.scale(C.add(k2, k3), 2))));
  }
  return polish(t, q);
}

/** Newton on w1'/w1 - q where the ground is near a conductor, on w1/w1' - 1/q where it is not: each is smooth where it is used. */
function polish(start: Complex, q: Complex): Complex {
  let t = start;
  for (let step = 0; step < 8; step++) {
    const { value, derivative } = outgoingAiry(t);
    const large = C.abs2(q) > C.abs(t);
    const ratio = large ? C.div(value, derivative) : C.div(derivative, value);
    const error = C.sub(ratio, large ? C.inv(q) : q);
    const square = C.mul(ratio, ratio);
    const slope = large ? C.sub(C.ONE, C.mul(t, square)) : C.sub(t, square);
    const change = C.div(error, slope);
    t = C.sub(t, change);
    if (C.abs(change) < 1e-11 * C.abs(t)) break;
  }
  return t;
}
