import type { Complex } from './complex.ts';
import * as C from './complex.ts';

/** Airy function and its derivative, both to be multiplied by exp(exponent): neither overflows however large the argument. */
export interface ScaledAiry {
  readonly value: Complex;
  readonly derivative: Complex;
  readonly exponent: number;
}

/** Ai(0) and -Ai'(0). Source: Abramowitz & Stegun 10.4.4-5. */
const AT_ZERO = 0.355_028_053_887_817_2;
const SLOPE_AT_ZERO = 0.258_819_403_792_806_8;
/** Below this size the Maclaurin series loses less than six figures to cancellation. */
const SERIES_RADIUS = 4;
/** Above this size the asymptotic series reaches 1e-13. */
const ASYMPTOTIC_RADIUS = 8.5;
const TURN: Complex = C.cis((2 * Math.PI) / 3);
const TURN_BACK: Complex = C.conj(TURN);

/**
 * Airy function Ai and its derivative, complex argument, scaled.
 *
 * Small arguments: Maclaurin series (Abramowitz & Stegun 10.4.2-3). Large: asymptotic series (10.4.59, 61). Between: steepest-descent
 * integral Ai(z) = exp(-zeta)/(2 pi) int exp(-sqrt(z) t^2 - j t^3/3) dt by the trapezoidal rule, which converges exponentially.
 * Near the negative real axis, where Ai oscillates: Ai(z) = -T Ai(zT) - T* Ai(zT*), T = exp(j 2 pi/3) (10.4.7).
 *
 * @returns relative accuracy 1e-10 or better, away from the zeros
 */
export function scaledAiry(z: Complex): ScaledAiry {
  if (C.abs(z) <= SERIES_RADIUS) return { ...maclaurin(z), exponent: 0 };
  return Math.abs(C.arg(z)) > (2 * Math.PI) / 3 ? connected(z) : decaying(z);
}

/** Outside the series' circle, and no further than a third of a turn from the positive real axis. */
function decaying(z: Complex): ScaledAiry {
  const root = C.sqrt(z);
  const zeta = C.scale(C.mul(z, root), 2 / 3);
  const { value, derivative } = C.abs(z) >= ASYMPTOTIC_RADIUS ? asymptotic(root, zeta) : descent(root);
  const phase = C.cis(-zeta.im);
  return { value: C.mul(value, phase), derivative: C.mul(derivative, phase), exponent: -zeta.re };
}

function maclaurin(z: Complex): { value: Complex; derivative: Complex } {
  const cube = C.mul(z, C.mul(z, z));
  let f: Complex = C.complex(AT_ZERO);
  let g: Complex = C.scale(z, -SLOPE_AT_ZERO);
  // derivatives of the two series, term by term
  let fSlope: Complex = C.scale(C.mul(z, z), AT_ZERO / 2);
  let gSlope: Complex = C.complex(-SLOPE_AT_ZERO);
  let value = C.add(f, g);
  let derivative = C.add(fSlope, gSlope);
  for (let k = 1; k < 60; k++) {
    f = C.scale(C.mul(f, cube), 1 / ((3 * k - 1) * 3 * k));
    g = C.scale(C.mul(g, cube), 1 / (3 * k * (3 * k + 1)));
    fSlope = C.scale(C.mul(fSlope, cube), 1 / (3 * k * (3 * k + 2)));
    gSlope = C.scale(C.mul(gSlope, cube), 1 / ((3 * k - 2) * 3 * k));
    value = C.add(value, C.add(f, g));
    derivative = C.add(derivative, C.add(fSlope, gSlope));
    if (C.abs2(f) + C.abs2(g) < 1e-36 * C.abs2(value) && C.abs2(gSlope) < 1e-36 * C.abs2(derivative)) break;
  }
  return { value, derivative };
}

/** Step of the trapezoidal rule: 1e-11 at the worst place, |z| at the series' radius and two sixths of a turn from the positive axis. */
const STEP = 0.14;

