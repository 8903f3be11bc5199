import type { Extent } from '../plane/extent.ts';
import { type Vector, vector } from '../plane/vector.ts';
import { GRID } from './footprint.ts';
import type { LaidPin, Wire } from './lead-length.ts';

/** What a step costs, a bend, and a crossing of another wire. */
const STEP = 2;
const BEND = 3;
const CROSSING = 60;
/** A step right beside another wire is a little dearer: wires are easier to follow with air between. */
const BESIDE = 1;

/** What is at a point of the grid. */
const FREE = 0;
const LEVEL = 1;
const UPRIGHT = 2;
/** a bend, a joint, a pin, or a crossing: nothing else may pass */
const FULL = 3;
const BLOCKED = 4;

const STEPS = [
  { x: 1, y: 0, as: LEVEL },
  { x: 0, y: 1, as: UPRIGHT },
  { x: -1, y: 0, as: LEVEL },
  { x: 0, y: -1, as: UPRIGHT },
] as const;

/**
 * Leads wires over a board: level and upright on a grid, round parts and words, each the cheapest way by length, bends and crossings (Dijkstra's
 * algorithm over points and directions). Wires of one line join; those of others may only cross squarely.
 *
 * Source: Lee, "An algorithm for path connections and its applications", IRE Trans. Electronic Computers EC-10 (1961) 346.
 */
export class Router {
  readonly #columns: number;
  readonly #rows: number;
  readonly #left: number;
  readonly #top: number;
  readonly #what: Uint8Array;
  /** line at each point, 0 for none */
  readonly #line: Uint16Array;
  readonly #lines = new Map<string, number>();
  /** points that are joined to their line already */
  readonly #joined: Uint8Array;
  #crossings = 0;

  constructor(board: Extent, blocks: readonly Extent[], pins: readonly LaidPin[]) {
    this.#left = board.left;
    this.#top = board.top;
    this.#columns = Math.round((board.right - board.left) / GRID) + 1;
    this.#rows = Math.round((board.bottom - board.top) / GRID) + 1;
    const size = this.#columns * this.#rows;
    this.#what = new Uint8Array(size);
    this.#line = new Uint16Array(size);
    this.#joined = new Uint8Array(size);
    for (const b of blocks)
      for (let y = Math.ceil((b.top - this.#top) / GRID); y <= (b.bottom - this.#top) / GRID; y++)
        for (let x = Math.ceil((b.left - this.#left) / GRID); x <= (b.right - this.#left) / GRID; x++)
          this.#what[y * this.#columns + x] = BLOCKED;
    for (const p of pins) {
      const at = this.#pointOf(p.on);
      this.#what[at] = FULL;
      this.#line[at] = p.net === null ? 0 : this.#numberOf(p.net);
    }
  }

  /** of wires led so far */
  get crossings(): number {
    return this.#crossings;
  }

  /** Way of a wire, corner by corner, drawn from now on; null where there is none. */
  lead({ pin, to }: Pick<Wire, 'pin' | 'to'>): readonly Vector[] | null {
    const line = this.#numberOf(pin.net!);
    this.#joined[this.#pointOf(to.on)] = 1;
    const way = this.#cheapest(this.#pointOf(pin.on), line);
    if (!way) return null;
    this.#draw(way, line);
    return corners(way.map((p) => vector(this.#left + GRID * (p % this.#columns), this.#top + GRID * Math.floor(p / this.#columns))));
  }

  #numberOf(net: string): number {
    const known = this.#lines.get(net);
    if (known !== undefined) return known;
    this.#lines.set(net, this.#lines.size + 1);
    return this.#lines.size;
  }

  readonly #pointOf = (v: Vector): number => Math.round((v.y - this.#top) / GRID) * this.#columns + Math.round((v.x - this.#left) / GRID);

  /** Points from a pin to anything its line has already. */
  #cheapest(from: number, line: number): readonly number[] | null {
    const states = 4 * this.#what.length;
    const price = new Int32Array(states).fill(-1);
    const before = new Int32Array(states).fill(-1);
    const open = new Buckets();
    STEPS.forEach((_, d) => {
      price[4 * from + d] = 0;
      open.add(0, 4 * from + d);
    });
    for (let state = open.next(); state !== null; state = open.next()) {
      const [point, came] = [state >> 2, state & 3];
      const paid = price[state]!;
      if (open.price > paid) continue;
      if (point !== from && this.#joined[point] === 1 && this.#line[point] === line) return wayTo(state, before);
      const crossing = point !== from && this.#what[point] !== FREE;
      STEPS.forEach((step, d) => {
        if (point === from ? d !== came : d === (came + 2) % 4 || (crossing && d !== came)) return;
        const next = this.#stepped(point, step.x, step.y);
        if (next === null) return;
        const cost = this.#costOf(next, step.as, line);
        if (cost === null) return;
        const then = paid + cost + (d === came ? 0 : BEND) + this.#beside(next, step.as, line);
        const known = price[4 * next + d]!;
        if (known >= 0 && known <= then) return;
        price[4 * next + d] = then;
        before[4 * next + d] = state;
        open.add(then, 4 * next + d);
      });
    }
    return null;
  }

  #stepped(point: number, x: number, y: number): number | null {
    const [column, row] = [(point % this.#columns) + x, Math.floor(point / this.#columns) + y];
    return column < 0 || row < 0 || column >= this.#columns || row >= this.#rows ? null : row * this.#columns + column;
  }

  #costOf(next: number, as: number, line: number): number | null {
    const what = this.#what[next]!;
    if (what === FREE) return STEP;
    if (what === BLOCKED) return null;
    if (this.#line[next] === line) return this.#joined[next] === 1 ? STEP : null;
    return what !== FULL && what !== as ? STEP + CROSSING : null;
  }

  #beside(point: number, as: number, line: number): number {
    const step = as === LEVEL ? this.#columns : 1;
    return [point - step, point + step].some((p) => this.#what[p] === as && this.#line[p] !== line) ? BESIDE : 0;
  }

  #draw(way: readonly number[], line: number): void {
    way.forEach((point, i) => {
      const [before, after] = [way[i - 1], way[i + 1]];
      if (before === undefined || after === undefined) this.#what[point] = FULL;
      else if (this.#what[point] !== FREE) {
        this.#what[point] = FULL;
        this.#crossings++;
        return;
      } else {
        const straight = after - point === point - before;
        this.#what[point] = !straight ? FULL : Math.abs(after - point) === 1 ? LEVEL : UPRIGHT;
      }
      this.#line[point] = line;
      this.#joined[point] = 1;
    });
  }
}

function wayTo(last: number, before: Int32Array): readonly number[] {
  const way: number[] = [];
  for (let state = last; state >= 0; state = before[state]!) way.push(state >> 2);
  return way.reverse();
}

/** Ends and bends. */
function corners(points: readonly Vector[]): readonly Vector[] {
  return points.filter((p, i) => {
    const [a, b] = [points[i - 1], points[i + 1]];
    return !a || !b || (b.x - p.x) * (p.y - a.y) !== (b.y - p.y) * (p.x - a.x);
  });
}

/** States by what they have cost so far, the cheapest first. */
class Buckets {
  readonly #lists: number[][] = [];
  #price = 0;

  /** of the state that came last */
  get price(): number {
    return this.#price;
  }

  add(price: number, state: number): void {
    const list = this.#lists[price];
    if (list) list.push(state);
    else this.#lists[price] = [state];
  }

  next(): number | null {
    for (; this.#price < this.#lists.length; this.#price++) {
      const state = this.#lists[this.#price]?.pop();
      if (state !== undefined) return state;
    }
    return null;
  }
}
