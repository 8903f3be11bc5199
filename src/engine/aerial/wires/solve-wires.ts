import { SPEED_OF_LIGHT } from '../../constants.ts';
import { C, type Complex, gaussLegendre, LU } from '../../numeric/index.ts';
import type { Layout } from './joints.ts';
import { loadImpedance } from './load-impedance.ts';
import { fill, type Matrix } from './matrix.ts';
import { type Mesh, mesh } from './mesh.ts';
import { type PairPlan, pairPlan } from './pair-plan.ts';
import type { Point } from './point.ts';
import type { WireStructure } from './structure.ts';
import { internalImpedance } from './surface-impedance.ts';

/** A structure cut into segments, ready to be solved at any frequency. */
export interface Discretised {
  readonly structure: WireStructure;
  readonly mesh: Mesh;
  readonly plans: readonly PairPlan[];
  /** half-base in whose arm the feed sits: its current is the feed's */
  readonly feed: number;
  /** where the feed is [m]: the origin of the phase of all far fields */
  readonly feedPoint: Point;
  readonly loads: readonly { readonly half: number; readonly index: number }[];
}

/** @param counts - segments on each span of the layout */
export function discretise(structure: WireStructure, layout: Layout, counts: readonly number[]): Discretised {
  const m = mesh(layout.nodes, layout.spans, counts);
  const first: number[] = [0];
  for (const n of counts) first.push(first.at(-1)! + n);
  const half = (arm: { span: number; end: 0 | 1 }) => (arm.end === 0 ? 2 * first[arm.span]! : 2 * first[arm.span + 1]! - 1);
  const feedSpan = layout.spans[layout.feed.span]!;
  return {
    structure,
    mesh: m,
    plans: structure.ground.kind === 'perfect' ? [pairPlan(m, false), pairPlan(m, true)] : [pairPlan(m, false)],
    feed: half(layout.feed),
    feedPoint: layout.nodes[layout.feed.end === 0 ? feedSpan.from : feedSpan.to]!,
    loads: layout.loads.map((l, index) => ({ half: half(l.arm), index })),
  };
}

/** The currents at one frequency. */
export interface WireSolution {
  readonly frequency: number;
  /** currents of the bases with 1 V at the feed [A]; the wave's time factor is e^{+jwt}, amplitudes peak or rms alike */
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** [S] */
  readonly admittance: Complex;
}

/** The impedance matrix of all bases with conductor loss and loads, full and symmetric [ohm]. */
export function impedanceMatrix(d: Discretised, frequency: number): Matrix {
  const n = d.mesh.unknowns;
  const z: Matrix = { size: n, re: new Float64Array(n * n), im: new Float64Array(n * n) };
  for (const plan of d.plans) fill(d.mesh, plan, (2 * Math.PI * frequency) / SPEED_OF_LIGHT, z);
  addConductorLoss(d, frequency, z);
  for (const { half, index } of d.loads) addInArm(d.mesh, half, half, loadImpedance(d.structure.loads[index]!, frequency), z);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < i; j++) {
      z.re[j * n + i] = z.re[i * n + j]!;
      z.im[j * n + i] = z.im[i * n + j]!;
    }
  return z;
}

/** Solves for the currents with 1 V at the feed. Null where the matrix is singular, which no passive structure of finite loss or radiation gives. */
export function solveWires(d: Discretised, frequency: number): WireSolution | null {
  const z = impedanceMatrix(d, frequency);
  const re = new Float64Array(z.size);
  const im = new Float64Array(z.size);
  const { rowStart, column, sign } = d.mesh;
  for (let i = rowStart[d.feed]!; i < rowStart[d.feed + 1]!; i++) re[column[i]!] = sign[i]!;
  const pivots = new Int32Array(z.size);
  if (!LU.factor(z.size, z.re, z.im, pivots)) return null;
  LU.solve(z.size, z.re, z.im, pivots, re, im);
  return { frequency, re, im, admittance: halfCurrent(d.mesh, d.feed, re, im) };
}

/** Current along the segment at a half-base's end. */
export function halfCurrent(m: Mesh, half: number, re: Float64Array, im: Float64Array): Complex {
  let r = 0;
  let i = 0;
  for (let at = m.rowStart[half]!; at < m.rowStart[half + 1]!; at++) {
    r += m.sign[at]! * re[m.column[at]!]!;
    i += m.sign[at]! * im[m.column[at]!]!;
  }
  return { re: r, im: i };
}

/** Adds an impedance between the arms of two half-bases, lower triangle. */
function addInArm(m: Mesh, a: number, b: number, value: Complex, z: Matrix): void {
  const { rowStart, column, sign } = m;
  for (let i = rowStart[a]!; i < rowStart[a + 1]!; i++)
    for (let j = rowStart[b]!; j < rowStart[b + 1]!; j++) {
      const row = column[i]!;
      const other = column[j]!;
      if (row < other) continue;
      const at = row * z.size + other;
      z.re[at] = z.re[at]! + sign[i]! * sign[j]! * value.re;
      z.im[at] = z.im[at]! + sign[i]! * sign[j]! * value.im;
    }
}

/** Integrals over one segment of length d of the products of its half-bases [m]: with themselves, and with each other. */
export function selfProducts(k: number, d: number): { readonly same: number; readonly other: number } {
  const { nodes, weights } = gaussLegendre(8);
  const sine = Math.sin(k * d) ** 2;
  let same = 0;
  let other = 0;
  for (let i = 0; i < 8; i++) {
    const t = (d / 2) * (1 + nodes[i]!);
    same += ((d / 2) * weights[i]! * Math.sin(k * t) ** 2) / sine;
    other += ((d / 2) * weights[i]! * Math.sin(k * t) * Math.sin(k * (d - t))) / sine;
  }
  return { same, other };
}

/** Internal impedance by length of each wire [ohm/m]. */
export function wireImpedances(d: Discretised, frequency: number): readonly Complex[] {
  // many wires, as a rule of one kind
  const known = new Map<string, Complex>();
  return d.structure.wires.map(({ metal, diameter }) => {
    const key = `${metal} ${diameter}`;
    const value = known.get(key) ?? internalImpedance(metal, diameter / 2, frequency);
    known.set(key, value);
    return value;
  });
}

function addConductorLoss(d: Discretised, frequency: number, z: Matrix): void {
  const k = (2 * Math.PI * frequency) / SPEED_OF_LIGHT;
  const perMetre = wireImpedances(d, frequency);
  for (let s = 0; s < d.mesh.segments; s++) {
    const zs = perMetre[d.mesh.wire[s]!]!;
    if (zs.re === 0) continue;
    const { same, other } = selfProducts(k, d.mesh.length[s]!);
    for (let a = 0; a < 2; a++) for (let b = 0; b < 2; b++) addInArm(d.mesh, 2 * s + a, 2 * s + b, C.scale(zs, a === b ? same : other), z);
  }
}
