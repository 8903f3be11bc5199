import { type CoilGeometry, normalCumulative, type SetDescription } from '#engine';
import type { Draft, Scatter } from './draft.ts';
import { withCoil, withTank } from './draft.ts';

/** How well a builder keeps to what was meant. All estimates, common practice without a source; standard deviations unless it says otherwise. */
export interface Hand {
  /** of the diameter of a winding, relative: it springs open, or the wire does not lie close */
  readonly diameter: number;
  /** of the pitch, relative */
  readonly pitch: number;
  /** turns by which a winding may end early or late, evenly spread either way */
  readonly turns: number;
  /** of the leads and of the wiring, relative */
  readonly leads: number;
  /** factor by which a joint is better or worse than meant */
  readonly joint: number;
  /** of the strays, relative */
  readonly strays: number;
  /** of the place of a tap [turns] */
  readonly tap: number;
  /** between ears that count as normal [dB] */
  readonly hearing: number;
}

export const USUAL_HAND: Hand = { diameter: 0.01, pitch: 0.05, turns: 0.25, leads: 0.2, joint: 3, strays: 0.3, tap: 0.05, hearing: 5 };

/** What the hand leaves uncertain of a set. */
export function handScatter(set: SetDescription, hand: Hand = USUAL_HAND): readonly Scatter[] {
  const { coil, aerialCoupling, detectorCoupling } = set.tank;
  const percent = (share: number): string => `${Number((100 * share).toPrecision(2))} % (estimate)`;
  const out: Scatter[] = [];
  if (coil.kind === 'geometry') {
    out.push(
      ofCoil('tank.coil.innerDiameter', 'diameter of the coil', percent(hand.diameter), (c, z) => ({
        innerDiameter: c.innerDiameter * (1 + hand.diameter * z),
      })),
      ofCoil('tank.coil.turns', 'turns of the coil', `${hand.turns} turn either way, evenly (estimate)`, (c, z) => ({
        turns: Math.max(1, c.turns + hand.turns * evenly(z)),
      })),
      ofCoil('tank.coil.leadLength', 'leads of the coil', percent(hand.leads), (c, z) => ({
        leadLength: Math.max(0, c.leadLength * (1 + hand.leads * z)),
      })),
    );
    if (coil.turns > 1)
      out.push(
        ofCoil('tank.coil.pitch', 'pitch of the coil', percent(hand.pitch), (c, z) => ({
          // squeezed shut is as close as it goes
          pitch: Math.max(c.wireDiameter, c.pitch * (1 + hand.pitch * z)),
        })),
      );
  }
  out.push(
    tankScatter('tank.wiring.length', 'wiring to the capacitor', percent(hand.leads), ({ wiring }, z) => ({
      wiring: { ...wiring, length: Math.max(0, wiring.length * (1 + hand.leads * z)) },
    })),
    tankScatter('tank.joints.resistance', 'resistance of the joints', `${hand.joint} times either way (estimate)`, ({ joints }, z) => ({
      joints: { ...joints, resistance: joints.resistance * hand.joint ** z },
    })),
    tankScatter('tank.strayCapacitance', 'stray capacitance', percent(hand.strays), ({ strayCapacitance }, z) => ({
      strayCapacitance: Math.max(0, strayCapacitance * (1 + hand.strays * z)),
    })),
  );
  for (const [key, coupling, label] of [
    ['aerialCoupling', aerialCoupling, "place of the aerial's tap"],
    ['detectorCoupling', detectorCoupling, "place of the detector's tap"],
  ] as const)
    if (coupling?.kind === 'tap' && coupling.turns < coil.turns)
      out.push(
        tankScatter(`tank.${key}.turns`, label, `${hand.tap} turn (estimate)`, (tank, z) => ({
          [key]: { ...coupling, turns: Math.min(tank.coil.turns, Math.max(0.05, coupling.turns + hand.tap * z)) },
        })),
      );
  return out;
}

/** From a normal number to one spread evenly from -1 to 1. */
const evenly = (z: number): number => 2 * normalCumulative(z) - 1;

const ofCoil = (key: string, label: string, extent: string, change: (coil: CoilGeometry, z: number) => Partial<CoilGeometry>): Scatter => ({
  key,
  label,
  extent,
  ofTheSet: true,
  apply: (draft, z) => held(withCoil(draft, (c) => change(c, z))),
});

type Tank = SetDescription['tank'];
const tankScatter = (key: string, label: string, extent: string, change: (tank: Tank, z: number) => Partial<Tank>): Scatter => ({
  key,
  label,
  extent,
  ofTheSet: true,
  apply: (draft, z) => withTank(draft, change(draft.set.tank, z)),
});

/** A tap stays on a coil that came out shorter. */
function held(draft: Draft): Draft {
  const { coil, aerialCoupling, detectorCoupling } = draft.set.tank;
  const within = <T extends Tank['detectorCoupling']>(c: T): T =>
    c.kind === 'tap' && c.turns > coil.turns ? { ...c, turns: coil.turns } : c;
  return withTank(draft, { ...(aerialCoupling && { aerialCoupling: within(aerialCoupling) }), detectorCoupling: within(detectorCoupling) });
}
