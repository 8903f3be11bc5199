import type { CircuitPart } from '../circuit/netlist.ts';
import { STROKE } from '../circuit/symbol.ts';
import { vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import type { Picture } from './footprint.ts';

const RADIUS = 7;
const BACK = 10;
const APART = 4;

/** An earpiece seen from the ear, its two terminals at one side. */
export function earpiecePicture({ name, a, b }: CircuitPart): Picture {
  const ring = (radius: number, fill: 'paper' | 'faint' | 'ink'): Mark => ({
    kind: 'circle',
    centre: vector(0, 0),
    radius,
    fill,
    ...STROKE,
  });
  const edge = -Math.sqrt(RADIUS ** 2 - APART ** 2);
  const pin = (which: string, net: string, y: number) =>
    ({ part: name, pin: which, net, lead: 'audio', at: vector(-BACK, y), from: vector(edge, y) }) as const;
  return {
    name,
    marks: [ring(RADIUS, 'faint'), ring(4.8, 'paper'), ring(1, 'ink')],
    pins: [pin('a', a, -APART), pin('b', b, APART)],
    body: { left: -RADIUS, right: RADIUS, top: -RADIUS, bottom: RADIUS },
  };
}
