import type { Complex } from './complex.ts';

/** Terms of the expansion: 40 reach 1e-13 of the value everywhere in the upper half plane. */
const TERMS = 40;
/** Weideman's scale, 2^(-1/4) sqrt(N). */
const SCALE = Math.sqrt(TERMS / Math.SQRT2);
/** Coefficients of the highest power first, for Horner's rule. */
const COEFFICIENTS = expansion();

/**
 * Faddeeva function w(z) = exp(-z^2) erfc(-j z), the scaled complementary error function of complex argument.
 *
 * w(z) = 2 p(Z) / (L - j z)^2 + (1 / sqrt(pi)) / (L - j z), Z = (L + j z)/(L - j z), in the upper half plane;
 * w(z) = 2 exp(-z^2) - w(-z) in the lower.
 *
 * @param z - any; in the lower half plane the value overflows where Im(z)^2 - Re(z)^2 passes 709
 * Source: J. A. C. Weideman, SIAM J. Numer. Anal. 31 (1994) 1497, section 3.
 */
export function faddeeva(z: Complex): Complex {
  if (z.im < 0) {
    const upper = faddeeva({ re: -z.re, im: -z.im });
    const magnitude = 2 * Math.exp(z.im * z.im - z.re * z.re);
    const phase = -2 * z.re * z.im;
    return { re: magnitude * Math.cos(phase) - upper.re, im: magnitude * Math.sin(phase) - upper.im };
  }
  // L - jz = (L + y) - jx ; L + jz = (L - y) + jx
  const denominatorRe = SCALE + z.im;
  const denominatorIm = -z.re;
  const size = denominatorRe * denominatorRe + denominatorIm * denominatorIm;
  const inverseRe = denominatorRe / size;
  const inverseIm = -denominatorIm / size;
  const numeratorRe = SCALE - z.im;
  const ratioRe = numeratorRe * inverseRe - z.re * inverseIm;
  const ratioIm = numeratorRe * inverseIm + z.re * inverseRe;
  let re = 0;
  let im = 0;
  for (let n = 0; n < TERMS; n++) {
    const r = re * ratioRe - im * ratioIm + COEFFICIENTS[n]!;
    im = re * ratioIm + im * ratioRe;
    re = r;
  }
  // (2 p * inverse + 1/sqrt(pi)) * inverse
  const innerRe = 2 * (re * inverseRe - im * inverseIm) + 1 / Math.sqrt(Math.PI);
  const innerIm = 2 * (re * inverseIm + im * inverseRe);
  return { re: innerRe * inverseRe - innerIm * inverseIm, im: innerRe * inverseIm + innerIm * inverseRe };
}

/**
 * Complementary error function of a real argument.
 *
 * erfc(x) = exp(-x^2) w(j x).
 */
export function erfc(x: number): number {
  if (x < 0) return 2 - erfc(-x);
  return Math.exp(-x * x) * faddeeva({ re: 0, im: x }).re;
}

/** Fourier coefficients of exp(-t^2)(L^2 + t^2), t = L tan(theta/2), by the trapezoidal rule. */
function expansion(): Float64Array {
  const half = 2 * TERMS;
  const sums = new Float64Array(TERMS);
  for (let k = -half + 1; k < half; k++) {
    const theta = (k * Math.PI) / half;
    const t = SCALE * Math.tan(theta / 2);
    const f = Math.exp(-t * t) * (SCALE * SCALE + t * t);
    for (let n = 1; n <= TERMS; n++) sums[TERMS - n]! += (f * Math.cos(n * theta)) / (2 * half);
  }
  return sums;
}
