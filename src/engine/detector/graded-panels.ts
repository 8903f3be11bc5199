/** Length of the panel at a bend, in widths of the bend; and of any other, in distances from the bend: each is so twice as long as all before it. */
const LENGTH = 2;
/** What is left between two bends is one panel when it is no longer than this many panels. */
const SLACK = 1.4;

/**
 * Cuts an interval into panels that are short at the points where an integrand bends and grow threefold from one to the next away from them.
 *
 * A Gauss-Legendre rule converges on a panel as rho^(-2 n), rho the sum of the half-axes of the largest ellipse about the panel (half-length 1)
 * within which the integrand is analytic. With a singularity beside the real axis at the distance `width` from the point, rho is 2.8 or more on
 * all these panels: 1e-9 with ten points, whatever the ratio of width to interval; and a dozen panels reach across five decades.
 *
 * @param points - ascending; first and last are the ends of the interval
 * @param widths - at each; Infinity where nothing bends
 * @param count - how many points
 * @param edges - receives the panels' edges, ascending; room for 40 to each point is ample
 * @returns how many edges
 * Source: L. N. Trefethen, Approximation Theory and Approximation Practice (2013), theorem 19.3.
 */
export function gradedPanels(points: Float64Array, widths: Float64Array, count: number, edges: Float64Array): number {
  let filled = 0;
  edges[filled++] = points[0]!;
  for (let k = 0; k + 1 < count; k++) {
    const a = points[k]!;
    const b = points[k + 1]!;
    let left = a;
    let right = b;
    // edges found from the right stand at the end of the array until those from the left are known
    let waiting = edges.length;
    for (;;) {
      const fromLeft = LENGTH * Math.max(widths[k]!, left - a);
      const fromRight = LENGTH * Math.max(widths[k + 1]!, b - right);
      const step = Math.min(fromLeft, fromRight);
      if (!(right - left > SLACK * step)) break;
      if (fromLeft <= fromRight) {
        left += step;
        edges[filled++] = left;
      } else {
        right -= step;
        edges[--waiting] = right;
      }
    }
    while (waiting < edges.length) edges[filled++] = edges[waiting++]!;
    edges[filled++] = b;
  }
  return filled;
}
