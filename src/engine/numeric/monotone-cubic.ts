/**
 * Slopes for a piecewise cubic through points that never turn back where the points do not.
 *
 * The slopes are those of the not-a-knot cubic spline, which has a continuous second derivative and is accurate to the fourth order; where
 * such a slope would let the curve overshoot it is cut to three times the lesser of the neighbouring chords, or to zero where they
 * disagree in sign. Cut or not, the curve has a continuous first derivative.
 *
 * @param x - ascending, at least four
 * @param y - as many
 * @returns slope at each point
 * Source: J. M. Hyman, SIAM J. Sci. Stat. Comput. 4 (1983) 645, eq. 2.3 with the spline's slopes; the bound is that of F. N. Fritsch and
 * R. E. Carlson, SIAM J. Numer. Anal. 17 (1980) 238; C. de Boor, A Practical Guide to Splines (1978), ch. IV (not-a-knot).
 */
export function monotoneSlopes(x: ArrayLike<number>, y: ArrayLike<number>): Float64Array {
  const n = x.length;
  const chord = new Float64Array(n - 1);
  const h = new Float64Array(n - 1);
  for (let i = 0; i < n - 1; i++) {
    h[i] = x[i + 1]! - x[i]!;
    chord[i] = (y[i + 1]! - y[i]!) / h[i]!;
  }
  const slope = splineSlopes(h, chord);
  for (let i = 0; i < n; i++) {
    const left = chord[Math.max(0, i - 1)]!;
    const right = chord[Math.min(n - 2, i)]!;
    if (left * right <= 0) slope[i] = 0;
    else {
      const most = 3 * Math.min(Math.abs(left), Math.abs(right));
      slope[i] = Math.sign(left) * Math.min(most, Math.max(0, slope[i]! * Math.sign(left)));
    }
  }
  return slope;
}

/** Tridiagonal system for the slopes of the not-a-knot spline, by elimination downwards and substitution upwards. */
function splineSlopes(h: Float64Array, chord: Float64Array): Float64Array {
  const n = h.length + 1;
  const diagonal = new Float64Array(n);
  const above = new Float64Array(n);
  const right = new Float64Array(n);
  const first = h[0]! + h[1]!;
  diagonal[0] = h[1]!;
  above[0] = first;
  right[0] = ((h[0]! + 2 * first) * h[1]! * chord[0]! + h[0]! * h[0]! * chord[1]!) / first;
  for (let i = 1; i < n - 1; i++) {
    const factor = h[i]! / diagonal[i - 1]!;
    diagonal[i] = 2 * (h[i]! + h[i - 1]!) - factor * above[i - 1]!;
    above[i] = h[i - 1]!;
    right[i] = 3 * (h[i]! * chord[i - 1]! + h[i - 1]! * chord[i]!) - factor * right[i - 1]!;
  }
  const last = h[n - 2]! + h[n - 3]!;
  const end = (h[n - 2]! * h[n - 2]! * chord[n - 3]! + (2 * last + h[n - 2]!) * h[n - 3]! * chord[n - 2]!) / last;
  const factor = last / diagonal[n - 2]!;
  const slope = new Float64Array(n);
  slope[n - 1] = (end - factor * right[n - 2]!) / (h[n - 3]! - factor * above[n - 2]!);
  for (let i = n - 2; i >= 0; i--) slope[i] = (right[i]! - above[i]! * slope[i + 1]!) / diagonal[i]!;
  return slope;
}
