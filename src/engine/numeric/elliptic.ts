/**
 * Complete elliptic integrals of the first and second kind, together.
 *
 * K(m) = pi / (2 agm(1, sqrt(1 - m))),  E(m) = K(m) (1 - sum 2^(n-1) c_n^2)
 *
 * @param m - parameter, m = k^2, 0 <= m < 1
 * @param complement - 1 - m; pass it where it is known more exactly than the subtraction gives (m near 1)
 * Source: Abramowitz & Stegun 17.6.3-4; NIST DLMF 19.8(i).
 */
export function ellipticKE(m: number, complement = 1 - m): { readonly k: number; readonly e: number } {
  let a = 1;
  let g = Math.sqrt(complement);
  let power = 0.5;
  let sum = power * m;
  // c_n is squared at each step, so 1e-8 leaves 1e-16; from g = 1e-150 that takes 14 steps
  for (let c = 1; Math.abs(c) > 1e-8 * a; ) {
    c = (a - g) / 2;
    const next = (a + g) / 2;
    g = Math.sqrt(a * g);
    a = next;
    power *= 2;
    sum += power * c * c;
  }
  const k = Math.PI / (2 * a);
  return { k, e: k * (1 - sum) };
}

/** Complete elliptic integral of the first kind; parameter m = k^2, 0 <= m < 1. Source: as `ellipticKE`. */
export const ellipticK = (m: number): number => ellipticKE(m).k;

/** Complete elliptic integral of the second kind; parameter m = k^2, 0 <= m <= 1. Source: as `ellipticKE`. */
export const ellipticE = (m: number): number => (m === 1 ? 1 : ellipticKE(m).e);

/**
 * (1 - m/2) K(m) - E(m), by positive terms only, so that it keeps all its digits where m is small and K and E nearly cancel.
 *
 * (1 - m/2) K - E = K sum_{n>=1} 2^(n-1) c_n^2,  c_1 = m / (2 (1 + sqrt(1 - m))),  c_(n+1) = c_n^2 / (4 a_(n+1))
 *
 * @param m - parameter, m = k^2, 0 < m < 1
 * @param complement - 1 - m; pass it where it is known more exactly than the subtraction gives (m near 1)
 * Source: Abramowitz & Stegun 17.6.3-4, with the n = 0 term of the sum for E taken out.
 */
export function ellipticHalfDifference(m: number, complement = 1 - m): number {
  let a = 1;
  let g = Math.sqrt(complement);
  let c = m / (2 * (1 + g));
  let power = 1;
  let sum = 0;
  // the terms fall quadratically; from complement = 1e-300 that takes 14 steps
  for (let n = 0; n < 40; n++) {
    const next = (a + g) / 2;
    g = Math.sqrt(a * g);
    a = next;
    const part = power * c * c;
    sum += part;
    if (part <= 1e-17 * sum) break;
    c = (c * c) / (2 * (a + g));
    power *= 2;
  }
  return (sum * Math.PI) / (2 * a);
}
