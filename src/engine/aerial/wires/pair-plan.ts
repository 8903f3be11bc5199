import type { Mesh } from './mesh.ts';
import type { NearPair } from './near-pair.ts';

/**
 * How each pair of segments is to be integrated, settled once for a mesh and used at every frequency.
 *
 * Near pairs fall into classes of equal shape (all neighbours along a straight wire are one class), each integrated once.
 */
export interface PairPlan {
  /** segments tested and source of each near pair, source <= tested, and its class */
  readonly near: { readonly tested: Int32Array; readonly source: Int32Array; readonly shape: Int32Array };
  readonly shapes: readonly NearPair[];
  /** points of Gauss's rule along each of two far segments; 0 where they are near. Index tested * segments + source, source <= tested */
  readonly points: Uint8Array;
  /** -1 for the pairs with the images of the sources in the ground, 1 for the sources themselves */
  readonly image: boolean;
}

/**
 * Gap between two segments over the longer of them, from which 3, 4 or 6 points along each hold the error below 1e-7 of the
 * pair's own value (n-point Gauss converges as r^-2n, r = z + sqrt(z^2 - 1), z = 1 + 2 gap/length).
 */
const GAP_3 = 6;
const GAP_4 = 3;
const GAP_6 = 1.2;

/** @param image - plan the pairs of each segment with the mirror image of each, in the plane z = 0 */
export function pairPlan(m: Mesh, image: boolean): PairPlan {
  const n = m.segments;
  const mirror = image ? -1 : 1;
  const points = new Uint8Array(n * n);
  const tested: number[] = [];
  const source: number[] = [];
  const shape: number[] = [];
  const shapes: NearPair[] = [];
  const known = new Map<string, number>();
  for (let s = 0; s < n; s++)
    for (let r = 0; r <= s; r++) {
      const gap = spacing(m, s, r, mirror);
      if (gap >= GAP_6) {
        points[s * n + r] = gap >= GAP_3 ? 3 : gap >= GAP_4 ? 4 : 6;
        continue;
      }
      const pair = describe(m, s, r, mirror);
      const key = shapeKey(pair);
      let at = known.get(key);
      if (at === undefined) {
        at = shapes.push(pair) - 1;
        known.set(key, at);
      }
      tested.push(s);
      source.push(r);
      shape.push(at);
    }
  return {
    near: { tested: Int32Array.from(tested), source: Int32Array.from(source), shape: Int32Array.from(shape) },
    shapes,
    points,
    image,
  };
}

/** Least possible gap between two segments over the longer one's length, from their midpoints. */
function spacing(m: Mesh, s: number, r: number, mirror: number): number {
  const ds = m.length[s]!;
  const dr = m.length[r]!;
  const x = m.x[s]! + (ds / 2) * m.tx[s]! - m.x[r]! - (dr / 2) * m.tx[r]!;
  const y = m.y[s]! + (ds / 2) * m.ty[s]! - m.y[r]! - (dr / 2) * m.ty[r]!;
  const z = m.z[s]! + (ds / 2) * m.tz[s]! - mirror * (m.z[r]! + (dr / 2) * m.tz[r]!);
  return (Math.sqrt(x * x + y * y + z * z) - (ds + dr) / 2) / Math.max(ds, dr);
}

function describe(m: Mesh, s: number, r: number, mirror: number): NearPair {
  const pair = {
    start: [m.x[s]!, m.y[s]!, m.z[s]!] as const,
    direction: [m.tx[s]!, m.ty[s]!, m.tz[s]!] as const,
    length: m.length[s]!,
    radius: m.radius[s]!,
    sourceStart: [m.x[r]!, m.y[r]!, mirror * m.z[r]!] as const,
    sourceDirection: [m.tx[r]!, m.ty[r]!, mirror * m.tz[r]!] as const,
    sourceLength: m.length[r]!,
    sourceRadius: m.radius[r]!,
  };
  return { ...pair, tubular: touching(m, s, r, mirror) || aligned(pair) };
}

function touching(m: Mesh, s: number, r: number, mirror: number): boolean {
  for (const a of [m.startNode[s]!, m.endNode[s]!])
    for (const b of [m.startNode[r]!, m.endNode[r]!]) if (a === b && (mirror === 1 || m.grounded[a] === 1)) return true;
  return false;
}

/** On one line, to a tenth of the radius. */
function aligned(p: Omit<NearPair, 'tubular'>): boolean {
  const [tx, ty, tz] = p.direction;
  return [0, p.sourceLength].every((end) => {
    const x = p.sourceStart[0] + end * p.sourceDirection[0] - p.start[0];
    const y = p.sourceStart[1] + end * p.sourceDirection[1] - p.start[1];
    const z = p.sourceStart[2] + end * p.sourceDirection[2] - p.start[2];
    const along = x * tx + y * ty + z * tz;
    return Math.hypot(x - along * tx, y - along * ty, z - along * tz) < p.radius / 10;
  });
}

/** Equal for pairs that can be laid on each other: lengths, radii and the scalar products of the two directions and the step between them. */
function shapeKey(p: NearPair): string {
  const step = [0, 1, 2].map((i) => p.sourceStart[i]! - p.start[i]!);
  const dot = (a: readonly number[], b: readonly number[]) => a[0]! * b[0]! + a[1]! * b[1]! + a[2]! * b[2]!;
  const unit = 1e-9 * Math.max(p.length, p.sourceLength);
  return [
    p.length / unit,
    p.sourceLength / unit,
    p.radius / unit,
    p.sourceRadius / unit,
    dot(p.direction, p.sourceDirection) * 1e9,
    dot(step, p.direction) / unit,
    dot(step, p.sourceDirection) / unit,
    Math.sqrt(dot(step, step)) / unit,
    p.tubular ? 1 : 0,
  ]
    .map(Math.round)
    .join();
}
