import { armsOf, jointsOf } from './arms.ts';
import { canBeBuilt, radioCanBeBuilt } from './build.ts';
import { type Design, LINK, PITCHES, type RadioDesign, SERIES, TAP } from './design.ts';
import { type Space, windowOf } from './space.ts';
import { lacksDirectPath } from './stock.ts';
import { coilFault, linkCount } from './winding.ts';

/**
 * Every design of a space that can be built and could tune, once each, in a fixed order.
 *
 * @param most - how many to give at most: a space is small if this ends before
 */
export function* everyDesign(space: Space, most = Number.POSITIVE_INFINITY): Generator<Design> {
  const { stock } = space;
  // else the whole space would be gone through for nothing
  if (stock.detectors.length === 0 || lacksDirectPath(stock)) return;
  let given = 0;
  const upTo = (n: number): number[] => Array.from({ length: n }, (_, k) => k);
  const places = (halves: number): number[] => upTo(2 * halves).slice(1);
  for (const { joint, capacitor, aerials } of frames(space))
    for (const former of upTo(stock.formers.length))
      for (const wire of upTo(stock.wires.length))
        for (const across of upTo(stock.fixedCapacitors.length + 1))
          for (const pitch of upTo(PITCHES.length)) {
            const window = windowOf(space, former, wire, pitch, capacitor, across);
            if (!window) continue;
            for (let halves = window[0]; halves <= window[1]; halves++) {
              if (coilFault(space, { former, wire, halves, pitch })) continue;
              const ats =
                joint === TAP
                  ? places(halves)
                  : joint === LINK
                    ? upTo(linkCount(stock))
                    : joint === SERIES
                      ? upTo(stock.fixedCapacitors.length)
                      : [0];
              for (const at of ats)
                for (const tap of [0, ...places(halves)])
                  for (let aerial = aerials[0]; aerial <= aerials[1]; aerial++) {
                    const coil = { aerial, joint, at, former, wire, halves, pitch, capacitor, across, tap };
                    if (!radioCanBeBuilt(space, coil)) continue;
                    for (const d of withTheRest(space, coil)) {
                      if (!canBeBuilt(space, d)) continue;
                      if (given++ >= most) return;
                      yield d;
                    }
                  }
            }
          }
}

/** Aerials of a group with one way to join them and one capacitor. */
const frames = (space: Space) =>
  armsOf(space).flatMap((arm) =>
    jointsOf(space, arm).flatMap((joint) => space.stock.capacitors.map((_, capacitor) => ({ ...arm, joint, capacitor }))),
  );

function* withTheRest({ stock }: Space, radio: RadioDesign): Generator<Design> {
  for (let detector = 0; detector < stock.detectors.length; detector++)
    for (let earpiece = 0; earpiece < stock.earpieces.length; earpiece++)
      for (let transformer = 0; transformer <= stock.transformers.length; transformer++)
        for (let load = 0; load <= stock.loads.length; load++)
          for (let bypass = 0; bypass <= stock.fixedCapacitors.length; bypass++)
            yield { ...radio, detector, earpiece, transformer, load, bypass };
}

/** All designs of a space no larger than `most`; null for a larger one. */
export function smallSpace(space: Space, most: number): readonly Design[] | null {
  const all = [...everyDesign(space, most + 1)];
  return all.length > most ? null : all;
}
