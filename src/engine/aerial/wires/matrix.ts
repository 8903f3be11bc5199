import { ETA0 } from '../../constants.ts';
import { gaussLegendre } from '../../numeric/index.ts';
import type { Mesh } from './mesh.ts';
import { nearPair } from './near-pair.ts';
import type { PairPlan } from './pair-plan.ts';

/** Impedance matrix [ohm], row-major, split planes, symmetric. */
export interface Matrix {
  readonly size: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/**
 * Adds the impedances between all bases to the matrix, lower triangle.
 *
 * Z_mn = (j eta / 4 pi) [k t.t' A - Q/k], A the double integral of f f' e^{-jkR}/R, Q that of df/dl df'/dl' e^{-jkR}/R: the field of each
 * base tested by each, integrated by parts, so that the end charges of half-bases, which cancel at every node, never appear.
 * Pairs with an image take the mirrored source with the opposite sign.
 *
 * Source: piecewise-sinusoidal Galerkin (reaction) method, Richmond, NASA CR-2396 (1974); symmetric form as in Harrington,
 * Field Computation by Moment Methods (1968), ch. 4.
 */
export function fill(m: Mesh, plan: PairPlan, k: number, z: Matrix): void {
  const coefficient = ((plan.image ? -1 : 1) * ETA0) / (4 * Math.PI);
  fillNear(m, plan, k, coefficient, z);
  const rules = [3, 4, 6].map((n) => sample(m, n, k, plan.image ? -1 : 1));
  fillFar(m, plan, k, coefficient, rules, z);
}

function fillNear(m: Mesh, plan: PairPlan, k: number, coefficient: number, z: Matrix): void {
  const blocks = plan.shapes.map((shape) => {
    const raw = new Float64Array(16);
    nearPair(shape, k, raw);
    const cosine =
      shape.direction[0] * shape.sourceDirection[0] +
      shape.direction[1] * shape.sourceDirection[1] +
      shape.direction[2] * shape.sourceDirection[2];
    const block = new Float64Array(8);
    for (let i = 0; i < 4; i++) {
      block[2 * i] = -coefficient * (k * cosine * raw[4 * i + 1]! - raw[4 * i + 3]! / k);
      block[2 * i + 1] = coefficient * (k * cosine * raw[4 * i]! - raw[4 * i + 2]! / k);
    }
    return block;
  });
  const { tested, source, shape } = plan.near;
  for (let i = 0; i < tested.length; i++) scatter(m, tested[i]!, source[i]!, blocks[shape[i]!]!, z);
}

/** Points of one rule along every segment, and the half-bases there times the weight. */
interface Samples {
  readonly n: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** height of the image where the plan is of images, else of the point */
  readonly sourceZ: Float64Array;
  readonly f0: Float64Array;
  readonly f1: Float64Array;
  readonly q0: Float64Array;
  readonly q1: Float64Array;
}

function sample(m: Mesh, n: number, k: number, mirror: number): Samples {
  const { nodes, weights } = gaussLegendre(n);
  const make = () => new Float64Array(m.segments * n);
  const s = { n, x: make(), y: make(), z: make(), sourceZ: make(), f0: make(), f1: make(), q0: make(), q1: make() };
  for (let i = 0; i < m.segments; i++) {
    const d = m.length[i]!;
    const sine = Math.sin(k * d);
    for (let j = 0; j < n; j++) {
      const t = (d / 2) * (1 + nodes[j]!);
      const w = (d / 2) * weights[j]!;
      const o = i * n + j;
      s.x[o] = m.x[i]! + t * m.tx[i]!;
      s.y[o] = m.y[i]! + t * m.ty[i]!;
      s.z[o] = m.z[i]! + t * m.tz[i]!;
      s.sourceZ[o] = mirror * s.z[o]!;
      s.f0[o] = (w * Math.sin(k * (d - t))) / sine;
      s.f1[o] = (w * Math.sin(k * t)) / sine;
      s.q0[o] = (-w * k * Math.cos(k * (d - t))) / sine;
      s.q1[o] = (w * k * Math.cos(k * t)) / sine;
    }
  }
  return s;
}

function fillFar(m: Mesh, plan: PairPlan, k: number, coefficient: number, rules: readonly Samples[], z: Matrix): void {
  const count = m.segments;
  const mirror = plan.image ? -1 : 1;
  const block = new Float64Array(8);
  for (let s = 0; s < count; s++)
    for (let r = 0; r <= s; r++) {
      const n = plan.points[s * count + r]!;
      if (n === 0) continue;
      const cosine = m.tx[s]! * m.tx[r]! + m.ty[s]! * m.ty[r]! + mirror * m.tz[s]! * m.tz[r]!;
      farPair(rules[n === 3 ? 0 : n === 4 ? 1 : 2]!, s, r, k, coefficient * k * cosine, coefficient / k, block);
      scatter(m, s, r, block, z);
    }
}

/** The four impedances of two far segments, Gauss along both. */
function farPair(g: Samples, s: number, r: number, k: number, kA: number, kQ: number, block: Float64Array): void {
  const { n, x, y, z, sourceZ, f0, f1, q0, q1 } = g;
  let b0 = 0;
  let b1 = 0;
  let b2 = 0;
  let b3 = 0;
  let b4 = 0;
  let b5 = 0;
  let b6 = 0;
  let b7 = 0;
  const first = r * n;
  const end = first + n;
  for (let i = s * n; i < s * n + n; i++) {
    const xi = x[i]!;
    const yi = y[i]!;
    const zi = z[i]!;
    let a0r = 0;
    let a0i = 0;
    let a1r = 0;
    let a1i = 0;
    let c0r = 0;
    let c0i = 0;
    let c1r = 0;
    let c1i = 0;
    for (let j = first; j < end; j++) {
      const dx = xi - x[j]!;
      const dy = yi - y[j]!;
      const dz = zi - sourceZ[j]!;
      const distance = Math.sqrt(dx * dx + dy * dy + dz * dz);
      const gr = Math.cos(k * distance) / distance;
      const gi = -Math.sin(k * distance) / distance;
      a0r += f0[j]! * gr;
      a0i += f0[j]! * gi;
      a1r += f1[j]! * gr;
      a1i += f1[j]! * gi;
      c0r += q0[j]! * gr;
      c0i += q0[j]! * gi;
      c1r += q1[j]! * gr;
      c1i += q1[j]! * gi;
    }
    // j (kA A - kQ Q)
    const p0 = kA * f0[i]!;
    const p1 = kA * f1[i]!;
    const e0 = kQ * q0[i]!;
    const e1 = kQ * q1[i]!;
    b0 += e0 * c0i - p0 * a0i;
    b1 += p0 * a0r - e0 * c0r;
    b2 += e0 * c1i - p0 * a1i;
    b3 += p0 * a1r - e0 * c1r;
    b4 += e1 * c0i - p1 * a0i;
    b5 += p1 * a0r - e1 * c0r;
    b6 += e1 * c1i - p1 * a1i;
    b7 += p1 * a1r - e1 * c1r;
  }
  block[0] = b0;
  block[1] = b1;
  block[2] = b2;
  block[3] = b3;
  block[4] = b4;
  block[5] = b5;
  block[6] = b6;
  block[7] = b7;
}

/** Adds the block of segments s (tested) and r (source), r <= s, to the lower triangle; the block of (r, s) is its transpose. */
function scatter(m: Mesh, s: number, r: number, block: Float64Array, z: Matrix): void {
  const { rowStart, column, sign } = m;
  const { re, im, size } = z;
  for (let alpha = 0; alpha < 2; alpha++)
    for (let i = rowStart[2 * s + alpha]!; i < rowStart[2 * s + alpha + 1]!; i++) {
      const row = column[i]!;
      for (let beta = 0; beta < 2; beta++)
        for (let j = rowStart[2 * r + beta]!; j < rowStart[2 * r + beta + 1]!; j++) {
          const other = column[j]!;
          // within one segment every ordered pair comes round by itself
          if (s === r && row < other) continue;
          const weight = sign[i]! * sign[j]!;
          const vr = weight * block[4 * alpha + 2 * beta]!;
          const vi = weight * block[4 * alpha + 2 * beta + 1]!;
          const at = row >= other ? row * size + other : other * size + row;
          // between two segments the transposed block falls on the same place where both bases are the same
          const times = s !== r && row === other ? 2 : 1;
          re[at] = re[at]! + times * vr;
          im[at] = im[at]! + times * vi;
        }
    }
}
