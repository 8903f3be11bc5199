/** Nodes and weights of Gauss-Legendre quadrature on (-1, 1). */
export interface Rule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

const rules = new Map<number, Rule>();

/**
 * Gauss-Legendre rule of n points on (-1, 1): exact for polynomials of degree 2n - 1.
 *
 * Newton's iteration on P_n from Tricomi's start; rules are kept, since every caller asks for the same few.
 * Source: Abramowitz & Stegun 25.4.29-30; start 22.16.6.
 */
export function gaussLegendre(n: number): Rule {
  const known = rules.get(n);
  if (known) return known;
  const nodes = new Float64Array(n);
  const weights = new Float64Array(n);
  for (let i = 0; i < (n + 1) >> 1; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let derivative = 1;
    for (let step = 0; step < 100; step++) {
      let p0 = 1;
      let p1 = x;
      for (let k = 2; k <= n; k++) {
        const p2 = ((2 * k - 1) * x * p1 - (k - 1) * p0) / k;
        p0 = p1;
        p1 = p2;
      }
      if (n === 1) p0 = 1;
      derivative = (n * (x * p1 - p0)) / (x * x - 1);
      const dx = p1 / derivative;
      x -= dx;
      if (Math.abs(dx) < 1e-16) break;
    }
    const w = 2 / ((1 - x * x) * derivative * derivative);
    nodes[i] = -x;
    nodes[n - 1 - i] = x;
    weights[i] = w;
    weights[n - 1 - i] = w;
  }
  const rule = { nodes, weights };
  rules.set(n, rule);
  return rule;
}

/** Integral of f from a to b by an n-point rule. */
export function integrate(f: (x: number) => number, a: number, b: number, n = 16): number {
  const { nodes, weights } = gaussLegendre(n);
  const half = (b - a) / 2;
  const mid = (a + b) / 2;
  let sum = 0;
  for (let i = 0; i < n; i++) sum += weights[i]! * f(mid + half * nodes[i]!);
  return sum * half;
}
