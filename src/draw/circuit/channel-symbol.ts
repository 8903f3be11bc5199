import type { DetectorDescription } from '#engine';
import { type Vector, vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import { labelMarks, type PartLabel } from './label.ts';
import { gateWire } from './part-labels.ts';
import { leadMark, STROKE } from './symbol.ts';

type Channel = Extract<DetectorDescription, { kind: 'channel' }>;

const HALF = 5;
const ENDS = 10;
/** From the line up to the gate's plate, and to where its wire runs [mm]. */
const GATE = 1.4;
const UP = 6;
const RING = 0.7;

export interface DrawnChannel {
  readonly marks: readonly Mark[];
  /** the gate's own wire, where it has one */
  readonly wires: readonly (readonly Vector[])[];
  readonly width: number;
  readonly a: Vector;
  readonly b: Vector;
}

/**
 * A field-effect channel lying in the line, its gate above. The channel is broken where it needs a voltage on its gate to conduct
 * (threshold above zero), unbroken where it conducts without one.
 */
export function channelMarks(d: Channel, label: PartLabel, gate: PartLabel | null, x: number, y: number): DrawnChannel {
  const width = Math.max(2 * ENDS, label.width, gate === null ? 0 : gate.width);
  const middle = x + width / 2;
  const [a, b] = [vector(middle - ENDS, y), vector(middle + ENDS, y)];
  const heavy = { stroke: 'ink', width: 0.7 } as const;
  const pieces: readonly (readonly [number, number])[] =
    d.threshold > 0
      ? [
          [-HALF, -HALF / 2],
          [-HALF / 4, HALF / 4],
          [HALF / 2, HALF],
        ]
      : [[-HALF, HALF]];
  const plate = y - GATE;
  const top = vector(middle, y - UP);
  const tied = gateWire(d);
  const end = tied === 'tank' ? a : b;
  const texts = labelMarks(label, vector(middle, top.y - 1.4 - (gate?.height ?? 0)), 'above', 'detector');
  return {
    marks: [
      leadMark('detector', 'a', a, vector(middle - HALF, y)),
      leadMark('detector', 'b', b, vector(middle + HALF, y)),
      ...pieces.map(([from, to]): Mark => ({ kind: 'line', from: vector(middle + from, y), to: vector(middle + to, y), ...heavy })),
      { kind: 'line', from: vector(middle - HALF + 1, plate), to: vector(middle + HALF - 1, plate), ...STROKE },
      leadMark('gate', 'gate', top, vector(middle, plate)),
      ...(gate === null
        ? []
        : [
            { kind: 'circle', centre: vector(top.x, top.y - RING), radius: RING, fill: 'paper', ...STROKE } as const,
            ...labelMarks(gate, vector(middle, top.y - 1.4), 'above', 'gate'),
          ]),
      ...texts,
    ],
    wires: tied === null ? [] : [[top, vector(end.x, top.y), end]],
    width,
    a,
    b,
  };
}
