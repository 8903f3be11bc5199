import { corners, type Extent, extentOf } from '../plane/extent.ts';
import { add, type Vector, vector } from '../plane/vector.ts';
import type { BenchPart } from './bench-parts.ts';
import { type Footprint, GRID } from './footprint.ts';
import { type LaidPin, priceOf } from './lead-length.ts';

/** A part and the way it lies. */
interface Laid {
  readonly part: number;
  readonly way: number;
}

/** Parts in the cells of a table, row by row; null for a cell left free. */
export interface Placing {
  readonly columns: number;
  readonly cells: readonly (Laid | null)[];
}

/** A footprint where it lies. */
export interface Placed {
  readonly footprint: Footprint;
  readonly at: Vector;
}

/** Room for wires between two parts, and outside the outermost [mm]. */
export const GAP = 3 * GRID;

/** Where everything lies: columns and rows as wide as their widest part needs, zero points of all parts of one in line. */
export function placedParts(parts: readonly BenchPart[], { columns, cells }: Placing, gap = GAP): readonly Placed[] {
  const rows = Math.ceil(cells.length / columns);
  const before = { x: new Array<number>(columns).fill(0), y: new Array<number>(rows).fill(0) };
  const after = { x: new Array<number>(columns).fill(0), y: new Array<number>(rows).fill(0) };
  const used = { x: new Array<boolean>(columns).fill(false), y: new Array<boolean>(rows).fill(false) };
  cells.forEach((cell, i) => {
    if (!cell) return;
    const { extent: e } = parts[cell.part]!.ways[cell.way]!;
    const [c, r] = [i % columns, Math.floor(i / columns)];
    before.x[c] = Math.max(before.x[c]!, -e.left);
    after.x[c] = Math.max(after.x[c]!, e.right);
    before.y[r] = Math.max(before.y[r]!, -e.top);
    after.y[r] = Math.max(after.y[r]!, e.bottom);
    used.x[c] = true;
    used.y[r] = true;
  });
  const zeros = (axis: 'x' | 'y'): readonly number[] => {
    let end = 0;
    return before[axis].map((b, i) => {
      if (!used[axis][i]) return end;
      const zero = end + gap + b;
      end = zero + after[axis][i]!;
      return zero;
    });
  };
  const [xs, ys] = [zeros('x'), zeros('y')];
  return cells.flatMap((cell, i) =>
    cell ? [{ footprint: parts[cell.part]!.ways[cell.way]!, at: vector(xs[i % columns]!, ys[Math.floor(i / columns)]!) }] : [],
  );
}

export const laidPins = (placed: readonly Placed[]): readonly LaidPin[] =>
  placed.flatMap(({ footprint, at }) => footprint.pins.map((pin) => ({ net: pin.net, lead: pin.lead, on: add(at, pin.at) })));

/** Whether what is plugged in from outside lies at the edge of the board. */
export function reachable(parts: readonly BenchPart[], { columns, cells }: Placing): boolean {
  const rows = Math.ceil(cells.length / columns);
  return cells.every((cell, i) => {
    if (!cell || !parts[cell.part]!.atEdge) return true;
    const [c, r] = [i % columns, Math.floor(i / columns)];
    return c === 0 || r === 0 || c === columns - 1 || r === rows - 1;
  });
}

/** As of `priceOf`; endless where something cannot be plugged in. */
export const placingPrice = (parts: readonly BenchPart[], placing: Placing): number =>
  reachable(parts, placing) ? priceOf(laidPins(placedParts(parts, placing))) : Number.POSITIVE_INFINITY;

/** All parts with room for wires round them. */
export function boardOf(placed: readonly Placed[], gap = GAP): Extent {
  const all = placed.map(({ footprint, at }) => moved(footprint.extent, at));
  const e = extentOf(all.flatMap(corners))!;
  return { left: e.left - gap, top: e.top - gap, right: e.right + gap, bottom: e.bottom + gap };
}

export const moved = (e: Extent, by: Vector): Extent => ({
  left: e.left + by.x,
  right: e.right + by.x,
  top: e.top + by.y,
  bottom: e.bottom + by.y,
});
