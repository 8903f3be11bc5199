import type { Coupling, SetDescription } from '#engine';
import type { PartLabel } from './label.ts';

/** Where the coil is joined, from its cold end: a tap at the very end is no tap. */
export interface Joined {
  readonly coupling: Coupling | null;
  /** turns of a true tap; null for everything else */
  readonly tap: number | null;
}

export function joinedAt(set: SetDescription, role: 'aerial' | 'detector'): Joined {
  const coupling = role === 'detector' ? set.tank.detectorCoupling : set.aerial.kind === 'coil' ? null : (set.tank.aerialCoupling ?? null);
  const tap = coupling?.kind === 'tap' && coupling.turns < set.tank.coil.turns ? coupling.turns : null;
  return { coupling, tap };
}

/** Heights of the lines, downwards from the top of the coil [mm]. */
export interface Levels {
  /** of the line from the aerial, and of that to the detector */
  readonly aerial: number;
  readonly detector: number;
  /** of the common line at the bottom */
  readonly rail: number;
  /** of each tap, by its turns */
  readonly taps: ReadonlyMap<number, number>;
  /** whether the tuning capacitor ends above the detector's line, in a frame sign of its own */
  readonly capacitorAbove: boolean;
}

/** A body with its leads between two lines, and between two taps. */
const BODY = 18;
const TAP_STEP = 14;
const SIGN = 5;
/** Air above and below a label between two lines. */
const AIR = 3;
const LEAST = 28;

/**
 * A detector on a tap or a link leaves the coil to the right, below the tuning capacitor: so no two wires cross.
 *
 * @param labels - texts that stand between the detector's line and the common one
 * @param capacitors - tuning capacitor and the one in series with it: one or two
 */
export function levelsOf(aerial: Joined, detector: Joined, labels: readonly PartLabel[], capacitors: number, coil: PartLabel): Levels {
  const low = (j: Joined) => j.tap !== null || j.coupling?.kind === 'link';
  const capacitorAbove = low(detector);
  const upper = capacitorAbove
    ? Math.max(capacitors * BODY + SIGN + AIR, coil.height + 2 * AIR)
    : Math.max(BODY, coil.height / 2 + 2 * AIR);
  const turns = [...new Set([aerial.tap, detector.tap].filter((t) => t !== null))].sort((a, b) => b - a);
  const taps = new Map(turns.map((t, i) => [t, upper + i * TAP_STEP]));
  const levelOf = (j: Joined) => (j.tap !== null ? taps.get(j.tap)! : j.coupling?.kind === 'link' ? upper : 0);
  const [a, d] = [levelOf(aerial), levelOf(detector)];
  const tallest = Math.max(...labels.map((l) => l.height), 0) + 2 * AIR;
  const lowest = Math.max(0, ...taps.values());
  const rail = Math.max(
    a + LEAST,
    d + Math.max(LEAST, tallest),
    lowest + TAP_STEP,
    capacitorAbove ? 0 : capacitors * BODY,
    coil.height + 2 * AIR,
  );
  return { aerial: a, detector: d, rail, taps, capacitorAbove };
}
