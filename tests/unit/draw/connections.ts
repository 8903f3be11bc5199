import type { Drawn } from './drawn.ts';
import { labelled } from './drawn.ts';
import type { Element } from './xml.ts';

type Point = readonly [number, number];
interface Line {
  readonly from: Point;
  readonly to: Point;
}

/** Coordinates are written to a thousandth of a millimetre. */
const SAME = 0.0021;
const same = (a: Point, b: Point) => Math.abs(a[0] - b[0]) < SAME && Math.abs(a[1] - b[1]) < SAME;
const lineOf = (e: Element): Line => {
  const n = (k: string) => Number(e.attributes[k]);
  return { from: [n('x1'), n('y1')], to: [n('x2'), n('y2')] };
};
const level = (l: Line) => Math.abs(l.from[1] - l.to[1]) < SAME;
const upright = (l: Line) => Math.abs(l.from[0] - l.to[0]) < SAME;
const within = (v: number, a: number, b: number) => v > Math.min(a, b) + SAME && v < Math.max(a, b) - SAME;
const inside = (p: Point, l: Line) =>
  level(l)
    ? Math.abs(p[1] - l.from[1]) < SAME && within(p[0], l.from[0], l.to[0])
    : Math.abs(p[0] - l.from[0]) < SAME && within(p[1], l.from[1], l.to[1]);

export interface Connections {
  /** which pins of which parts are joined: the same number for the same net */
  netOf(part: string, pin: string): number | null;
  readonly parts: ReadonlySet<string>;
  /** wires that are neither level nor upright, or cross another, and ways that meet without a dot or have one for nothing */
  readonly faults: readonly string[];
}

/**
 * Reads a circuit back from its picture, as an eye would: wires join where their ends meet, or where one ends on another under a dot; a crossing
 * joins nothing. All frame signs are one net.
 */
export function readConnections(d: Drawn): Connections {
  const wires = labelled(d.elements, 'wire').map(lineOf);
  const dots = labelled(d.elements, 'joint').map((e): Point => [Number(e.attributes.cx), Number(e.attributes.cy)]);
  const pins = labelled(d.elements, 'pin').map((e) => ({
    part: e.attributes['data-part']!,
    pin: e.attributes['data-pin']!,
    at: lineOf(e).from,
  }));
  const signs = labelled(d.elements, 'sign', 'frame').map((e) => lineOf(e).from);
  const places = [...wires.flatMap((w) => [w.from, w.to]), ...pins.map((p) => p.at), ...signs, ...dots];
  const nets = places.map((_, i) => i);
  const find = (i: number): number => (nets[i] === i ? i : find(nets[i]!));
  const join = (i: number, k: number) => {
    nets[find(i)] = find(k);
  };
  places.forEach((p, i) => {
    for (let k = 0; k < i; k++) if (same(p, places[k]!)) join(i, k);
  });
  wires.forEach((_, i) => {
    join(2 * i, 2 * i + 1);
  });
  const firstPin = 2 * wires.length;
  const firstSign = firstPin + pins.length;
  const firstDot = firstSign + signs.length;
  signs.forEach((_, i) => {
    join(firstSign, firstSign + i);
  });
  const faults: string[] = [];
  dots.forEach((p, i) => {
    const through = wires.flatMap((w, k) => (inside(p, w) ? [k] : []));
    for (const k of through) join(firstDot + i, 2 * k);
    const ways = 2 * through.length + [...wires.flatMap((w) => [w.from, w.to]), ...pins.map((q) => q.at)].filter((q) => same(p, q)).length;
    if (ways < 3) faults.push(`a dot at ${p} where ${ways} ways meet`);
  });
  for (const p of [...wires.flatMap((w) => [w.from, w.to]), ...pins.map((q) => q.at)]) {
    const ways =
      [...wires.flatMap((w) => [w.from, w.to]), ...pins.map((q) => q.at)].filter((q) => same(p, q)).length +
      2 * wires.filter((w) => inside(p, w)).length;
    if (ways > 2 && !dots.some((q) => same(p, q))) faults.push(`${ways} ways meet at ${p} without a dot`);
    if (ways < 2 && !signs.some((q) => same(p, q))) {
      const free = pins.find((q) => same(p, q.at));
      if (!free || (free.part !== 'gate' && free.part !== 'aerial'))
        faults.push(`${free ? `${free.part} ${free.pin}` : 'a wire'} ends in the air at ${p}`);
    }
  }
  wires.forEach((w, i) => {
    if (!level(w) && !upright(w)) faults.push(`a slanting wire from ${w.from}`);
    for (const v of wires.slice(0, i)) {
      const [l, u] = level(w) ? [w, v] : [v, w];
      if (level(l) && upright(u) && inside([u.from[0], l.from[1]], l) && inside([u.from[0], l.from[1]], u))
        faults.push(`wires cross at ${u.from[0]}, ${l.from[1]}`);
    }
  });
  return {
    netOf: (part, pin) => {
      const i = pins.findIndex((p) => p.part === part && p.pin === pin);
      return i < 0 ? null : find(firstPin + i);
    },
    parts: new Set(pins.map((p) => p.part)),
    faults,
  };
}
