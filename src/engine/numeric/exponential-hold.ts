import type { Complex } from './complex.ts';
import * as C from './complex.ts';

/** A first-order mode x' = p x + u over one step h, u running straight between its samples: x1 = decay x0 + before u0 + after u1. */
export interface Hold {
  /** exp(p h) */
  readonly decay: Complex;
  /** h (phi1(p h) - phi2(p h)) [s] */
  readonly before: Complex;
  /** h phi2(p h) [s] */
  readonly after: Complex;
}

/** Below this |z| the closed forms lose figures and the series are used. */
const SMALL = 0.5;
const TERMS = 16;

/**
 * phi1(z) = (e^z - 1)/z and phi2(z) = (e^z - 1 - z)/z^2, the matrix exponential's relatives for inputs held and inputs running straight.
 *
 * Source: N. J. Higham, Functions of Matrices (2008), sec. 10.7.4.
 */
export function phiFunctions(z: Complex): { readonly first: Complex; readonly second: Complex } {
  if (C.abs(z) < SMALL) {
    // phi_k(z) = sum of z^n/(n + k)!
    let first: Complex = C.ZERO;
    let second: Complex = C.ZERO;
    let term: Complex = C.ONE;
    let factorial = 1;
    for (let n = 0; n < TERMS; n++) {
      factorial *= n + 1;
      first = C.add(first, C.scale(term, 1 / factorial));
      second = C.add(second, C.scale(term, 1 / (factorial * (n + 2))));
      term = C.mul(term, z);
    }
    return { first, second };
  }
  const first = C.div(C.sub(C.exp(z), C.ONE), z);
  return { first, second: C.div(C.sub(first, C.ONE), z) };
}

/**
 * The exact step of a mode under an input that runs straight between samples (first-order hold).
 *
 * For the transfer r/(s - p) the discrete response is the mean of its values at the images of a frequency, weighted by sinc^2 (weights that are
 * above zero and sum to one), so a passive impedance stays passive, and a bound that is convex (such as |Z - 1/(2 g)| <= 1/(2 g)) is kept.
 *
 * @param pole - p [1/s], not growing
 * @param step - h [s]
 * Source: G. F. Franklin, J. D. Powell, M. Workman, Digital Control of Dynamic Systems, 3rd ed. (1998), sec. 6.3.3 (triangle hold).
 */
export function straightHold(pole: Complex, step: number): Hold {
  const z = C.scale(pole, step);
  const { first, second } = phiFunctions(z);
  return { decay: C.exp(z), before: C.scale(C.sub(first, second), step), after: C.scale(second, step) };
}
