import { gaussLegendre, sineIntegrals } from '../../numeric/index.ts';

/** Two segments near each other. Lengths [m]. */
export interface NearPair {
  /** the segment tested: start, direction, length, radius */
  readonly start: readonly [number, number, number];
  readonly direction: readonly [number, number, number];
  readonly length: number;
  readonly radius: number;
  /** the segment whose field it is */
  readonly sourceStart: readonly [number, number, number];
  readonly sourceDirection: readonly [number, number, number];
  readonly sourceLength: number;
  readonly sourceRadius: number;
  /** they touch or lie on one line, so that the wire's own thickness sets the distance; otherwise centre to centre */
  readonly tubular: boolean;
}

/** Gauss points in each panel of the outer integral. */
const PANEL = gaussLegendre(6);

/**
 * Mean over the circumference of two tubes on one axis: points at angle phi are sqrt(a^2 + b^2 - 2ab cos phi) apart across it.
 * The substitution phi = pi u^3 takes up the logarithm at phi = 0.
 */
const TURN = (() => {
  const { nodes, weights } = gaussLegendre(8);
  const u = Float64Array.from(nodes, (x) => (1 + x) / 2);
  return { cosine: u.map((v) => Math.cos(Math.PI * v ** 3)), weights: u.map((v, i) => (3 * v * v * weights[i]!) / 2) };
})();

/**
 * Double integrals of G = e^{-jkR}/R over two segments, weighted by the half-bases (A) and by their derivatives (Q).
 *
 * Over the source in closed form: with D = z' - foot, R = sqrt(D^2 + rho^2), u = R - D and v = R + D, du/u = -dz'/R and
 * dv/v = dz'/R, so that the integrals of e^{-jk(R - D)}/R and e^{-jk(R + D)}/R are those of e^{-jku}/u and e^{-jkv}/v:
 * ln, Cin and Si at the source's two ends. Their half sum and difference give cos kD and sin kD, of which every half-base and its
 * derivative are made. Over the tested segment by Gauss, in panels that shrink towards the source's ends.
 *
 * @param k - wave number [rad/m]
 * @param out - receives 16 numbers: for tested half-base 0, 1 and source half-base 0, 1 in turn, Re A, Im A [m], Re Q, Im Q [1/m]
 * Source: as in Richmond & Geary, IEEE Trans. AP-23 (1975) 412; derived here and checked by plain quadrature in the tests.
 */
export function nearPair(p: NearPair, k: number, out: Float64Array): void {
  out.fill(0);
  const features = singularities(p);
  const stack = [0, p.length];
  while (stack.length > 0) {
    const b = stack.pop()!;
    const a = stack.pop()!;
    if (b - a > distance(features, a, b)) {
      const m = (a + b) / 2;
      stack.push(a, m, m, b);
    } else panel(p, k, a, b, out);
  }
}

/** Places on the tested segment's line where the inner integral, continued into the complex plane, is singular: place and height [m]. */
function singularities(p: NearPair): Float64Array {
  const [tx, ty, tz] = p.direction;
  const [sx, sy, sz] = p.sourceDirection;
  const x = p.sourceStart[0] - p.start[0];
  const y = p.sourceStart[1] - p.start[1];
  const z = p.sourceStart[2] - p.start[2];
  /** below this height only the graded end of the tube's logarithm is left, which six points carry */
  const floor = p.tubular ? Math.min(p.radius, p.sourceRadius) / 3 : 1e-4 * p.length;
  const list: number[] = [];
  for (const end of [0, p.sourceLength]) {
    const [ex, ey, ez] = [x + end * sx, y + end * sy, z + end * sz];
    const along = ex * tx + ey * ty + ez * tz;
    list.push(along, Math.hypot(ex - along * tx, ey - along * ty, ez - along * tz, floor));
  }
  const cosine = tx * sx + ty * sy + tz * sz;
  const sine2 = 1 - cosine * cosine;
  if (sine2 > 1e-9) {
    // closest approach of the two lines: singular where the foot lies on the source itself
    const pt = x * tx + y * ty + z * tz;
    const ps = x * sx + y * sy + z * sz;
    const along = (pt - cosine * ps) / sine2;
    const foot = (cosine * pt - ps) / sine2;
    if (foot >= 0 && foot <= p.sourceLength) {
      const gap = Math.hypot(x + foot * sx - along * tx, y + foot * sy - along * ty, z + foot * sz - along * tz, floor);
      list.push(along, gap / Math.sqrt(sine2));
    }
  }
  return Float64Array.from(list);
}

