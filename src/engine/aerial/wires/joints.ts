import { GivenError } from '../../given-error.ts';
import { checkLoads, checkWires } from './check-wires.ts';
import type { Node, Span } from './mesh.ts';
import { between, closest, foot, type Point, separation } from './point.ts';
import type { Load, OnWire, Wire, WireStructure } from './structure.ts';

/** One end of a span: where a gap or a load sits in the wire. */
export interface Arm {
  readonly span: number;
  readonly end: 0 | 1;
}

/** The structure cut at every joint, feed and load. */
export interface Layout {
  readonly nodes: readonly Node[];
  readonly spans: readonly Span[];
  readonly feed: Arm;
  readonly loads: readonly { readonly arm: Arm; readonly load: Load }[];
}

/** A place on a wire that becomes a node: fraction along it and, where it is a joint, the node. */
interface Cut {
  readonly at: number;
  node: number | null;
}

/**
 * Finds what is joined to what, and cuts the wires there and where the feed and the loads are.
 *
 * Ends whose centres lie within the greater radius of each other are joined. An end within the two radii of the middle of another wire
 * touches it: that wire is cut there and the end is joined. Two middles that touch are refused: no one solders there without saying so.
 *
 * @throws GivenError where wires cross, overlap or nearly touch, or where the feed or a load is not on a wire
 */
export function layOut(structure: WireStructure, path = 'aerial'): Layout {
  const { wires, ground } = structure;
  checkWires(wires, ground, `${path}.wires`);
  checkLoads(structure.loads, `${path}.loads`);
  const nodes: { point: Point; wires: Set<number>; grounded: boolean }[] = [];
  const ends = joinEnds(wires, nodes, path);
  if (ground.kind === 'perfect')
    for (const node of nodes) {
      const reach = Math.max(...[...node.wires].map((w) => wires[w]!.diameter)) / 2;
      if (node.point.z <= reach) {
        node.grounded = true;
        node.point = { ...node.point, z: 0 };
      }
    }
  const cuts: Cut[][] = ends.map(([from, to]) => [
    { at: 0, node: from },
    { at: 1, node: to },
  ]);
  joinMiddles(wires, nodes, cuts, path);
  checkCrossings(wires, nodes, path);
  const feed = cutAt(wires, cuts, structure.feed, `${path}.feed`);
  const loads = structure.loads.map((load, i) => ({ load, ...cutAt(wires, cuts, load.place, `${path}.loads[${i}].place`) }));
  return assemble(wires, nodes, cuts, feed, loads, path);
}

function joinEnds(
  wires: readonly Wire[],
  nodes: { point: Point; wires: Set<number>; grounded: boolean }[],
  path: string,
): (readonly [number, number])[] {
  return wires.map((wire, i) => {
    const find = (point: Point): number => {
      for (let n = 0; n < nodes.length; n++) {
        const node = nodes[n]!;
        const thickest = Math.max(wire.diameter, ...[...node.wires].map((w) => wires[w]!.diameter)) / 2;
        const apart = separation(point, node.point);
        if (apart <= thickest) {
          node.wires.add(i);
          return n;
        }
        const touch = wire.diameter / 2 + Math.max(...[...node.wires].map((w) => wires[w]!.diameter)) / 2;
        if (apart < touch && !node.wires.has(i))
          throw new GivenError(
            `${path}.wires[${i}]`,
            `with an end ${Number(apart.toPrecision(3))} m from an end of wire ${[...node.wires][0]}`,
            'the two touch, yet their centres do not meet: joined or not?',
            'Give both ends the same coordinates, or move them apart.',
          );
      }
      return nodes.push({ point, wires: new Set([i]), grounded: false }) - 1;
    };
    return [find(wire.from), find(wire.to)] as const;
  });
}

/** Ends that touch the middle of another wire cut it. */
function joinMiddles(
  wires: readonly Wire[],
  nodes: { point: Point; wires: Set<number>; grounded: boolean }[],
  cuts: Cut[][],
  path: string,
): void {
  nodes.forEach((node, n) => {
    const thickest = Math.max(...[...node.wires].map((w) => wires[w]!.diameter)) / 2;
    const touched = wires.flatMap((w, i) => {
      if (node.wires.has(i)) return [];
      const at = foot(node.point, w.from, w.to);
      return separation(node.point, between(w.from, w.to, at)) < thickest + w.diameter / 2 ? [{ wire: i, at }] : [];
    });
    for (const { wire, at } of touched) {
      const w = wires[wire]!;
      const point = between(w.from, w.to, at);
      const clearance = w.diameter / 2 + thickest;
      if (touched.length > 1 && separation(point, node.point) > 1e-6 * separation(w.from, w.to))
        throw new GivenError(
          `${path}.wires[${[...node.wires][0]}]`,
          `with an end that touches wires ${touched.map((t) => t.wire).join(' and ')}`,
          'it is not clear to which of them it is joined',
          'Give the joint the same coordinates on all of them.',
        );
      for (const cut of cuts[wire]!) {
        const apart = Math.abs(cut.at - at) * separation(w.from, w.to);
        if (apart < clearance)
          throw new GivenError(
            `${path}.wires[${[...node.wires][0]}]`,
            `with an end ${Number(apart.toPrecision(3))} m from a joint on wire ${wire}`,
            'the two joints lie within the thickness of the wires: one joint or two?',
            'Give both the same coordinates, or move them apart.',
          );
      }
      if (touched.length === 1) node.point = { ...point, z: node.grounded ? 0 : point.z };
      node.wires.add(wire);
      cuts[wire]!.push({ at, node: n });
    }
  });
}

