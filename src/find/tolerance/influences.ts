import { solveReal } from '#engine';
import { mean } from './estimate.ts';

/** How much of what a figure varies comes of each scatter. */
export interface Influences {
  /** first-order share of the variance by scatter, 0 to 1, as a straight line through the sample tells it, what the luck of the sample adds taken off */
  readonly shares: readonly number[];
  /** change of the figure for one standard deviation */
  readonly slopes: readonly number[];
  /** share of the variance that straight lines account for, likewise: near 1 the shares can be trusted, well below it the figure bends */
  readonly explained: number;
}

/**
 * Shares of variance by linear regression on the scatters in standard deviations: (beta_j^2 - its sampling error squared) / var(y), and R^2 adjusted for the number of scatters.
 *
 * Without these two a small sample gives every scatter a share, since chance alone fits d of n samples.
 *
 * @param z - one row a sample, columns independent with unit variance
 * @returns null with fewer samples than twice the columns, or where the figure does not vary
 * Source: A. Saltelli et al., Global Sensitivity Analysis (2008) sec. 1.2.5: squared standardised regression coefficients are the first-order indices of a linear model;
 * adjusted R^2: M. Ezekiel, Methods of Correlation Analysis (1930) (from memory); the mean of the inverse of a Wishart matrix, 1/(n - d - 2), for the error of a coefficient.
 */
export function influences(z: readonly (readonly number[])[], y: readonly number[]): Influences | null {
  const d = z[0]?.length ?? 0;
  if (z.length < 2 * (d + 1)) return null;
  const n = d + 1;
  const a = new Float64Array(n * n);
  const b = new Float64Array(n);
  z.forEach((row, k) => {
    for (let i = 0; i < n; i++) {
      const zi = i === d ? 1 : row[i]!;
      b[i] = b[i]! + zi * y[k]!;
      for (let j = 0; j < n; j++) a[i * n + j] = a[i * n + j]! + zi * (j === d ? 1 : row[j]!);
    }
  });
  if (!solveReal(n, a, b)) return null;
  const m = mean(y);
  const whole = y.reduce((sum, v) => sum + (v - m) ** 2, 0) / y.length;
  if (!(whole > 0)) return null;
  const residual = z.reduce((sum, row, k) => sum + (y[k]! - row.reduce((s, v, i) => s + b[i]! * v, b[d]!)) ** 2, 0) / y.length;
  const slopes = [...b.subarray(0, d)];
  const free = y.length - d - 1;
  const variance = (residual * y.length) / free;
  const luck = variance / Math.max(1, free - 1);
  const total = (whole * y.length) / (y.length - 1);
  return { slopes, shares: slopes.map((s) => Math.max(0, s * s - luck) / total), explained: Math.max(0, 1 - variance / total) };
}
