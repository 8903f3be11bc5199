/**
 * Slopes for a piecewise cubic through points that never turns back where the points do not.
 *
 * A slope is that of the not-a-knot cubic spline where it lies between the chords on both sides and is at most three times the lesser:
 * there the curve is accurate to the fourth order, and its second derivative is continuous where neighbours are so too. Elsewhere (a corner,
 * coarse steps, readings that repeat) a spline would ring; there the slope is the weighted harmonic mean of the chords, zero where
 * they disagree in sign. At the ends the slope is that of the parabola through three points, held between zero and three times the chord.
 * The curve has a continuous first derivative in every case.
 *
 * @param x - ascending, at least four
 * @param y - as many
 * @returns slope at each point
 * Source: F. N. Fritsch, R. E. Carlson, SIAM J. Numer. Anal. 17 (1980) 238 (the bound of three); F. N. Fritsch, J. Butland, SIAM J. Sci. Stat.
 * Comput. 5 (1984) 300 (harmonic mean); C. de Boor, A Practical Guide to Splines (1978), ch. IV (not-a-knot).
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
  for (let i = 1; i < n - 1; i++) slope[i] = held(slope[i]!, chord[i - 1]!, chord[i]!, h[i - 1]!, h[i]!);
  slope[0] = endSlope(chord[0]!, chord[1]!, h[0]!, h[1]!);
  slope[n - 1] = endSlope(chord[n - 2]!, chord[n - 3]!, h[n - 2]!, h[n - 3]!);
  return slope;
}

function held(spline: number, left: number, right: number, hLeft: number, hRight: number): number {
  if (!(left * right > 0)) return 0;
  const least = Math.min(Math.abs(left), Math.abs(right));
  const most = Math.min(3 * least, Math.max(Math.abs(left), Math.abs(right)));
  const size = spline * Math.sign(left);
  if (size >= least && size <= most) return spline;
  const wLeft = 2 * hRight + hLeft;
  const wRight = hRight + 2 * hLeft;
  return (wLeft + wRight) / (wLeft / left + wRight / right);
}

function endSlope(chord: number, next: number, h: number, hNext: number): number {
  const parabola = ((2 * h + hNext) * chord - h * next) / (h + hNext);
  if (parabola * chord <= 0) return 0;
  return Math.sign(chord) * Math.min(Math.abs(parabola), 3 * Math.abs(chord));
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