function checkCrossings(wires: readonly Wire[], nodes: readonly { wires: Set<number> }[], path: string): void {
  for (let i = 0; i < wires.length; i++)
    for (let j = 0; j < i; j++) {
      if (nodes.some((n) => n.wires.has(i) && n.wires.has(j))) continue;
      const a = wires[i]!;
      const b = wires[j]!;
      const { first, second, distance } = closest(a.from, a.to, b.from, b.to);
      if (distance < (a.diameter + b.diameter) / 2)
        throw new GivenError(
          `${path}.wires[${i}]`,
          `crossing wire ${j} at ${Number((first * separation(a.from, a.to)).toPrecision(3))} m along it, ${Number((second * separation(b.from, b.to)).toPrecision(3))} m along the other`,
          'they touch without a joint',
          'End one of them there to join them, or move them apart.',
        );
    }
}

/** Makes a node of the place of a feed or a load, and says which arm of it the part sits in. */
function cutAt(wires: readonly Wire[], cuts: Cut[][], place: OnWire, path: string): { wire: number; at: number } {
  const { wire, at } = 'point' in place ? locate(wires, place.point, path) : place;
  const w = wires[wire];
  if (!w || !Number.isInteger(wire))
    throw new GivenError(`${path}.wire`, `${wire}`, `the wires are numbered 0 to ${wires.length - 1}`, 'Name one of them.');
  if (!(at >= 0 && at <= 1)) throw new GivenError(`${path}.at`, `${at}`, 'it is a fraction of the way along the wire', 'Give 0 to 1.');
  const length = separation(w.from, w.to);
  for (const cut of cuts[wire]!)
    if (Math.abs(cut.at - at) * length < w.diameter / 2) {
      if (cut.at > 0 && cut.at < 1 && cut.node !== null)
        throw new GivenError(
          path,
          `on a joint in the middle of wire ${wire}`,
          'it is not clear in which of the wires that meet there it sits',
          'Give it on the end of one of them, or divide the wire there.',
        );
      return { wire, at: cut.at };
    }
  cuts[wire]!.push({ at, node: null });
  return { wire, at };
}

function locate(wires: readonly Wire[], point: Point, path: string): { wire: number; at: number } {
  let best = { wire: 0, at: 0, apart: Number.POSITIVE_INFINITY };
  wires.forEach((w, wire) => {
    const at = foot(point, w.from, w.to);
    const apart = separation(point, between(w.from, w.to, at));
    if (apart < best.apart) best = { wire, at, apart };
  });
  if (!(best.apart <= wires[best.wire]!.diameter / 2))
    throw new GivenError(
      path,
      `${Number(best.apart.toPrecision(3))} m from the nearest wire, number ${best.wire}`,
      'it has to be on a wire',
      'Give a point on a wire, or the wire and the fraction along it.',
    );
  return best;
}

function assemble(
  wires: readonly Wire[],
  nodes: readonly { readonly point: Point; readonly grounded: boolean }[],
  cuts: readonly (readonly Cut[])[],
  feed: { wire: number; at: number },
  loads: readonly { wire: number; at: number; load: Load }[],
  path: string,
): Layout {
  const out: Node[] = nodes.map((n) => ({ ...n.point, grounded: n.grounded }));
  const spans: Span[] = [];
  const armOf = new Map<string, Arm>();
  wires.forEach((w, wire) => {
    const ordered = [...cuts[wire]!].sort((a, b) => a.at - b.at);
    const ids = ordered.map((cut) => cut.node ?? out.push({ ...between(w.from, w.to, cut.at), grounded: false }) - 1);
    for (let i = 0; i + 1 < ordered.length; i++) {
      const span = spans.push({ from: ids[i]!, to: ids[i + 1]!, wire, radius: w.diameter / 2 }) - 1;
      armOf.set(`${wire} ${ordered[i]!.at}`, { span, end: 0 });
      if (ordered[i + 1]!.at === 1) armOf.set(`${wire} 1`, { span, end: 1 });
      const length = separation(out[ids[i]!]!, out[ids[i + 1]!]!);
      if (!(length >= w.diameter))
        throw new GivenError(
          `${path}.wires[${wire}]`,
          `${Number(length.toPrecision(3))} m long between two joints`,
          `too short for its thickness of ${w.diameter} m: the current in it would not be that of a wire`,
          'Move the joints, the feed or the load apart, or make the wire thinner.',
        );
    }
  });
  const meeting = out.map(() => 0);
  for (const s of spans) for (const n of [s.from, s.to]) meeting[n] = meeting[n]! + 1;
  const arm = (place: { wire: number; at: number }, where: string): Arm => {
    const found = armOf.get(`${place.wire} ${place.at}`)!;
    const node = found.end === 0 ? spans[found.span]!.from : spans[found.span]!.to;
    if (meeting[node] === 1 && !out[node]!.grounded)
      throw new GivenError(where, `at the free end of wire ${place.wire}`, 'no current flows there', 'Put it in the wire or at a joint.');
    return found;
  };
  return {
    nodes: out,
    spans,
    feed: arm(feed, `${path}.feed`),
    loads: loads.map((l, i) => ({ arm: arm(l, `${path}.loads[${i}].place`), load: l.load })),
  };
}
