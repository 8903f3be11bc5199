import { type Signal, SPEED_OF_LIGHT } from '#engine';
import type { Change, Situation } from './situation.ts';
import { type Coupling, couplingWords, quarter } from './tank-changes.ts';

const VHF = 30e6;
/** Length of a dipole of thin rod in resonance [wavelengths]. */
const HALF_WAVE = 0.475;

/** At VHF a set whose coil is its aerial can be given one: a dipole, joined to the coil in the way that turns out best. */
export function firstAerialChanges(s: Situation, signal: Signal): Change[] {
  const { station, bearing } = signal.received;
  const { aerial, tank } = s.set;
  if (aerial.kind !== 'coil' || station.frequency < VHF) return [];
  const length = (HALF_WAVE * SPEED_OF_LIGHT) / station.frequency;
  const { turns } = tank.coil;
  const taps = [...new Set([0.1, 0.2].map((share) => quarter(share * turns, turns)))];
  const joints: readonly Coupling[] = [
    ...taps.map((at) => ({ kind: 'tap', turns: at }) as const),
    ...[1e-12, 3e-12].map((capacitance) => ({ kind: 'series-capacitor', capacitance }) as const),
  ];
  return joints.map((aerialCoupling) => ({
    key: 'aerial.dipole',
    words: `put up a half-wave dipole (${length.toFixed(2)} m): ${couplingWords('aerial', aerialCoupling)}`,
    situation: {
      ...s,
      set: {
        ...s.set,
        aerial: {
          kind: 'dipole',
          length,
          diameter: 4e-3,
          metal: 'copper',
          orientation: station.polarisation === 'vertical' ? { kind: 'vertical' } : { kind: 'horizontal', broadside: bearing },
        },
        tank: { ...tank, aerialCoupling },
      },
    },
  }));
}
