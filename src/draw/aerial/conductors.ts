import { layOut, type SpacePoint, type WireLayout, type WireStructure } from '#engine';
import { doesSomething } from './load-text.ts';
import { dot, minus, norm, unitStep } from './space.ts';

/** A straight piece of conductor between two places where it ends, bends or is cut for the feed or a load. */
export interface Piece {
  readonly from: SpacePoint;
  readonly to: SpacePoint;
  readonly length: number;
  readonly diameter: number;
  readonly metal: string;
  /** numbers of the wires it is made of */
  readonly wires: readonly number[];
  /** nodes of the layout at its ends */
  readonly ends: readonly [number, number];
}

/** Pieces bent out of one length of stock, in order, all running the same way. */
export interface Conductor {
  readonly pieces: readonly Piece[];
  /** bent round until it meets its own beginning, uncut */
  readonly closed: boolean;
}

export interface Conductors {
  readonly layout: WireLayout;
  readonly conductors: readonly Conductor[];
  /** nodes where conductors meet that are not one, other than the feed */
  readonly joints: readonly number[];
}

interface Run {
  /** nodes in order along it */
  nodes: number[];
  wires: number[];
}

const STRAIGHT = 1 - 1e-9;

/**
 * What a maker cuts: the wires of a structure joined where they run on, and cut at the feed and at the loads.
 *
 * Two wires are one conductor where they alone meet, of one thickness and metal; a wire runs on through a joint in its middle.
 */
export function conductors(structure: WireStructure): Conductors {
  const layout = layOut(structure);
  const { nodes, spans } = layout;
  const nodeOf = (arm: { span: number; end: 0 | 1 }) => (arm.end === 0 ? spans[arm.span]!.from : spans[arm.span]!.to);
  const feedNode = nodeOf(layout.feed);
  const cut = new Set([feedNode, ...layout.loads.filter((l) => doesSomething(l.load)).map((l) => nodeOf(l.arm))]);
  const meeting: number[][] = nodes.map(() => []);
  spans.forEach((s, i) => {
    meeting[s.from]!.push(i);
    meeting[s.to]!.push(i);
  });
  const wireOf = (span: number) => structure.wires[spans[span]!.wire]!;
  const sameStock = (a: number, b: number) => wireOf(a).diameter === wireOf(b).diameter && wireOf(a).metal === wireOf(b).metal;
  /** the span a conductor goes on with beyond a node, or null where it ends there */
  const onward = (span: number, node: number): number | null => {
    if (cut.has(node)) return null;
    const others = meeting[node]!.filter((s) => s !== span);
    const same = others.find((s) => spans[s]!.wire === spans[span]!.wire);
    if (same !== undefined) return same;
    return others.length === 1 && sameStock(span, others[0]!) ? others[0]! : null;
  };
  const far = (span: number, node: number) => (spans[span]!.from === node ? spans[span]!.to : spans[span]!.from);
  const done = new Set<number>();
  const out: Conductor[] = [];
  const follow = (first: number, start: number) => {
    const run: Run = { nodes: [start], wires: [] };
    let [span, node]: [number | null, number] = [first, start];
    while (span !== null && !done.has(span)) {
      done.add(span);
      node = far(span, node);
      run.nodes.push(node);
      run.wires.push(spans[span]!.wire);
      span = onward(span, node);
    }
    const closed = span !== null;
    out.push({ pieces: straightPieces(structure, layout, run, closed), closed });
  };
  spans.forEach((s, i) => {
    for (const node of [s.from, s.to]) if (!done.has(i) && onward(i, node) === null) follow(i, node);
  });
  // what is left closes on itself without an end
  spans.forEach((s, i) => {
    if (!done.has(i)) follow(i, s.from);
  });
  const joints = nodes.flatMap((_, n) => {
    const here = meeting[n]!;
    const ends = here.filter((s) => onward(s, n) === null).length;
    return n !== feedNode && here.length > 1 && ends > 0 && !(here.length === 2 && cut.has(n)) ? [n] : [];
  });
  return { layout, conductors: out, joints };
}

function straightPieces(structure: WireStructure, layout: WireLayout, run: Run, closed: boolean): readonly Piece[] {
  const at = (i: number) => layout.nodes[run.nodes[i]!]!;
  const direction = (i: number) => unitStep(at(i), at(i + 1));
  const steps = run.wires.length;
  // a closed one is begun at a bend, so that no straight piece is halved
  let begin = 0;
  if (closed) while (begin < steps - 1 && dot(direction((begin + steps - 1) % steps), direction(begin)) > STRAIGHT) begin++;
  const index = (i: number) => (begin + i) % steps;
  const pieces: Piece[] = [];
  for (let i = 0; i < steps; ) {
    let last = i;
    while (last + 1 < steps && dot(direction(index(last)), direction(index(last + 1))) > STRAIGHT) last++;
    const [from, to] = [at(index(i)), at(index(last) + 1)];
    const wires = Array.from({ length: last - i + 1 }, (_, k) => run.wires[index(i + k)]!);
    const { diameter, metal } = structure.wires[wires[0]!]!;
    pieces.push({
      from,
      to,
      length: norm(minus(to, from)),
      diameter,
      metal,
      wires: [...new Set(wires)],
      ends: [run.nodes[index(i)]!, run.nodes[index(last) + 1]!],
    });
    i = last + 1;
  }
  return pieces;
}
