/**
 * Riemann's zeta function for real s > 1: the sum of 1 / n^s.
 *
 * Twenty terms summed, the rest by the Euler-Maclaurin formula; error below 1e-14.
 *
 * Source: Abramowitz & Stegun 23.1.30, 23.2.1.
 */
export function riemannZeta(s: number): number {
  const n = 20;
  let sum = 0;
  for (let k = 1; k < n; k++) sum += k ** -s;
  const tail = n ** -s;
  const a = (s * tail) / n;
  const b = (a * (s + 1) * (s + 2)) / (n * n);
  const c = (b * (s + 3) * (s + 4)) / (n * n);
  const d = (c * (s + 5) * (s + 6)) / (n * n);
  return sum + (n * tail) / (s - 1) + tail / 2 + a / 12 - b / 720 + c / 30240 - d / 1209600;
}
