/**
 * Sine and cosine integrals of real argument, the functions of thin-wire aerial theory.
 *
 * Below 6 the power series (the greatest term is then below 20, so rounding stays near 1e-15); from 6 upward the continued fraction of
 * E1(jx), taken backward over enough terms for 1e-16.
 * Source: Abramowitz & Stegun 5.2.14, 5.2.16 (series), 5.1.22 (continued fraction), 5.2.21-24 (E1 of imaginary argument).
 */

const EULER = 0.577_215_664_901_532_9;
const SERIES_END = 6;

/**
 * Si(x) = integral of sin t / t and Cin(x) = integral of (1 - cos t) / t, both from 0 to x, together.
 *
 * Cin(x) = C + ln x - Ci(x) keeps its digits where x is small. Si is odd, Cin even.
 * Accuracy: Si and Cin 1e-14 absolute; under 6 also 1e-13 relative.
 */
export function sineIntegrals(x: number): { readonly si: number; readonly cin: number } {
  const y = Math.abs(x);
  if (y >= SERIES_END) {
    const e = exponentialIntegral(y);
    return { si: Math.sign(x) * (Math.PI / 2 + e.im), cin: EULER + Math.log(y) + e.re };
  }
  // one power series, x^n/n!, whose even terms make Cin and odd ones Si
  let power = x;
  let si = x;
  let cin = 0;
  for (let n = 2; n < 60; n += 2) {
    power *= -x / n;
    cin -= power / n;
    power *= x / (n + 1);
    si += power / (n + 1);
    if (Math.abs(power) <= 1e-17 * y) break;
  }
  return { si, cin };
}

/** Si(x) = integral of sin t / t from 0 to x. */
export const sineIntegral = (x: number): number => sineIntegrals(x).si;

/** Cin(x) = integral of (1 - cos t) / t from 0 to x. */
export const entireCosineIntegral = (x: number): number => sineIntegrals(x).cin;

/** Ci(x) = C + ln x - Cin(x) for x > 0; minus infinity at 0. Absolute error below 1e-14. */
export function cosineIntegral(x: number): number {
  if (x >= SERIES_END) return -exponentialIntegral(x).re;
  return EULER + Math.log(x) - sineIntegrals(x).cin;
}

/** E1(jx) for x >= 6: e^(-jx) / (z + 1 - 1/(z + 3 - 4/(z + 5 - ...))), z = jx. */
function exponentialIntegral(x: number): { re: number; im: number } {
  let re = 0;
  let im = 0;
  for (let n = x < 8 ? 34 : 22; n > 0; n--) {
    // t = n^2 / (z + 2n + 1 - t)
    const a = 2 * n + 1 - re;
    const b = x - im;
    const d = (n * n) / (a * a + b * b);
    re = a * d;
    im = -b * d;
  }
  const a = 1 - re;
  const b = x - im;
  const d = a * a + b * b;
  const c = Math.cos(x);
  const s = Math.sin(x);
  return { re: (c * a - s * b) / d, im: -(s * a + c * b) / d };
}
