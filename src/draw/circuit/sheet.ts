import type { Vector } from '../plane/vector.ts';
import type { Labels, Mark } from '../svg/mark.ts';
import type { Role } from '../svg/palette.ts';
import { STROKE } from './symbol.ts';

const SAME = 1e-6;
const same = (a: Vector, b: Vector): boolean => Math.abs(a.x - b.x) < SAME && Math.abs(a.y - b.y) < SAME;

interface Segment {
  readonly from: Vector;
  readonly to: Vector;
  readonly look: WireLook;
}

/** How a wire is drawn, and what it is called besides. */
export interface WireLook {
  readonly stroke: Role;
  readonly width: number;
  readonly labels?: Labels;
}

/** What is drawn of a circuit: symbols, level and upright wires, texts. Where three ways meet there is a dot, and only there. */
export class CircuitSheet {
  readonly #marks: Mark[] = [];
  readonly #wires: Segment[] = [];
  readonly #pins: Vector[] = [];

  add(marks: readonly Mark[]): void {
    this.#marks.push(...marks);
    for (const m of marks) if (m.kind === 'line' && m.labels?.pin !== undefined) this.#pins.push(m.from);
  }

  /** A wire through points, each level with or above the one before; none where it has no length. */
  wire(...points: readonly Vector[]): void {
    this.wireAs(STROKE, ...points);
  }

  /** The same, drawn as it is to be. */
  wireAs(look: WireLook, ...points: readonly Vector[]): void {
    for (let i = 0; i + 1 < points.length; i++) {
      const [from, to] = [points[i]!, points[i + 1]!];
      if (!same(from, to)) this.#wires.push({ from, to, look });
    }
  }

  /** Everything, wires first. */
  marks(): readonly Mark[] {
    const wires = this.#wires.map(
      ({ from, to, look }): Mark => ({ kind: 'line', from, to, ...look, cap: 'round', labels: { wire: 'line', ...look.labels } }),
    );
    return [...wires, ...this.#marks, ...this.#joints()];
  }

  #joints(): readonly Mark[] {
    const ends = [...this.#wires.flatMap((w) => [w.from, w.to]), ...this.#pins];
    const places: Vector[] = [];
    for (const p of ends) if (!places.some((q) => same(p, q)) && this.#ways(p) > 2) places.push(p);
    return places.map(
      (centre): Mark => ({ kind: 'circle', centre, radius: 0.75, fill: 'ink', stroke: 'ink', width: 0.1, labels: { joint: 'dot' } }),
    );
  }

  /** How many ways lead from a point. */
  #ways(p: Vector): number {
    const along = this.#wires.reduce((sum, w) => sum + (same(p, w.from) || same(p, w.to) ? 1 : lies(p, w) ? 2 : 0), 0);
    return along + this.#pins.filter((q) => same(p, q)).length;
  }
}

/** Within a level or upright wire. */
function lies(p: Vector, { from, to }: Segment): boolean {
  const between = (v: number, a: number, b: number) => v > Math.min(a, b) + SAME && v < Math.max(a, b) - SAME;
  const level = Math.abs(from.y - to.y) < SAME;
  return level ? Math.abs(p.y - from.y) < SAME && between(p.x, from.x, to.x) : Math.abs(p.x - from.x) < SAME && between(p.y, from.y, to.y);
}
