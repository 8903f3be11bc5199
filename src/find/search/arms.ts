import { canBeBuilt } from './build.ts';
import type { Draws } from './chance.ts';
import { type Design, DIRECT, LINK, NONE, PITCHES, SERIES, TAP } from './design.ts';
import { type Space, windowOf } from './space.ts';
import { linkCount } from './winding.ts';

/** A structure: one kind of aerial in all its lengths. All designs of a space belong to one arm each. */
export interface Arm {
  /** first and last aerial of the group */
  readonly aerials: readonly [number, number];
}

/** Every structure of a space, in a fixed order. */
export function armsOf(space: Space): readonly Arm[] {
  const out: Arm[] = [];
  const { aerials } = space;
  for (let from = 0; from < aerials.length; ) {
    const { group } = aerials[from]!;
    let to = from;
    while (aerials[to + 1]?.group === group) to++;
    out.push({ aerials: [from, to] });
    from = to + 1;
  }
  return out;
}

/** Ways in which the aerials of an arm can join the tank. */
export function jointsOf({ stock, aerials }: Space, arm: Arm): readonly number[] {
  if (aerials[arm.aerials[0]]!.description.kind === 'coil') return [NONE];
  return [DIRECT, TAP, LINK, ...(stock.fixedCapacitors.length > 0 ? [SERIES] : [])];
}

const TRIES = 400;

/** A design of an arm drawn by chance, within the windows in which its coil could tune; null where none was met. */
export function drawDesign(space: Space, arm: Arm, draws: Draws): Design | null {
  const { stock } = space;
  const { capacitors, formers, wires, detectors, earpieces } = stock;
  if ([space.stations, capacitors, formers, wires, detectors, earpieces].some((list) => list.length === 0)) return null;
  const joints = jointsOf(space, arm);
  for (let k = 0; k < TRIES; k++) {
    const capacitor = draws.below(capacitors.length);
    const joint = draws.oneOf(joints);
    // a coil for one band: between a window on medium wave and one at VHF lie only coils for neither
    const station = draws.oneOf(space.stations);
    const former = draws.below(stock.formers.length);
    const wire = draws.below(stock.wires.length);
    const across = draws.below(stock.fixedCapacitors.length + 1);
    const pitch = draws.below(PITCHES.length);
    const window = windowOf(space, former, wire, pitch, capacitor, across, station);
    if (!window) continue;
    const halves = window[0] + draws.below(window[1] - window[0] + 1);
    const earpiece = draws.below(stock.earpieces.length);
    const place = (): number => stepped(space, wire, Math.round((0.03 + 0.9 * draws.uniform() ** 2) * 2 * halves), halves);
    const d: Design = {
      aerial: arm.aerials[0] + draws.below(arm.aerials[1] - arm.aerials[0] + 1),
      joint,
      at:
        joint === TAP
          ? place()
          : joint === LINK
            ? draws.below(linkCount(stock))
            : joint === SERIES
              ? draws.below(stock.fixedCapacitors.length)
              : 0,
      former,
      wire,
      halves,
      pitch: halves === 2 ? 0 : pitch,
      capacitor,
      across,
      detector: draws.below(stock.detectors.length),
      tap: draws.uniform() < 0.3 ? 0 : place(),
      earpiece,
      ...drawWay(space, earpiece, draws),
      bypass: draws.below(stock.fixedCapacitors.length + 1),
    };
    if (canBeBuilt(space, d)) return d;
  }
  return null;
}

/** What stands before an earpiece: nothing or a transformer before magnetic phones, a transformer or else a way for the direct current before a piezo. */
export function drawWay({ stock }: Space, earpiece: number, draws: Draws): Pick<Design, 'transformer' | 'load'> {
  const { transformers, loads } = stock;
  if (stock.earpieces[earpiece]!.part.kind !== 'piezo') return { transformer: draws.below(transformers.length + 1), load: 0 };
  const ways = transformers.length + loads.length;
  if (ways === 0) return { transformer: 0, load: 0 };
  const k = draws.below(ways);
  return k < loads.length ? { transformer: 0, load: k + 1 } : { transformer: 1 + k - loads.length, load: 0 };
}

/** The place nearest to some quarter turns at which a tap can be soldered, on the coil. */
export function stepped(space: Space, wire: number, quarters: number, halves: number): number {
  const step = Math.max(1, Math.round(4 * space.stock.wires[wire]!.part.tapEvery));
  const most = Math.ceil((2 * halves) / step) - 1;
  return step * Math.max(1, Math.min(most, Math.round(quarters / step)));
}
