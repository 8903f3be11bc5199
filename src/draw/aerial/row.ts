import type { SpacePoint } from '#engine';
import type { Conductors, Piece } from './conductors.ts';
import { along, dot, half, minus, norm, unitStep } from './space.ts';

/** One element of a row: the straight line between its tips. */
export interface Element {
  readonly from: SpacePoint;
  readonly to: SpacePoint;
  readonly middle: SpacePoint;
}

/** Parallel elements whose middles lie on one line across them: what a boom carries. */
export interface Row {
  /** in order along the boom */
  readonly elements: readonly Element[];
  /** unit vector along the boom, from the first element to the last */
  readonly direction: SpacePoint;
}

const PARALLEL = 1 - 1e-6;
const ASKEW = 0.01;

/** Finds the boom of a beam: every separate part of the structure is an element of it; null where that is not so. */
export function rowOf({ layout, conductors }: Conductors): Row | null {
  const parts = separateParts(
    conductors.flatMap((c) => c.pieces),
    layout.nodes.length,
  );
  if (parts.length < 2) return null;
  const lines = parts.map(longestLine);
  const axis = unitStep(lines[0]!.from, lines[0]!.to);
  // all named from the same end
  const elements = lines.map((e) => (dot(minus(e.to, e.from), axis) < 0 ? { ...e, from: e.to, to: e.from } : e));
  if (elements.some((e) => Math.abs(dot(unitStep(e.from, e.to), axis)) < PARALLEL)) return null;
  const origin = elements[0]!.middle;
  const furthest = elements.reduce((a, b) => (norm(minus(b.middle, origin)) > norm(minus(a.middle, origin)) ? b : a));
  const length = norm(minus(furthest.middle, origin));
  if (length === 0) return null;
  const direction = unitStep(origin, furthest.middle);
  if (Math.abs(dot(direction, axis)) > ASKEW) return null;
  const straight = elements.every((e) => {
    const step = minus(e.middle, origin);
    return norm(along(step, direction, -dot(step, direction))) < ASKEW * length;
  });
  if (!straight) return null;
  const place = (e: Element) => dot(minus(e.middle, origin), direction);
  return { elements: [...elements].sort((a, b) => place(a) - place(b)), direction };
}

/** Pieces sorted by what hangs together. */
function separateParts(pieces: readonly Piece[], nodes: number): readonly (readonly Piece[])[] {
  const leader = Array.from({ length: nodes }, (_, i) => i);
  const find = (n: number): number => (leader[n] === n ? n : find(leader[n]!));
  for (const p of pieces) leader[find(p.ends[0])] = find(p.ends[1]);
  const parts = new Map<number, Piece[]>();
  for (const p of pieces) {
    const key = find(p.ends[0]);
    parts.set(key, [...(parts.get(key) ?? []), p]);
  }
  return [...parts.values()];
}

/** The longest straight line of conductor in a part, cuts for the feed or a load overlooked; the first of equals. */
function longestLine(part: readonly Piece[]): Element {
  let best: Element | null = null;
  for (const p of part) {
    let { from, to } = p;
    let grown = true;
    while (grown) {
      grown = false;
      for (const q of part) {
        const line = unitStep(from, to);
        if (Math.abs(dot(unitStep(q.from, q.to), line)) < PARALLEL) continue;
        for (const [near, far] of [
          [q.from, q.to],
          [q.to, q.from],
        ] as const) {
          if (norm(minus(near, to)) === 0 && dot(minus(far, to), line) > 0) [to, grown] = [far, true];
          else if (norm(minus(near, from)) === 0 && dot(minus(far, from), line) < 0) [from, grown] = [far, true];
        }
      }
    }
    const longer = !best || norm(minus(to, from)) > norm(minus(best.to, best.from)) * (1 + 1e-9);
    if (longer) best = { from, to, middle: half(from, to) };
  }
  return best!;
}
