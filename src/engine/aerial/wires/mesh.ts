/**
 * Segments and the unknown currents on them.
 *
 * Each segment carries two half-bases: `2s` is one at its start and falls to nothing at its end, `2s + 1` the reverse, both
 * as sin k(distance from the far end). A node where q segment ends meet holds q - 1 bases, so that no charge gathers there;
 * an end on the ground plane holds one of its own, continued by its image; a free end holds none.
 * Source: J. H. Richmond, NASA CR-2396 (1974); reference/antennas.md section 5.
 */
export interface Mesh {
  readonly segments: number;
  /** start of each segment [m]; x east, y north, z up */
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** direction, unit vector */
  readonly tx: Float64Array;
  readonly ty: Float64Array;
  readonly tz: Float64Array;
  /** [m] */
  readonly length: Float64Array;
  readonly radius: Float64Array;
  /** node at the start and at the end of each segment */
  readonly startNode: Int32Array;
  readonly endNode: Int32Array;
  /** wire each segment belongs to */
  readonly wire: Int32Array;
  /** node lies on the ground plane */
  readonly grounded: Uint8Array;
  readonly unknowns: number;
  /** current of half-base h is the sum of sign[i] * unknown[column[i]] for rowStart[h] <= i < rowStart[h + 1] */
  readonly rowStart: Int32Array;
  readonly column: Int32Array;
  readonly sign: Int8Array;
}

/** One straight piece to be cut: from node to node, nothing joined in between. */
export interface Span {
  readonly from: number;
  readonly to: number;
  readonly wire: number;
  readonly radius: number;
}

export interface Node {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly grounded: boolean;
}

/** Cuts each span into the given number of equal segments and numbers the bases. */
export function mesh(nodes: readonly Node[], spans: readonly Span[], counts: readonly number[]): Mesh {
  const segments = counts.reduce((sum, n) => sum + n, 0);
  const m = {
    x: new Float64Array(segments),
    y: new Float64Array(segments),
    z: new Float64Array(segments),
    tx: new Float64Array(segments),
    ty: new Float64Array(segments),
    tz: new Float64Array(segments),
    length: new Float64Array(segments),
    radius: new Float64Array(segments),
    startNode: new Int32Array(segments),
    endNode: new Int32Array(segments),
    wire: new Int32Array(segments),
  };
  const grounded = nodes.map((n) => n.grounded);
  let s = 0;
  spans.forEach((span, i) => {
    const a = nodes[span.from]!;
    const b = nodes[span.to]!;
    const count = counts[i]!;
    const [dx, dy, dz] = [(b.x - a.x) / count, (b.y - a.y) / count, (b.z - a.z) / count];
    const d = Math.hypot(dx, dy, dz);
    for (let j = 0; j < count; j++, s++) {
      m.x[s] = a.x + j * dx;
      m.y[s] = a.y + j * dy;
      m.z[s] = a.z + j * dz;
      m.tx[s] = dx / d;
      m.ty[s] = dy / d;
      m.tz[s] = dz / d;
      m.length[s] = d;
      m.radius[s] = span.radius;
      m.wire[s] = span.wire;
      m.startNode[s] = j === 0 ? span.from : grounded.length - 1;
      m.endNode[s] = j === count - 1 ? span.to : grounded.push(false) - 1;
    }
  });
  return { segments, ...m, grounded: Uint8Array.from(grounded, Number), ...bases(segments, m.startNode, m.endNode, grounded) };
}

/** Numbers the bases, pairing each further end at a node with the first one there. */
function bases(segments: number, startNode: Int32Array, endNode: Int32Array, grounded: readonly boolean[]) {
  const ends = grounded.map((): number[] => []);
  for (let s = 0; s < segments; s++) {
    ends[startNode[s]!]!.push(2 * s);
    ends[endNode[s]!]!.push(2 * s + 1);
  }
  const rows: { column: number; sign: number }[][] = Array.from({ length: 2 * segments }, () => []);
  /** +1 where current along the segment flows into the node */
  const into = (half: number) => (half % 2 === 1 ? 1 : -1);
  let unknowns = 0;
  ends.forEach((halves, node) => {
    if (grounded[node]) for (const h of halves) rows[h]!.push({ column: unknowns++, sign: into(h) });
    else
      for (const h of halves.slice(1)) {
        rows[halves[0]!]!.push({ column: unknowns, sign: into(halves[0]!) });
        rows[h]!.push({ column: unknowns++, sign: -into(h) });
      }
  });
  const flat = rows.flat();
  const rowStart = new Int32Array(rows.length + 1);
  rows.forEach((r, h) => {
    rowStart[h + 1] = rowStart[h]! + r.length;
  });
  return { unknowns, rowStart, column: Int32Array.from(flat, (e) => e.column), sign: Int8Array.from(flat, (e) => e.sign) };
}
