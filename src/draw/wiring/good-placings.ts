import type { BenchPart } from './bench-parts.ts';
import { boardOf, type Placing, placedParts, placingPrice } from './placing.ts';

/** Columns to a row, for a board somewhat wider than high. */
const WIDE = 1.5;
/** Ways into the search, more of them for few parts, which are tried faster; and steps of each while it is still shaken. */
const startsFor = (parts: number): number => Math.max(4, Math.round(48 / parts));
const SHAKES = 2500;
/** Heat at first, as a share of the price at the start, and what of it is left at the end. */
const HEAT = 0.1;
const COOLED = 0.01;

type Cells = Placing['cells'];

/** A board wider than this finds no room on upright paper [mm]: parts are then put into fewer columns. */
const WIDEST = 178;
const LEAST_COLUMNS = 2;
/** A placing that costs no more than this times the best may be easier to follow once its wires are led. */
const NEARLY = 1.05;

/**
 * Placings with short wires and few crossings, the best that a search finds first, none much dearer than it; of those that are not too wide. From
 * several starts parts are shaken ever less (simulated annealing), then improved by the best exchange or turn until none helps. The same parts
 * give the same placings.
 *
 * Source: Kirkpatrick, Gelatt and Vecchi, "Optimization by simulated annealing", Science 220 (1983) 671, section on placement.
 */
export function goodPlacings(parts: readonly BenchPart[]): readonly Placing[] {
  let narrowest: readonly Placing[] | null = null;
  for (let columns = Math.max(LEAST_COLUMNS, Math.ceil(Math.sqrt(WIDE * parts.length))); columns >= LEAST_COLUMNS; columns--) {
    const found = inColumns(parts, columns);
    if (boardWidth(parts, found[0]!) <= WIDEST) return found;
    if (!narrowest || boardWidth(parts, found[0]!) < boardWidth(parts, narrowest[0]!)) narrowest = found;
  }
  return narrowest!;
}

function inColumns(parts: readonly BenchPart[], columns: number): readonly Placing[] {
  const size = columns * Math.ceil(parts.length / columns);
  const random = seeded(1);
  const priced = (placing: Placing) => ({ placing, price: placingPrice(parts, placing) });
  const found = Array.from({ length: startsFor(parts.length) }, (_, start) => {
    return priced(improved(parts, shaken(parts, first(parts, columns, size, start, random), random), exchangesAndTurns));
  }).sort((a, b) => a.price - b.price);
  // the best once more, by more ways than there is time for everywhere
  found[0] = priced(improved(parts, found[0]!.placing, exchangesWithTurns));
  return found.filter((f) => f.price <= NEARLY * found[0]!.price).map((f) => f.placing);
}

const boardWidth = (parts: readonly BenchPart[], placing: Placing): number => {
  const { left, right } = boardOf(placedParts(parts, placing));
  return right - left;
};

/** Even numbers from 0 to 1, always the same: Park and Miller, Communications of the ACM 31 (1988) 1192. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (16807 * state) % 2147483647;
    return state / 2147483647;
  };
}

/** Parts in their order, row by row; at later starts in any order that can be. */
function first(parts: readonly BenchPart[], columns: number, size: number, start: number, random: () => number): Placing {
  for (let attempt = start; ; attempt++) {
    const order = parts.map((_, i) => ({ part: i, way: 0 }));
    if (attempt > 0)
      for (let i = order.length - 1; i > 0; i--) {
        const k = Math.floor(random() * (i + 1));
        [order[i], order[k]] = [order[k]!, order[i]!];
      }
    const cells: Cells = Array.from({ length: size }, (_, i) => order[i] ?? null);
    const placing = { columns, cells };
    if (Number.isFinite(placingPrice(parts, placing))) return placing;
  }
}

function shaken(parts: readonly BenchPart[], start: Placing, random: () => number): Placing {
  let [now, price] = [start, placingPrice(parts, start)];
  const heat = HEAT * price;
  for (let i = 0; i < SHAKES; i++) {
    const next = changed(parts, now, random);
    const then = placingPrice(parts, next);
    if (then <= price || random() < Math.exp((price - then) / (heat * COOLED ** (i / SHAKES)))) [now, price] = [next, then];
  }
  return now;
}

/** Two cells exchanged, a part turned, or both. */
function changed(parts: readonly BenchPart[], placing: Placing, random: () => number): Placing {
  const pick = (n: number) => Math.floor(random() * n);
  const size = placing.cells.length;
  const moved = random() < 0.6 ? exchanged(placing, pick(size), pick(size)) : placing;
  const i = pick(size);
  const cell = moved.cells[i];
  return cell && (moved === placing || random() < 0.5) ? turned(moved, i, pick(parts[cell.part]!.ways.length)) : moved;
}

const turned = (placing: Placing, i: number, way: number): Placing => ({
  ...placing,
  cells: placing.cells.map((c, j) => (c && j === i ? { ...c, way } : c)),
});
const exchanged = (placing: Placing, i: number, k: number): Placing => ({
  ...placing,
  cells: placing.cells.map((c, j) => (j === i ? placing.cells[k]! : j === k ? placing.cells[i]! : c)),
});

type Neighbours = (parts: readonly BenchPart[], placing: Placing) => Iterable<Placing>;

/** Improved step by step, until no neighbour is better. */
function improved(parts: readonly BenchPart[], start: Placing, neighbours: Neighbours): Placing {
  let [now, price] = [start, placingPrice(parts, start)];
  for (;;) {
    let better: Placing | null = null;
    for (const next of neighbours(parts, now)) {
      const then = placingPrice(parts, next);
      if (then < price - 1e-9) [better, price] = [next, then];
    }
    if (!better) return now;
    now = better;
  }
}

/** Two cells exchanged, or a part turned. */
function* exchangesAndTurns(parts: readonly BenchPart[], placing: Placing): Generator<Placing> {
  const { cells } = placing;
  for (const i of cells.keys()) {
    for (let k = 0; k < i; k++) if (cells[i] || cells[k]) yield exchanged(placing, i, k);
    yield* turns(parts, placing, i);
  }
}

/** Two cells exchanged or left, and both parts turned. */
function* exchangesWithTurns(parts: readonly BenchPart[], placing: Placing): Generator<Placing> {
  const { cells } = placing;
  for (const i of cells.keys())
    for (let k = 0; k < i; k++) {
      if (!cells[i] && !cells[k]) continue;
      for (const moved of [placing, exchanged(placing, i, k)]) for (const next of turns(parts, moved, i)) yield* turns(parts, next, k);
    }
}

/** All ways of laying down what is in a cell, the present one first; as it is for a free one. */
function* turns(parts: readonly BenchPart[], placing: Placing, i: number): Generator<Placing> {
  yield placing;
  const cell = placing.cells[i];
  if (cell) for (const way of parts[cell.part]!.ways.keys()) if (way !== cell.way) yield turned(placing, i, way);
}
