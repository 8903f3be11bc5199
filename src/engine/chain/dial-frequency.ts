import type { Arrival } from '../aerial/index.ts';
import { brent } from '../numeric/index.ts';
import { tankResonance } from '../tank/index.ts';
import type { Receiver } from './receiver.ts';
import type { Signal } from './signal.ts';
import { type OutOfReach, type Resonance, resonanceAt, topAdmittance } from './tuning.ts';

/** The whole set's resonance is looked for from a start outwards, in equal ratios, this far either way. */
const RATIO = 1.004;
const FARTHEST = 1.6;

/** Ends of the dial of a whole set, aerial and detector joined [Hz]; null where no resonance is found near that of the tank. */
export interface DialRange {
  readonly lowest: number | null;
  readonly highest: number | null;
}

/**
 * Where the dial of the whole set stands for a frequency: resonance at the top of the tank, aerial joined and detector at rest.
 *
 * @param frequency - [Hz], of a station or not
 * @param arrival - of any station: the aerial's impedance does not depend on it
 * @returns the angle, or what the dial lacks: a physical no
 */
export function dialAt(receiver: Receiver, arrival: Arrival, frequency: number): Resonance | OutOfReach {
  return resonanceAt(receiver, sourceOf(receiver, arrival), frequency);
}

/**
 * Frequency to which the whole set is tuned at an angle, the other way round.
 *
 * @param angle - [rad]
 * @param near - where to look from outwards [Hz]; from the resonance of the tank alone where left out
 * @returns [Hz]; null where no resonance is found near there
 */
export function tunedTo(receiver: Receiver, arrival: Arrival, angle: number, near?: number): number | null {
  const start = near ?? tankResonance(receiver.tank, angle);
  if (start === null) return null;
  const source = sourceOf(receiver, arrival);
  const susceptance = (f: number): number => topAdmittance(receiver, source, angle, f).im;
  // susceptance rises through a resonance of the parallel kind; the nearest on either side is meant
  let [below, above] = [start, start];
  let [atBelow, atAbove] = [susceptance(start), susceptance(start)];
  for (; above < FARTHEST * start; ) {
    const [down, up] = [below / RATIO, above * RATIO];
    const [atDown, atUp] = [susceptance(down), susceptance(up)];
    if (atDown <= 0 && atBelow >= 0) return brent(susceptance, down, below, 1e-9 * start);
    if (atAbove <= 0 && atUp >= 0) return brent(susceptance, above, up, 1e-9 * start);
    [below, above, atBelow, atAbove] = [down, up, atDown, atUp];
  }
  return null;
}

/** Between which frequencies the dial of the whole set goes. */
export function dialRange(receiver: Receiver, arrival: Arrival): DialRange {
  const ends = [tunedTo(receiver, arrival, 0), tunedTo(receiver, arrival, receiver.tank.rotation)];
  const known = ends.filter((f) => f !== null);
  if (known.length < 2) return { lowest: null, highest: null };
  return { lowest: Math.min(...known), highest: Math.max(...known) };
}

function sourceOf({ aerial }: Receiver, arrival: Arrival): Pick<Signal, 'impedance'> {
  return { impedance: aerial === null ? null : (f) => aerial.at(f, arrival).impedance };
}
