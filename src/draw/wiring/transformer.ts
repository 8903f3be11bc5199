import type { CircuitPart } from '../circuit/netlist.ts';
import { vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import type { Picture } from './footprint.ts';
import { line, rectangle, solid } from './pictograms.ts';

const HALF = 8;
const REACH = 10;
const APART = 4;

/** A core with its bobbin; the windings leave it to both sides. */
export function transformerPicture(windings: readonly CircuitPart<'winding'>[]): Picture {
  const wires = [-3, -1.8, -0.6, 0.6, 1.8, 3].map((x): Mark => line(vector(x, -4.5), vector(x, 4.5), { stroke: 'ink', width: 0.25 }));
  return {
    name: 'transformer',
    marks: [
      ...solid(rectangle(-HALF, -HALF, HALF, HALF), 'faint'),
      ...solid(rectangle(-HALF + 3, -HALF + 3, HALF - 3, HALF - 3)),
      ...solid(rectangle(-4, -4.5, 4, 4.5)),
      ...wires,
    ],
    pins: windings.flatMap(({ name, a, b }, i) => {
      const side = i === 0 ? -1 : 1;
      const pin = (which: string, net: string, y: number) =>
        ({ part: name, pin: which, net, lead: 'audio', at: vector(side * REACH, y), from: vector(side * HALF, y) }) as const;
      return [pin('a', a, -APART), pin('b', b, APART)];
    }),
    body: { left: -HALF, right: HALF, top: -HALF, bottom: HALF },
  };
}
