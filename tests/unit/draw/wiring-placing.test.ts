import { expect, test } from 'vitest';
import type { SetDescription } from '#engine';
import { netlistOf } from '../../../src/draw/circuit/netlist.ts';
import { type BenchPart, benchParts } from '../../../src/draw/wiring/bench-parts.ts';
import { goodPlacings } from '../../../src/draw/wiring/good-placings.ts';
import { laidPins, type Placing, placedParts } from '../../../src/draw/wiring/placing.ts';
import { EXAMPLE_SETS, FURTHER_SETS } from './set-examples.ts';

interface Point {
  readonly x: number;
  readonly y: number;
}
interface Line {
  readonly net: string;
  readonly from: Point;
  readonly to: Point;
  readonly weight: number;
}

/** What must be shorter weighs more: the tank, then the detector, then the aerial, then speech (the order is that of the task; its numbers are ours). */
const WEIGHTS = [
  ['tank', 10],
  ['detector', 4],
  ['aerial', 2],
  ['audio', 1],
] as const;
const PER_CROSSING = 100;

/** Wires by Kruskal's rule within what weighs the same, on top of what weighs more: a second way to the same least lengths. */
function linesOf(parts: readonly BenchPart[], placing: Placing): readonly Line[] {
  const pins = laidPins(placedParts(parts, placing));
  const lines: Line[] = [];
  for (const net of new Set(pins.flatMap((p) => p.net ?? []))) {
    const own = pins.filter((p) => p.net === net);
    const group = own.map((_, i) => i);
    const root = (i: number): number => (group[i] === i ? i : root(group[i]!));
    const among: number[] = [];
    for (const [lead, weight] of WEIGHTS) {
      among.push(...own.flatMap((p, i) => (p.lead === lead ? [i] : [])));
      const pairs = among
        .flatMap((i) => among.filter((k) => k < i).map((k) => ({ i, k, length: distance(own[i]!.on, own[k]!.on) })))
        .sort((a, b) => a.length - b.length);
      for (const { i, k } of pairs) {
        if (root(i) === root(k)) continue;
        group[root(i)] = root(k);
        lines.push({ net, from: own[i]!.on, to: own[k]!.on, weight });
      }
    }
  }
  return lines;
}

const distance = (a: Point, b: Point): number => Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
const lengthOf = (lines: readonly Line[]): number => lines.reduce((sum, l) => sum + l.weight * distance(l.from, l.to), 0);

/** Lines of two nets that meet between their ends: by solving for the fractions along both. */
function crossingsOf(lines: readonly Line[]): number {
  let count = 0;
  for (const [i, a] of lines.entries())
    for (const b of lines.slice(0, i)) {
      if (a.net === b.net) continue;
      const [u, v] = [sub(a.to, a.from), sub(b.to, b.from)];
      const d = u.x * v.y - u.y * v.x;
      if (Math.abs(d) < 1e-9) continue;
      const w = sub(b.from, a.from);
      const [s, t] = [(w.x * v.y - w.y * v.x) / d, (w.x * u.y - w.y * u.x) / d];
      if (s > 1e-9 && s < 1 - 1e-9 && t > 1e-9 && t < 1 - 1e-9) count++;
    }
  return count;
}
const sub = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });

function* orders(parts: readonly number[], cells: number, taken: readonly (number | null)[] = []): Generator<readonly (number | null)[]> {
  if (taken.length === cells) {
    if (parts.length === 0) yield taken;
    return;
  }
  for (const p of parts)
    yield* orders(
      parts.filter((q) => q !== p),
      cells,
      [...taken, p],
    );
  if (parts.length < cells - taken.length) yield* orders(parts, cells, [...taken, null]);
}

function* waysOf(parts: readonly BenchPart[]): Generator<readonly number[]> {
  const counts = parts.map((p) => p.ways.length);
  const all = counts.reduce((a, b) => a * b, 1);
  for (let n = 0; n < all; n++) {
    let rest = n;
    yield counts.map((c) => {
      const way = rest % c;
      rest = Math.floor(rest / c);
      return way;
    });
  }
}

const { aerialCoupling: _, ...tank } = EXAMPLE_SETS['rod-and-drop-wire.json']!.tank;
const phones = EXAMPLE_SETS['rod-and-drop-wire.json']!.phones;
const { load: __, ...bare } = phones;
/** Four parts: coil that is the aerial, capacitor, detector, earpiece. */
const SMALL: SetDescription = {
  ...EXAMPLE_SETS['rod-and-drop-wire.json']!,
  aerial: { kind: 'coil', axis: { kind: 'vertical' } },
  tank: { ...tank, detectorCoupling: { kind: 'tap', turns: 3 } },
  phones: { ...bare, bypass: 0 },
};

test('no placing of four parts has shorter wires with as few crossings: every one is tried', () => {
  const parts = benchParts(SMALL, netlistOf(SMALL));
  expect(parts.map((p) => p.name)).toEqual(['coil', 'capacitor', 'detector', 'earpiece']);
  const [found] = goodPlacings(parts) as [Placing];
  const lines = linesOf(parts, found);
  const [length, crossings] = [lengthOf(lines), crossingsOf(lines)];
  let [tried, shorter, shortest] = [0, 0, Number.POSITIVE_INFINITY];
  const ways = [...waysOf(parts)];
  for (const order of orders([0, 1, 2, 3], found.cells.length))
    for (const way of ways) {
      tried++;
      const placing = { columns: found.columns, cells: order.map((part) => (part === null ? null : { part, way: way[part]! })) };
      const other = linesOf(parts, placing);
      const its = lengthOf(other);
      shortest = Math.min(shortest, its + PER_CROSSING * (its < length + 1e-6 ? crossingsOf(other) : 0));
      if (its < length - 1e-6 && crossingsOf(other) <= crossings) shorter++;
    }
  // cells taken in order by four of six, each part four ways
  expect(tried).toBe(6 * 5 * 4 * 3 * 4 ** 4);
  expect(shorter).toBe(0);
  expect(shortest).toBeGreaterThan(length + PER_CROSSING * crossings - 1e-6);
}, 120_000);

test.each(Object.entries({ ...EXAMPLE_SETS, ...FURTHER_SETS }))('%s: none of many random placings is better', (_name, set) => {
  const parts = benchParts(set, netlistOf(set));
  const price = (p: Placing): number => {
    const lines = linesOf(parts, p);
    return lengthOf(lines) + PER_CROSSING * crossingsOf(lines);
  };
  const [best, ...others] = goodPlacings(parts) as [Placing, ...Placing[]];
  const least = price(best);
  for (const p of others) expect(price(p)).toBeLessThanOrEqual(1.05 * least + 1e-6);
  let state = 7;
  const random = (n: number): number => {
    state = (48271 * state) % 2147483647;
    return state % n;
  };
  for (let i = 0; i < 300; i++) {
    const cells = [...best.cells];
    for (let k = cells.length - 1; k > 0; k--) {
      const j = random(k + 1);
      [cells[k], cells[j]] = [cells[j]!, cells[k]!];
    }
    const placing = {
      columns: best.columns,
      cells: cells.map((c) => c && { part: c.part, way: random(parts[c.part]!.ways.length) }),
    };
    expect(price(placing)).toBeGreaterThan(least - 1e-6);
  }
});
