import { type Design, NONE } from './design.ts';
import type { Space } from './space.ts';

/** Two designs this far apart are two designs; nearer, two shades of one. */
export const DISTINCT = 1;

/**
 * How different two sets are to someone who builds them.
 *
 * 1 for another kind of aerial, another detector, another earpiece; 1/2 for another tuning capacitor, transformer, way in which the aerial joins, and for
 * the detector across all of the coil or on a tap; 1/4 for other wire, former, or a coil of a third more or fewer turns. Lengths, pitches, places of
 * taps, resistors and small capacitors are adjustments and count nothing.
 */
export function difference(space: Space, a: Design, b: Design): number {
  const group = (d: Design): string => space.aerials[d.aerial]!.group;
  const turns = Math.abs(Math.log(a.halves / b.halves)) > Math.log(4 / 3);
  return (
    count(group(a) !== group(b), a.detector !== b.detector, a.earpiece !== b.earpiece) +
    count(
      a.capacitor !== b.capacitor,
      a.transformer !== b.transformer,
      a.joint !== b.joint && a.joint !== NONE && b.joint !== NONE,
      (a.tap === 0) !== (b.tap === 0),
    ) /
      2 +
    count(a.wire !== b.wire, a.former !== b.former, turns) / 4
  );
}

const count = (...facts: readonly boolean[]): number => facts.filter(Boolean).length;

/** The parts by which designs are kept apart: the best of each is remembered, so that different ones are there to choose from. */
export const signatureOf = (space: Space, d: Design): string =>
  [space.aerials[d.aerial]!.group, d.joint, d.detector, d.earpiece, d.capacitor, d.transformer].join('|');

/** The best of a list sorted best first, each `DISTINCT` from all before it. */
export function distinct<T>(space: Space, ranked: readonly T[], designOf: (item: T) => Design, most: number): readonly T[] {
  const chosen: T[] = [];
  for (const item of ranked) {
    if (chosen.length >= most) break;
    if (chosen.every((c) => difference(space, designOf(c), designOf(item)) >= DISTINCT)) chosen.push(item);
  }
  return chosen;
}
