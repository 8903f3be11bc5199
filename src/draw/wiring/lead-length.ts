import type { Vector } from '../plane/vector.ts';
import type { Pin } from './footprint.ts';
import { LEADS, type Lead, WEIGHT } from './lead.ts';

/** A pin where it lies on the bench. */
export interface LaidPin extends Pick<Pin, 'net' | 'lead'> {
  readonly on: Vector;
}

/** A wire from a pin to the nearest one of its line that is joined already. */
export interface Wire {
  readonly pin: LaidPin;
  readonly to: LaidPin;
  readonly lead: Lead;
  /** level and upright stretches together [mm] */
  readonly length: number;
}

/**
 * The wires of a bench in the order in which they are to be drawn: the pins of each line are joined to one another by what they carry, the tank's
 * first, so that its current takes no way round by a part that matters less.
 */
export function wiresOf(pins: readonly LaidPin[]): readonly Wire[] {
  const wires: Wire[] = [];
  join(pins, (wire) => wires.push(wire));
  return LEADS.flatMap((lead) => wires.filter((w) => w.lead === lead));
}

/** What a crossing counts [mm of wire for speech]: wires that cross are harder to follow, and couple. */
export const CROSSING = 100;

/** What a placing costs: all wires, each counted by what it carries, and their crossings where they are drawn straight from pin to pin. */
export function priceOf(pins: readonly LaidPin[]): number {
  const wires: Wire[] = [];
  let sum = 0;
  join(pins, (wire) => {
    sum += WEIGHT[wire.lead] * wire.length;
    for (const other of wires) if (other.pin.net !== wire.pin.net && cross(wire, other)) sum += CROSSING;
    wires.push(wire);
  });
  return sum;
}

/** Whether each of two straight lines has the ends of the other on its two sides. */
function cross({ pin: { on: a }, to: { on: b } }: Wire, { pin: { on: c }, to: { on: d } }: Wire): boolean {
  const turn = (p: Vector, q: Vector, r: Vector): number => Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

function join(pins: readonly LaidPin[], found: (wire: Wire) => void): void {
  const nets = new Map<string, LaidPin[]>();
  for (const p of pins) {
    if (p.net === null) continue;
    const net = nets.get(p.net);
    if (net) net.push(p);
    else nets.set(p.net, [p]);
  }
  for (const net of nets.values()) joinNet(net, found);
}

function joinNet(pins: readonly LaidPin[], found: (wire: Wire) => void): void {
  const done: LaidPin[] = [];
  for (const lead of LEADS) {
    const open = pins.filter((p) => p.lead === lead);
    if (done.length === 0 && open.length > 0) done.push(open.shift()!);
    while (open.length > 0) {
      let [length, from, to] = [Number.POSITIVE_INFINITY, 0, 0];
      for (let i = 0; i < open.length; i++)
        for (let k = 0; k < done.length; k++) {
          const apart = Math.abs(open[i]!.on.x - done[k]!.on.x) + Math.abs(open[i]!.on.y - done[k]!.on.y);
          if (apart < length) [length, from, to] = [apart, i, k];
        }
      const [pin] = open.splice(from, 1) as [LaidPin];
      found({ pin, to: done[to]!, lead, length });
      done.push(pin);
    }
  }
}
