import type { CircuitPart } from '../circuit/netlist.ts';
import { vector } from '../plane/vector.ts';
import type { Picture } from './footprint.ts';
import { bow, solid } from './pictograms.ts';

const RADIUS = 5.6;
const FLAT = 2.4;
const LEG = 4;
const REACH = 6;
const RING = 0.7;

/** A case with a flat side and three legs, the gate in the middle; a gate that no wire of the set is joined to ends in a ring. */
export function channelPicture({ a, b }: CircuitPart<string>, gate: string | null): Picture {
  const turn = Math.asin(FLAT / RADIUS);
  const centre = vector(0, 0);
  const leg = (part: string, pin: string, net: string | null, x: number) =>
    ({ part, pin, net, lead: 'detector', at: vector(x, REACH), from: vector(x, FLAT) }) as const;
  return {
    name: 'detector',
    marks: [
      ...solid(bow(centre, RADIUS, Math.PI - turn, 2 * Math.PI + turn), 'faint'),
      ...(gate === null
        ? [
            {
              kind: 'circle',
              centre: vector(0, REACH),
              radius: RING,
              fill: 'paper',
              stroke: 'ink',
              width: 0.35,
              labels: { gate: 'ring' },
            } as const,
          ]
        : []),
    ],
    pins: [leg('detector', 'a', a, -LEG), leg('gate', 'gate', gate, 0), leg('detector', 'b', b, LEG)],
    body: { left: -RADIUS, right: RADIUS, top: -RADIUS, bottom: FLAT },
  };
}