function distance(features: Float64Array, a: number, b: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < features.length; i += 2) {
    const along = features[i]!;
    least = Math.min(least, Math.hypot(Math.max(a - along, along - b, 0), features[i + 1]!));
  }
  return least;
}

/** Re and Im of the integrals of cos kD e^{-jkR}/R and sin kD e^{-jkR}/R over the source */
const inner = new Float64Array(4);

function panel(p: NearPair, k: number, a: number, b: number, out: Float64Array): void {
  const [tx, ty, tz] = p.direction;
  const [sx, sy, sz] = p.sourceDirection;
  const d = p.length;
  const e = p.sourceLength;
  const sinD = Math.sin(k * d);
  const sinE = Math.sin(k * e);
  for (let i = 0; i < PANEL.nodes.length; i++) {
    const t = (a + b) / 2 + ((b - a) / 2) * PANEL.nodes[i]!;
    const w = ((b - a) / 2) * PANEL.weights[i]!;
    const x = p.start[0] + t * tx - p.sourceStart[0];
    const y = p.start[1] + t * ty - p.sourceStart[1];
    const z = p.start[2] + t * tz - p.sourceStart[2];
    const foot = x * sx + y * sy + z * sz;
    const rho2 = (x - foot * sx) ** 2 + (y - foot * sy) ** 2 + (z - foot * sz) ** 2;
    inner.fill(0);
    if (p.tubular) {
      const squares = p.radius ** 2 + p.sourceRadius ** 2;
      const product = 2 * p.radius * p.sourceRadius;
      for (let n = 0; n < TURN.cosine.length; n++) overSource(k, foot, e, rho2 + squares - product * TURN.cosine[n]!, TURN.weights[n]!);
    } else overSource(k, foot, e, rho2, 1);
    const [cr, ci, sr, si] = inner as unknown as [number, number, number, number];
    for (let beta = 0; beta < 2; beta++) {
      // half-base of the source and its derivative over k, at the foot of the perpendicular
      const f = (beta === 0 ? Math.sin(k * (e - foot)) : Math.sin(k * foot)) / sinE;
      const g = (beta === 0 ? -Math.cos(k * (e - foot)) : Math.cos(k * foot)) / sinE;
      const ar = f * cr + g * sr;
      const ai = f * ci + g * si;
      const qr = k * (g * cr - f * sr);
      const qi = k * (g * ci - f * si);
      for (let alpha = 0; alpha < 2; alpha++) {
        const h = (w * (alpha === 0 ? Math.sin(k * (d - t)) : Math.sin(k * t))) / sinD;
        const c = (w * k * (alpha === 0 ? -Math.cos(k * (d - t)) : Math.cos(k * t))) / sinD;
        const o = 8 * alpha + 4 * beta;
        out[o] = out[o]! + h * ar;
        out[o + 1] = out[o + 1]! + h * ai;
        out[o + 2] = out[o + 2]! + c * qr;
        out[o + 3] = out[o + 3]! + c * qi;
      }
    }
  }
}

function overSource(k: number, foot: number, length: number, rho2: number, weight: number): void {
  const d1 = -foot;
  const d2 = length - foot;
  const r1 = Math.sqrt(d1 * d1 + rho2);
  const r2 = Math.sqrt(d2 * d2 + rho2);
  // the smaller of u and v from their product rho^2, or it would drown in rounding
  let u1: number;
  let v1: number;
  let u2: number;
  let v2: number;
  if (d1 >= 0) {
    v1 = r1 + d1;
    u1 = rho2 / v1;
  } else {
    u1 = r1 - d1;
    v1 = rho2 / u1;
  }
  if (d2 >= 0) {
    v2 = r2 + d2;
    u2 = rho2 / v2;
  } else {
    u2 = r2 - d2;
    v2 = rho2 / u2;
  }
  const logarithm = Math.log(d2 <= 0 ? u1 / u2 : v2 / v1);
  const atU1 = sineIntegrals(k * u1);
  const atU2 = sineIntegrals(k * u2);
  const atV1 = sineIntegrals(k * v1);
  const atV2 = sineIntegrals(k * v2);
  const cu = atU1.cin - atU2.cin;
  const su = atU1.si - atU2.si;
  const cv = atV2.cin - atV1.cin;
  const sv = atV2.si - atV1.si;
  inner[0] = inner[0]! + weight * (logarithm - (cu + cv) / 2);
  inner[1] = inner[1]! - (weight * (su + sv)) / 2;
  inner[2] = inner[2]! + (weight * (sv - su)) / 2;
  inner[3] = inner[3]! - (weight * (cv - cu)) / 2;
}