/** exp(zeta) Ai(z), exp(zeta) Ai'(z) by the integral along the path of steepest descent, v = sqrt(z) + j t. */
function descent(root: Complex): { value: Complex; derivative: Complex } {
  let sumRe = 1;
  let sumIm = 0;
  let slopeRe = -root.re;
  let slopeIm = -root.im;
  // exp(-root t^2) cos(t^3/3) and the odd part t sin(t^3/3), from both signs of t
  for (let n = 1; ; n++) {
    const t = n * STEP;
    const decay = Math.exp(-root.re * t * t);
    if (decay < 1e-17) break;
    const re = decay * Math.cos(root.im * t * t);
    const im = -decay * Math.sin(root.im * t * t);
    const even = 2 * Math.cos((t * t * t) / 3);
    const odd = 2 * t * Math.sin((t * t * t) / 3);
    sumRe += even * re;
    sumIm += even * im;
    slopeRe += -even * (root.re * re - root.im * im) - odd * re;
    slopeIm += -even * (root.re * im + root.im * re) - odd * im;
  }
  const weight = STEP / (2 * Math.PI);
  return { value: { re: sumRe * weight, im: sumIm * weight }, derivative: { re: slopeRe * weight, im: slopeIm * weight } };
}

/** exp(zeta) Ai(z), exp(zeta) Ai'(z) by the asymptotic series, cut where its terms stop falling. */
function asymptotic(root: Complex, zeta: Complex): { value: Complex; derivative: Complex } {
  const inverse = C.scale(C.inv(zeta), -1);
  let term: Complex = C.ONE;
  let value: Complex = C.ONE;
  let derivative: Complex = C.ONE;
  let size = 1;
  for (let k = 1; k < 40; k++) {
    term = C.scale(C.mul(term, inverse), ((6 * k - 5) * (6 * k - 3) * (6 * k - 1)) / (216 * k * (2 * k - 1)));
    const next = C.abs(term);
    if (next > size) break;
    size = next;
    value = C.add(value, term);
    derivative = C.add(derivative, C.scale(term, -(6 * k + 1) / (6 * k - 1)));
    if (size < 1e-17) break;
  }
  const fourthRoot = C.sqrt(root);
  const front = 1 / (2 * Math.sqrt(Math.PI));
  return { value: C.scale(C.div(value, fourthRoot), front), derivative: C.scale(C.mul(derivative, fourthRoot), -front) };
}

/** The oscillating sector, from two arguments in sectors where the other forms hold. */
function connected(z: Complex): ScaledAiry {
  const a = decaying(C.mul(z, TURN));
  const b = decaying(C.mul(z, TURN_BACK));
  const exponent = Math.max(a.exponent, b.exponent);
  const weightA = Math.exp(a.exponent - exponent);
  const weightB = Math.exp(b.exponent - exponent);
  const value = C.neg(C.add(C.scale(C.mul(TURN, a.value), weightA), C.scale(C.mul(TURN_BACK, b.value), weightB)));
  // each derivative gains the turn once more: T T = T*
  const derivative = C.neg(C.add(C.scale(C.mul(TURN_BACK, a.derivative), weightA), C.scale(C.mul(TURN, b.derivative), weightB)));
  return { value, derivative, exponent };
}

/**
 * Zeros of Ai (`'value'`) and of Ai' (`'slope'`) on the negative real axis, as positive numbers in rising order.
 *
 * Asymptotic start (Abramowitz & Stegun 10.4.94-95, 105), polished by Newton's method on Ai'' = x Ai.
 */
export function airyZeros(of: 'value' | 'slope', count: number): Float64Array {
  const zeros = new Float64Array(count);
  for (let s = 1; s <= count; s++) {
    const u = of === 'value' ? (3 * Math.PI * (4 * s - 1)) / 8 : (3 * Math.PI * (4 * s - 3)) / 8;
    const u2 = u ** -2;
    const correction = of === 'value' ? 1 + (5 / 48) * u2 - (5 / 36) * u2 * u2 : 1 - (7 / 48) * u2 + (35 / 288) * u2 * u2;
    // the first zero of Ai' lies where the series has not settled
    let x = of === 'slope' && s === 1 ? 1.0188 : u ** (2 / 3) * correction;
    for (let step = 0; step < 4; step++) {
      const { value, derivative } = scaledAiry({ re: -x, im: 0 });
      x += of === 'value' ? value.re / derivative.re : derivative.re / (-x * value.re);
    }
    zeros[s - 1] = x;
  }
  return zeros;
}
